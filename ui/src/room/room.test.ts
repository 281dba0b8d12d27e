import { describe, expect, it } from 'vitest';
import { cookerOf, firstRoom, nextLetter, placeName, totals, withBay, withCookers, withPlaces, type Bay } from './room';

const bay: Bay = {
  name: 'B',
  sinks: 1,
  cookers: [
    { name: 'B1', rings: 4 },
    { name: 'B2', rings: 2 },
  ],
  places: [
    { name: 'B1', cookers: ['B1', 'A2'] },
    { name: 'B2', cookers: ['B2'] },
  ],
};

describe('drawing a room', () => {
  it('begins with six bays that hold 24 pupils', () => {
    expect(totals(firstRoom('Food room'))).toEqual({ places: 24, cookers: 6, rings: 24, ovens: 6, sinks: 6 });
  });

  it('gives every cooker and place a name of its own', () => {
    const room = withBay(firstRoom('Food room'));
    const names = room.bays.flatMap((one) => one.cookers.map((cooker) => cooker.name));
    expect(new Set(names).size).toBe(names.length);
    expect(withPlaces(bay, 4).places.map(placeName)).toEqual(['B1', 'B2', 'B3', 'B4']);
    expect(nextLetter([...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].map((name) => ({ ...bay, name })))).toBe('A2');
  });

  it('never leaves a place at a cooker that is gone', () => {
    const one = withCookers(bay, 1);
    expect(one.places).toEqual([{ name: 'B1', cookers: ['B1', 'A2'] }, 'B2']);
    expect(cookerOf(one, 1)).toBe('B1');
  });

  it('makes a new cooker like the last', () => {
    expect(withCookers(bay, 3).cookers[2]).toEqual({ name: 'B3', rings: 2 });
  });

  it('spreads places evenly where nothing is said', () => {
    const four: Bay = { ...bay, places: ['B1', 'B2', 'B3', 'B4'] };
    expect([0, 1, 2, 3].map((i) => cookerOf(four, i))).toEqual(['B1', 'B1', 'B2', 'B2']);
  });
});
