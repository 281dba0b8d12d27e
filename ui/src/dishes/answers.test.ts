import { describe, expect, it } from 'vitest';
import { answered } from './answers';
import type { Dish } from './dish';

const dish: Dish = {
  kind: 'dish',
  version: 1,
  name: 'Pie',
  ingredients: [
    { name: 'flour', amount: 200, unit: 'g' },
    { name: 'swede thing', amount: 1, food: 'suede' },
  ],
  method: [
    { id: 'mix', do: 'Mix.', short: 'Mix', minutes: 5 },
    {
      id: 'bake',
      do: 'Bake.',
      short: 'Bake pie',
      minutes: 20,
      attention: 'leave',
      heat: { oven: 'tin', celsius: 180 },
    },
  ],
};

describe('answers to questions about pasted text', () => {
  it('puts in how many it feeds', () => {
    expect(answered(dish, { says: 'How many does it serve?', about: 'portions' }, '6')?.portions).toBe(6);
  });

  it('finds a step by its name, not by a number that may have shifted', () => {
    const hot = answered(dish, { says: 'How hot is the oven for ‘Bake pie’?', about: 'step 1 heat' }, '200 °C');
    expect(hot?.method[1]?.heat).toEqual({ oven: 'tin', celsius: 200 });
    const long = answered(dish, { says: "How long does 'Bake pie' take?", about: 'step 9 minutes' }, '40 min');
    expect(long?.method[1]?.minutes).toBe(40);
  });

  it('takes no figures from a wrong food when none of the choices is right', () => {
    const asked = { says: 'Which food is ‘swede thing’?', about: 'ingredient 2', choices: ['Swede', 'none of these'] };
    expect(answered(dish, asked, 'none of these')?.ingredients[1]).toEqual({ name: 'swede thing', amount: 1 });
    expect(answered(dish, asked, 'Swede')?.ingredients[1]?.name).toBe('Swede');
  });

  it('says so when it cannot put an answer in', () => {
    expect(answered(dish, { says: 'Why?', about: 'weather' }, 'rain')).toBeNull();
    expect(answered(dish, { says: 'How hot is ‘Fry’?', about: 'step 1 heat' }, '200 °C')).toBeNull();
  });
});
