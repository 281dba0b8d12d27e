/** Which dishes fit what a teacher asks for. */
import type { DishRow } from './known.svelte';

export interface Wanted {
  words: string;
  /** Most minutes, most minutes with busy hands, most pence a portion; null = any. */
  minutes: number | null;
  hands: number | null;
  pence: number | null;
  /** None of these hazards and allergens. */
  withoutHazard: string;
  without: string[];
  skill: string;
  /** Only this kind of heat; "none" for dishes that need none. */
  heat: string;
}

/** "£0.84" in pence, "84p" as well; null when there is no price. */
export function pence(cost: string | null): number | null {
  if (cost === null) return null;
  const pounds = /(\d+)\.(\d{2})/.exec(cost);
  if (pounds) return Number(pounds[1]) * 100 + Number(pounds[2]);
  const small = /(\d+) ?p/.exec(cost);
  return small ? Number(small[1]) : null;
}

const plain = (text: string): string => text.toLowerCase().normalize('NFD').replace(/\p{M}/gu, '');

export function fits(row: DishRow, wanted: Wanted): boolean {
  if (wanted.words && !plain(row.name).includes(plain(wanted.words))) return false;
  if (wanted.minutes !== null && row.minutes > wanted.minutes) return false;
  if (wanted.hands !== null && row.hands_minutes > wanted.hands) return false;
  if (wanted.pence !== null) {
    const cost = pence(row.cost_per_portion);
    if (cost === null || cost > wanted.pence) return false; // no price is no proof that it is cheap
  }
  if (wanted.withoutHazard && row.hazards.includes(wanted.withoutHazard)) return false;
  // An unread label may hold it: it never counts as safe.
  if (wanted.without.some((one) => row.allergens.includes(one) || row.check_label.includes(one))) return false;
  if (wanted.skill && !row.skills.includes(wanted.skill)) return false;
  if (wanted.heat === 'none') return row.heat.length === 0;
  return wanted.heat === '' || (row.heat.includes(wanted.heat) && row.heat.length === 1);
}
