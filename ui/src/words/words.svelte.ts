/** Words in the language chosen. `t('minutes', { n: 7 })` is "7 min"; a key that a language lacks falls back to English,
 *  one by one. `n` chooses the plural form by the language's own rules. */
import { settings, type Language } from '../base/settings.svelte';
import { clock } from '../base/clock';
import { de } from './de';
import { en } from './en';

/** A phrase, or its plural forms. {name} stands for a value. */
export type Phrase = string | (Partial<Record<Intl.LDMLPluralRule, string>> & { other: string });
export type Key = keyof typeof en;
export type Translation = Partial<Record<Key, Phrase>>;

export const languages: Record<Language, { name: string; tag: string; words: Translation }> = {
  en: { name: 'English', tag: 'en-GB', words: en },
  de: { name: 'Deutsch', tag: 'de-DE', words: de },
};

const rules = new Map<string, Intl.PluralRules>();

function form(phrase: Phrase, tag: string, n: number | undefined): string {
  if (typeof phrase === 'string') return phrase;
  let rule = rules.get(tag);
  if (!rule) rules.set(tag, (rule = new Intl.PluralRules(tag)));
  return phrase[n === undefined ? 'other' : rule.select(n)] ?? phrase.other;
}

/** The phrase in a given language; pages use t(), tests use this. */
export function say(language: Language, key: Key, values: Record<string, string | number> = {}): string {
  const own = languages[language].words[key];
  const tag = own === undefined ? languages.en.tag : languages[language].tag;
  const n = typeof values.n === 'number' ? values.n : undefined;
  return form(own ?? en[key], tag, n).replace(/\{(\w+)\}/g, (whole, name: string) => String(values[name] ?? whole));
}

export function t(key: Key, values: Record<string, string | number> = {}): string {
  return say(settings.language, key, values);
}

/** "Tue 17 Nov" from an ISO date. */
export function dayWords(day: string): string {
  return `${weekday(day)} ${dateWords(day)}`;
}

// Making a formatter takes longer than a hundred dates written with it.
const formatters = new Map<string, Intl.DateTimeFormat>();
function dates(style: 'short' | 'long' | 'day' | 'day and year'): Intl.DateTimeFormat {
  const tag = languages[settings.language].tag;
  const key = `${tag} ${style}`;
  let found = formatters.get(key);
  if (!found) {
    const parts: Intl.DateTimeFormatOptions =
      style === 'short' || style === 'long'
        ? { weekday: style }
        : { day: 'numeric', month: 'short', year: style === 'day' ? undefined : 'numeric' };
    formatters.set(key, (found = new Intl.DateTimeFormat(tag, { ...parts, timeZone: 'UTC' })));
  }
  return found;
}

export function weekday(day: string, style: 'short' | 'long' = 'short'): string {
  return dates(style)
    .format(new Date(`${day}T00:00:00Z`))
    .replace(/\.$/, '');
}

/** "17 Nov"; "17 Nov 2027" when it is not in the year of `beside`. */
export function dateWords(day: string, beside = day): string {
  const names = dates(day.slice(0, 4) === beside.slice(0, 4) ? 'day' : 'day and year');
  return names.format(new Date(`${day}T00:00:00Z`));
}

/** "10:50" in the hours chosen, from minutes after midnight. */
export function at(minutes: number): string {
  return clock(minutes, settings.hours);
}

/** "fish, egg and wheat" */
export function list(items: string[]): string {
  return new Intl.ListFormat(languages[settings.language].tag, { type: 'conjunction' }).format(items);
}
