import { describe, expect, it } from 'vitest';
import { amountWords, shortOf, vans, type Line, type Order } from './order';

const line = (supplier: string, order_by: string, pence: number): Line => ({
  supplier,
  order_by,
  arrives: '2026-11-18',
  food: 'x',
  name: 'X',
  pack: 'bag',
  count: 1,
  pence,
  unit: 'g',
  holds: 1,
  uses: [],
  left: 0,
  good_until: '2026-12-01',
  keeping_assumed: false,
});

describe('an order', () => {
  it('is one list for each delivery, the earliest order day first', () => {
    const order = { lines: [line('B', '2026-11-17', 100), line('A', '2026-11-12', 50), line('B', '2026-11-17', 20)] };
    expect(vans(order as Order).map((van) => [van.supplier, van.lines.length, van.pence])).toEqual([
      ['A', 1, 50],
      ['B', 2, 120],
    ]);
  });

  it('says amounts as they are weighed', () => {
    expect([
      amountWords(5400, 'g'),
      amountWords(750, 'g'),
      amountWords(1200, 'ml'),
      amountWords(12, 'each'),
      amountWords(8.333333, 'wraps'),
    ]).toEqual(['5.4 kg', '750 g', '1.2 l', '12', '8.33 wraps']);
  });

  it('tells what is short once, with every lesson that goes without', () => {
    const short = { name: 'Celery', amount: 480, unit: 'g', why: 'no price' };
    const order = {
      shortfalls: [
        { ...short, lesson: '7B' },
        { ...short, lesson: '9K' },
      ],
    };
    expect(shortOf(order as Order)).toEqual([{ ...short, amount: 960, lessons: ['7B', '9K'] }]);
  });
});
