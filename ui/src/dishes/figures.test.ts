import { describe, expect, it } from 'vitest';
import { amountText, rounded } from './figures';

describe('figures of a dish', () => {
  it('claims no more than is known', () => {
    expect(amountText({ amount: 1.93, most: 17.2, known: 'at least' }, 'g')).toBe('1.9 to 17 g');
    expect(amountText({ amount: 0.31, most: null, known: 'at least' }, 'g')).toBe('at least 0.3 g');
    expect(amountText({ amount: 5.744, most: 5.744, known: 'whole' }, 'g')).toBe('5.7 g');
  });
  it('rounds to a tenth below ten', () => {
    expect([rounded(0.38), rounded(9.96), rounded(185.29)]).toEqual(['0.4', '10', '185']);
  });
});
