import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { en } from './en';
import { languages, list, say, type Key, type Phrase } from './words.svelte';

const keys = Object.keys(en) as Key[];
const forms = (phrase: Phrase): string[] => (typeof phrase === 'string' ? [phrase] : Object.values(phrase));
const gaps = (text: string): string[] => [...text.matchAll(/\{(\w+)\}/g)].map((found) => found[1] ?? '').sort();
/** Pages that every language must have whole. */
const whole =
  /^(shell|nav|net|dialog|keys|looks|undo|problem|clash|sign_in|work|word|says|chance|week|four|again|order|first|reads|lesson|change|print)\b/;

function sources(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return sources(path);
    return /\.(svelte|ts)$/.test(entry.name) && !path.includes('words') ? [readFileSync(path, 'utf8')] : [];
  });
}

describe('words', () => {
  for (const [code, { words }] of Object.entries(languages)) {
    if (code === 'en') continue;
    it(`${code} has the frame, the week and the lesson whole`, () => {
      expect(keys.filter((key) => whole.test(key) && words[key] === undefined)).toEqual([]);
    });
    it(`${code} fills in the same values as English, and knows no key that English does not`, () => {
      for (const [key, phrase] of Object.entries(words)) {
        expect(keys, key).toContain(key);
        const wanted = [...new Set(forms(en[key as Key]).flatMap(gaps))].sort();
        expect([...new Set(forms(phrase).flatMap(gaps))].sort(), key).toEqual(wanted);
      }
    });
  }

  it('are all used: a word nobody says is a word nobody keeps true', () => {
    const code = sources(join(import.meta.dirname, '..')).join('\n');
    // Keys put together from parts ("word." + pattern) are named by their beginning.
    const put = [...code.matchAll(/`([a-z_.]+)\$\{/g)].map((found) => found[1] ?? '');
    const steps = [...code.matchAll(/`\$\{step\.says\}\.(\w+)`/g)].map((found) => `.${found[1] ?? ''}`);
    const unused = keys.filter(
      (key) =>
        !code.includes(`'${key}'`) &&
        !put.some((beginning) => key.startsWith(beginning)) &&
        !steps.some((ending) => key.endsWith(ending)),
    );
    expect(unused).toEqual([]);
  });

  it('take the plural their language asks for and fall back to English one by one', () => {
    expect(say('en', 'order.days', { n: 1 })).toBe('1 day left');
    expect(say('de', 'order.days', { n: 2 })).toBe('noch 2 Tage');
    expect(say('de', 'dishes.title')).toBe(say('en', 'dishes.title'));
  });

  it('join a list as English does, without a comma before "and"', () => {
    expect(list(['fish', 'egg', 'wheat'])).toBe('fish, egg and wheat');
  });
});
