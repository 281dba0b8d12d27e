import { describe, expect, it } from 'vitest';
import { atOnce } from './rules';

// docs/files.md, "House rules": hot oil 50, at most 2 at once; first knife 4; large pan 20; blender 20; probing 50; adult
// only 100.
describe('what one adult can watch', () => {
  it('follows from the usual shares', () => {
    expect(
      (['hot oil', 'first knife', 'large pan', 'blender', 'probing', 'adult only'] as const).map((h) =>
        atOnce(h, undefined),
      ),
    ).toEqual([2, 25, 5, 5, 2, 1]);
  });

  it('is the smaller of the share and the limit', () => {
    expect(atOnce('hot oil', { at_once: 1 })).toBe(1);
    expect(atOnce('hot oil', { hundredths: 100 })).toBe(1);
    expect(atOnce('large pan', { hundredths: 25, at_once: 9 })).toBe(4);
  });
});
