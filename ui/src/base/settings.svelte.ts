/** What a person has chosen for this browser. Nothing here is about a pupil or a lesson. */
import type { Hours } from './clock';

export type Theme = 'light' | 'contrast';
export type Language = 'en' | 'de';

interface Chosen {
  theme: Theme;
  language: Language;
  hours: Hours;
  /** Single-letter keys; some people trigger them by speaking or by accident. */
  letterKeys: boolean;
}

const place = 'benchbell.settings';
const usual: Chosen = { theme: 'light', language: 'en', hours: '24', letterKeys: true };

function kept(): Chosen {
  try {
    return { ...usual, ...(JSON.parse(localStorage.getItem(place) ?? '{}') as Partial<Chosen>) };
  } catch {
    return { ...usual }; // a browser that forbids storage, or a value written by hand: the usual ones do
  }
}

export const settings = $state<Chosen>(kept());

/** Changes settings and keeps them; a browser that forbids storage keeps them until the tab is closed. */
export function choose(change: Partial<Chosen>): void {
  Object.assign(settings, change);
  try {
    localStorage.setItem(place, JSON.stringify(settings));
  } catch {
    // no storage here: the choice holds until the tab is closed
  }
}
