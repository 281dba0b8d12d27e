import { describe, expect, it } from 'vitest';
import { addNames, lean, newClass, rename, without, type Class } from './people';

const group: Class = {
  ...newClass('7B', 7),
  pupils: [{ name: 'Ann B.' }, { name: 'Bo C.' }, { name: 'Cy D.' }],
  never_together: [['Ann B.', 'Bo C.']],
  always_together: [['Bo C.', 'Cy D.']],
};

describe('a class', () => {
  it('takes names as they are pasted and says which stood there twice', () => {
    const { group: more, twice } = addNames(group, '1. Dee  E.\n\n- Ann B.\n  Eli F.\r\n• Dee E.');
    expect(more.pupils.map((pupil) => pupil.name)).toEqual(['Ann B.', 'Bo C.', 'Cy D.', 'Dee E.', 'Eli F.']);
    expect(twice).toEqual(['Ann B.', 'Dee E.']);
  });

  it('has sixty pupils at most and counts the rest', () => {
    const many = Array.from({ length: 63 }, (_, i) => `Pupil ${i}`).join('\n');
    const { group: full, tooMany } = addNames(newClass('X', 8), many);
    expect(full.pupils.length).toBe(60);
    expect(tooMany).toBe(3);
  });

  it('takes the seating rules along when somebody gets another name', () => {
    const renamed = rename(group, 'Bo C.', 'Bo Carr');
    expect(renamed.never_together).toEqual([['Ann B.', 'Bo Carr']]);
    expect(renamed.always_together).toEqual([['Bo Carr', 'Cy D.']]);
  });

  it('drops the rules of somebody who leaves, and an empty list of rules', () => {
    const left = without(group, 'Ann B.');
    expect(left.pupils.length).toBe(2);
    expect(left.never_together).toBeUndefined();
    expect(left.always_together).toEqual([['Bo C.', 'Cy D.']]);
  });

  it('writes nothing down that is usual', () => {
    expect(lean({ name: 'Ann', pace: 1, needs: [], limits: [] })).toEqual({ name: 'Ann' });
    expect(lean({ name: 'Ann', pace: 1.25, limits: ['low bench'] })).toEqual({
      name: 'Ann',
      pace: 1.25,
      limits: ['low bench'],
    });
  });
});
