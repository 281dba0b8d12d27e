/** Deutsch: der Rahmen, die Woche und die Stunde. Was fehlt, erscheint auf Englisch. */
import { placesDe } from './places_de';
import type { Translation } from './words.svelte';

export const de: Translation = { ...placesDe };
