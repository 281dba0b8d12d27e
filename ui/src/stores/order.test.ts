import { describe, expect, it } from 'vitest';
import { bySupplier, money, type Order } from './order';

const line = (supplier: string, order_by: string | null) => ({
  supplier,
  order_by,
  arrives: null,
  food: 'butter',
  name: 'Butter',
  pack: '250 g',
  count: 1,
  pence: 179,
  uses: [],
});

describe('an order for shopping', () => {
  it('has a list for each van, the most urgent first, and loses no line', () => {
    const order: Order = {
      lines: [
        line('B', '2026-11-17'),
        line('A', '2026-11-12'),
        line('B', '2026-11-12'),
        line('Shop', null),
        line('A', '2026-11-12'),
      ],
      shortfalls: [],
      classes: [],
      total_pence: 0,
    };
    const lists = bySupplier(order);
    expect(lists.map((one) => [one.name, one.orderBy, one.lines.length])).toEqual([
      ['A', '2026-11-12', 2],
      ['B', '2026-11-12', 1],
      ['B', '2026-11-17', 1],
      ['Shop', null, 1],
    ]);
  });

  it('says pence as a shop does', () => {
    expect([money(65.54), money(99.6), money(14651)]).toEqual(['66p', '£1.00', '£146.51']);
  });
});
