import { describe, expect, it } from 'vitest';
import { fits, pence, type Wanted } from './filter';
import type { DishRow } from './known.svelte';

const any: Wanted = {
  words: '',
  minutes: null,
  hands: null,
  pence: null,
  withoutHazard: '',
  without: [],
  skill: '',
  heat: '',
};
const scones: DishRow = {
  id: 'fruit-scones',
  name: 'Fruit scones',
  tag: 'FS',
  portions: 8,
  minutes: 38,
  hands_minutes: 21,
  hazards: [],
  skills: ['rubbing in'],
  allergens: ['gluten', 'milk'],
  check_label: ['sulphites'],
  cost_per_portion: '£0.84',
  heat: ['oven'],
  variants: [],
  version: 1,
};

describe('dishes that fit', () => {
  it('never takes an unread label for safe', () => {
    expect(fits(scones, { ...any, without: ['sulphites'] })).toBe(false);
    expect(fits(scones, { ...any, without: ['nuts'] })).toBe(true);
  });

  it('never takes a missing price for cheap', () => {
    expect(fits({ ...scones, cost_per_portion: null }, { ...any, pence: 500 })).toBe(false);
    expect([pence('£0.84'), pence('£12.05'), pence('84p'), pence(null)]).toEqual([84, 1205, 84, null]);
  });

  it('finds words whatever the accents and capitals', () => {
    expect(fits({ ...scones, name: 'Crème brûlée' }, { ...any, words: 'creme BRU' })).toBe(true);
  });

  it('takes "oven" to mean nothing but the oven', () => {
    expect(fits(scones, { ...any, heat: 'oven' })).toBe(true);
    expect(fits({ ...scones, heat: ['ring', 'oven'] }, { ...any, heat: 'oven' })).toBe(false);
    expect(fits({ ...scones, heat: [] }, { ...any, heat: 'none' })).toBe(true);
  });

  it('counts minutes to the last one', () => {
    expect(fits(scones, { ...any, minutes: 38, hands: 21 })).toBe(true);
    expect(fits(scones, { ...any, minutes: 37 })).toBe(false);
  });
});
