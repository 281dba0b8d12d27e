import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const css = readFileSync(join(import.meta.dirname, 'tokens.css'), 'utf8');

/** The tokens of a block of the file; the black-on-white look changes some of the usual ones. */
function tokens(block: RegExp): Record<string, string> {
  const text = block.exec(css)?.[1] ?? '';
  return Object.fromEntries([...text.matchAll(/--([\w-]+): (#[0-9a-f]{6})/g)].map((one) => [one[1], one[2]]));
}
const paper = tokens(/:root \{([\s\S]*?)\n\}/);
const looks: Record<string, Record<string, string>> = {
  paper,
  contrast: { ...paper, ...tokens(/data-theme='contrast'\] \{([\s\S]*?)\n\}/) },
};

/** Relative luminance and contrast as WCAG 2.2 defines them (w3.org/TR/WCAG22, "relative luminance", "contrast ratio"). */
function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const c = parseInt(colour.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * (r ?? 0) + 0.7152 * (g ?? 0) + 0.0722 * (b ?? 0);
}
function contrast(a: string, b: string): number {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return ((high ?? 0) + 0.05) / ((low ?? 0) + 0.05);
}

const text: [ink: string, ground: string][] = [
  ...['paper', 'card', 'band', 'beet-wash', 'ember-wash', 'saffron'].map((ground): [string, string] => ['ink', ground]),
  ...['paper', 'card', 'band', 'ember-wash', 'beet-wash'].map((ground): [string, string] => ['soft', ground]),
  ...['paper', 'card', 'ember-wash', 'beet-wash'].map((ground): [string, string] => ['beetroot', ground]),
  ...['leaf', 'ember', 'sky'].map((ink): [string, string] => [ink, 'paper']),
  ['ember', 'ember-wash'],
  ['card', 'beetroot'],
  ...[1, 2, 3, 4, 5, 6, 7, 8].map((n): [string, string] => ['card', `dish-${n}`]),
];

describe('contrast', () => {
  it('is reckoned as WCAG does: black on white is 21 to 1', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
  });

  for (const [look, colours] of Object.entries(looks)) {
    it(`of text is 4.5 to 1 or more in the look "${look}"`, () => {
      for (const [ink, ground] of text) {
        expect(contrast(colours[ink] ?? '', colours[ground] ?? ''), `${ink} on ${ground}`).toBeGreaterThanOrEqual(4.5);
      }
    });
    it(`of lines that mean something is 3 to 1 or more in the look "${look}"`, () => {
      for (const ground of ['paper', 'card']) {
        expect(contrast(colours.edge ?? '', colours[ground] ?? ''), ground).toBeGreaterThanOrEqual(3);
      }
    });
  }
});
