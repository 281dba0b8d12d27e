import { describe, expect, it } from 'vitest';
import { faultsIn, joined, missingIn, read, unknownIn } from './tables';

describe('the school’s tables', () => {
  it('tells faults by the line they stand in', () => {
    const table = read('Food,Size,Price,Keeps days\nflour,1.5 kg,0.89,300\n,500 g,cheap,\n\nmilk,,120p,soon\n');
    expect(faultsIn('prices', table).map((fault) => fault.line)).toEqual([3, 3, 5, 5]);
    expect(faultsIn('stock', read('food,amount,use_by\nmilk,2 l,17.11.2026\n'))[0]?.says).toContain('17.11.2026');
  });

  it('says which columns are missing and which are not known', () => {
    const table = read('food;pack;colour\nmilk;bottle;white\n');
    expect(missingIn('prices', table)).toEqual(['size']);
    expect(unknownIn('prices', table)).toEqual(['colour']);
  });

  it('adds rows by the names of their columns, whatever the order', () => {
    const more = joined(read('food,amount\nmilk,1 l\n'), read('where,amount,food\nfridge,6,egg\n'));
    expect(more.head).toEqual(['food', 'amount', 'where']);
    expect(more.rows).toEqual([
      ['milk', '1 l', ''],
      ['egg', '6', 'fridge'],
    ]);
  });
});
