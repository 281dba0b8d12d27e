/** Changes to a dish that are not kept yet, so that going to another page and back loses nothing. In this tab only. */
import type { Dish } from './dish';

const place = (id: string): string => `benchbell.dish.${id}`;

export function draftOf(id: string): Dish | null {
  try {
    const text = sessionStorage.getItem(place(id));
    return text === null ? null : (JSON.parse(text) as Dish);
  } catch {
    return null; // a browser without storage keeps no drafts
  }
}

export function keepDraft(id: string, dish: Dish): void {
  try {
    sessionStorage.setItem(place(id), JSON.stringify(dish));
  } catch {
    // without storage the change lives as long as the page
  }
}

export function dropDraft(id: string): void {
  try {
    sessionStorage.removeItem(place(id));
  } catch {
    // there was none
  }
}
