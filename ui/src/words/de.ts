/** Deutsch: der Rahmen, die Woche und die Stunde. Was fehlt, erscheint auf Englisch. */
import type { Translation } from './words.svelte';

export const de: Translation = {};
