import { describe, expect, it } from 'vitest';
import { allergens, paces, paceWord, renamed, without, type ClassDoc } from './class';

const doc: ClassDoc = {
  kind: 'class',
  version: 1,
  name: '9K',
  pupils: [
    { name: 'Dylan M.' },
    { name: 'Jakub R.' },
    { name: 'Esme T.', needs: [{ need: 'milk', reach: 'may not eat' }] },
  ],
  never_together: [['Dylan M.', 'Jakub R.']],
};

describe('a class', () => {
  it('keeps its pairs when a pupil is renamed', () => {
    expect(renamed(doc, 0, 'Dilan M.').never_together).toEqual([['Dilan M.', 'Jakub R.']]);
  });
  it('names nobody who is gone', () => {
    expect(without(doc, 1).never_together).toEqual([]);
    expect(without(doc, 2).never_together).toEqual([['Dylan M.', 'Jakub R.']]);
  });
  it('says every pace in a word that means the same figure', () => {
    for (const [word, figure] of Object.entries(paces)) expect(paceWord(figure)).toBe(word);
    expect(paceWord(undefined)).toBe('usual');
  });
  // Regulation (EU) No 1169/2011, Annex II lists fourteen.
  it('knows fourteen allergens', () => {
    expect(new Set(allergens).size).toBe(14);
  });
});
