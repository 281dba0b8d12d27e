import { describe, expect, it } from 'vitest';
import { placeMarks } from './chance';

describe('twenty marks about the bell', () => {
  it('never carries a mark over the bell', () => {
    const ends = [...Array<number>(16).fill(-1), 0, 0.5, 40, 200];
    const marks = placeMarks(ends, 2, 8, 6);
    expect(marks.filter((mark) => !mark.late)).toHaveLength(17); // an end on the bell is in time
    expect(marks.filter((mark) => mark.late)).toHaveLength(3);
  });

  it('puts no two marks on one spot and fills no stack over its height', () => {
    const marks = placeMarks(Array<number>(20).fill(-3), 2, 8, 6);
    expect(new Set(marks.map((mark) => `${mark.column}/${mark.row}`)).size).toBe(20);
    expect(Math.max(...marks.map((mark) => mark.row))).toBeLessThan(6);
  });

  it('stands further from the bell the more there is between', () => {
    const [near, far] = placeMarks([-1, -9], 2, 8, 6);
    expect(near?.column).toBe(0);
    expect(far?.column).toBe(4);
  });
});
