/** What a person may change, as the program decides it; the pages only say it beforehand. */
import { who } from './me.svelte';

/** House rules, the school's own details, people, copies. */
export function mayLead(): boolean {
  return who.isHead;
}

/** Classes, rooms, dishes, lessons. */
export function mayWrite(): boolean {
  return who.mayUse && who.me?.person?.role !== 'technician';
}
