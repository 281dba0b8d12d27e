import { describe, expect, it } from 'vitest';
import { merge, same, settle } from './merge';

const dish = {
  name: 'Lentil dhal',
  portions: 2,
  ingredients: [
    { name: 'onion', amount: 1 },
    { name: 'red lentils', amount: 150 },
  ],
  method: [
    { id: 'dice', minutes: 6 },
    { id: 'simmer', minutes: 20 },
  ],
};

describe('two people change one dish', () => {
  it('joins changes of different fields without asking', () => {
    const yours = { ...dish, portions: 4 };
    const theirs = { ...dish, name: 'Red lentil dhal' };
    expect(merge(dish, yours, theirs)).toEqual({
      body: { ...dish, portions: 4, name: 'Red lentil dhal' },
      clashes: [],
    });
  });

  it('joins changes of different steps of one method', () => {
    const yours = {
      ...dish,
      method: [
        { id: 'dice', minutes: 8 },
        { id: 'simmer', minutes: 20 },
      ],
    };
    const theirs = {
      ...dish,
      method: [
        { id: 'dice', minutes: 6 },
        { id: 'simmer', minutes: 25 },
      ],
    };
    expect(merge(dish, yours, theirs).body).toEqual({
      ...dish,
      method: [
        { id: 'dice', minutes: 8 },
        { id: 'simmer', minutes: 25 },
      ],
    });
  });

  it('loses neither an added nor a removed ingredient', () => {
    const yours = {
      ...dish,
      ingredients: [dish.ingredients[0] ?? null, { name: 'garlic', amount: 1 }, dish.ingredients[1] ?? null],
    };
    const theirs = { ...dish, ingredients: [dish.ingredients[1] ?? null] };
    const merged = merge(dish, yours, theirs);
    expect(merged.clashes).toEqual([]);
    expect(merged.body).toMatchObject({ ingredients: [{ name: 'garlic' }, { name: 'red lentils' }] });
  });

  it('lists the same field changed twice, with what it was', () => {
    const merged = merge(dish, { ...dish, portions: 4 }, { ...dish, portions: 6 });
    expect(merged.clashes).toEqual([{ where: '/portions', before: 2, yours: 4, theirs: 6 }]);
    expect(merged.body).toMatchObject({ portions: 6 });
    expect(settle(merged.body, '/portions', 4)).toMatchObject({ portions: 4 });
  });

  it('asks when one removed a step the other changed', () => {
    const yours = { ...dish, method: [{ id: 'dice', minutes: 6 }] };
    const theirs = {
      ...dish,
      method: [
        { id: 'dice', minutes: 6 },
        { id: 'simmer', minutes: 30 },
      ],
    };
    const merged = merge(dish, yours, theirs);
    expect(merged.clashes.map((clash) => clash.where)).toEqual(['/method/simmer']);
    expect(settle(merged.body, '/method/simmer', undefined)).toMatchObject({ method: [{ id: 'dice' }] });
  });

  it('takes lists without names whole', () => {
    const merged = merge({ tags: ['a'] }, { tags: ['a', 'b'] }, { tags: ['a', 'c'] });
    expect(merged.clashes).toHaveLength(1);
  });

  // RFC 6901, section 3: "~" is written ~0 and "/" is written ~1.
  it('escapes pointers as RFC 6901 asks', () => {
    const merged = merge({ 'salt/pepper~': 1 }, { 'salt/pepper~': 2 }, { 'salt/pepper~': 3 });
    expect(merged.clashes[0]?.where).toBe('/salt~1pepper~0');
    expect(settle(merged.body, '/salt~1pepper~0', 2)).toEqual({ 'salt/pepper~': 2 });
  });

  it('compares whatever the order of keys', () => {
    expect(same({ a: 1, b: [1, { c: null }] }, { b: [1, { c: null }], a: 1 })).toBe(true);
    expect(same([1, 2], [2, 1])).toBe(false);
  });
});
