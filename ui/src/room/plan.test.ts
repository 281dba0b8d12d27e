import { describe, expect, it } from 'vitest';
import {
  addBay,
  addCooker,
  addPlace,
  counts,
  freeBayName,
  fromThreeNumbers,
  leanCooker,
  moveBay,
  placesOf,
  removeBay,
  removeCooker,
  renameBay,
  renameCooker,
  type Room,
} from './plan';

const room: Room = {
  kind: 'room',
  version: 1,
  name: 'Food Room',
  bays: [
    { name: 'A', sinks: 2, cookers: [{ name: 'A1' }, { name: 'A2' }], places: ['A1', 'A2', 'A3', 'A4'] },
    { name: 'B', cookers: [{ name: 'B1' }], places: [{ name: 'B1', cookers: ['B1', 'A2'] }, 'B2'] },
  ],
  seen_together: [['A', 'B']],
};

const placesAt = (of: Room, at: number): ReturnType<typeof placesOf> => placesOf(of.bays[at] ?? { name: '' });

describe('a room', () => {
  it('of three numbers has exactly those cookers, sinks and places', () => {
    for (const [cookers, sinks, pupils] of [
      [8, 6, 24],
      [7, 2, 25],
      [12, 12, 12],
      [1, 1, 4],
      [20, 1, 40],
    ] as const) {
      const made = fromThreeNumbers('Room', cookers, sinks, pupils);
      expect(counts(made)).toMatchObject({ cookers, sinks, places: pupils });
      expect(made.bays.every((bay) => (bay.sinks ?? 0) >= 1)).toBe(true);
      const names = made.bays.flatMap((bay) => placesOf(bay).map((place) => place.name));
      expect(new Set(names).size).toBe(pupils);
      expect(made.kit?.find((each) => each.item === 'knife')?.count).toBe(pupils);
      expect(made.kit?.every((each) => (each.count ?? 0) >= 1)).toBe(true);
    }
  });

  it('gives a place that says nothing the cookers of its bay evenly', () => {
    expect(placesAt(room, 0).map((place) => place.cookers)).toEqual([['A1'], ['A1'], ['A2'], ['A2']]);
    expect(
      placesOf({ name: 'C', cookers: [{ name: '1' }, { name: '2' }, { name: '3' }], places: ['x'] })[0]?.cookers,
    ).toEqual(['1', '2', '3']);
  });

  it('carries a new name to every place that reaches the cooker', () => {
    const renamed = renameCooker(room, 'A2', 'Window');
    expect(placesAt(renamed, 1)[0]?.cookers).toEqual(['B1', 'Window']);
    expect(placesAt(renamed, 0)[3]?.cookers).toEqual(['Window']);
  });

  it('leaves nobody without a cooker when one is taken away', () => {
    const fewer = removeCooker(room, 'A2');
    expect(placesAt(fewer, 0).map((place) => place.cookers)).toEqual([['A1'], ['A1'], ['A1'], ['A1']]);
    expect(placesAt(fewer, 1)[0]?.cookers).toEqual(['B1']);
  });

  it('drops a bay from what is seen together, and takes a new name along', () => {
    expect(removeBay(room, 1).seen_together).toEqual([['A']]);
    expect(renameBay(room, 1, 'Back').seen_together).toEqual([['A', 'Back']]);
    expect(moveBay(room, 0, 1).bays.map((bay) => bay.name)).toEqual(['B', 'A']);
  });

  it('names what is new so that nothing stands there twice', () => {
    const bigger = addPlace(addCooker(addBay(room), 0), 0);
    expect(bigger.bays[2]?.name).toBe('C');
    expect(bigger.bays[0]?.cookers?.[2]?.name).toBe('A3');
    expect(placesAt(bigger, 0)[4]).toEqual({ name: 'A5', cookers: ['A3'] });
    expect(freeBayName(Array.from({ length: 26 }, (_, i) => String.fromCharCode(65 + i)))).toBe('AA');
  });

  it('never gives a hob a fan or a grill in an oven it has not', () => {
    expect(leanCooker({ name: 'H', shelves: 0, fan: true, grill: 'in oven' })).toEqual({ name: 'H', shelves: 0 });
    expect(leanCooker({ name: 'E', fan: false, grill: 'eye level', grill_places: 2 })).toEqual({
      name: 'E',
      fan: false,
      grill: 'eye level',
      grill_places: 2,
    });
    expect(leanCooker({ name: 'G', gas: 'rings' })).toEqual({ name: 'G', gas: 'rings' });
    expect(leanCooker({ name: 'G', gas: 'none' })).toEqual({ name: 'G' });
  });
});
