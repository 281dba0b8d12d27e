/** A room's document as the page changes it (docs/files.md, "A room"). */

export interface Cooker {
  name: string;
  rings?: number;
  shelves?: number;
  grill?: 'none' | 'in oven' | 'eye level';
  fan?: boolean;
  [more: string]: unknown;
}
export type Place = string | { name: string; cookers?: string[]; [more: string]: unknown };
export interface Bay {
  name: string;
  sinks?: number;
  cookers: Cooker[];
  places: Place[];
}
export interface Kit {
  item: string;
  count?: number;
  washed_between?: boolean;
  full_clean_minutes?: number;
  [more: string]: unknown;
}
export interface Room {
  kind: 'room';
  version: number;
  name: string;
  bays: Bay[];
  hand_basins?: number;
  table_positions?: number;
  kit?: Kit[];
  [more: string]: unknown;
}

export const placeName = (place: Place): string => (typeof place === 'string' ? place : place.name);

/** A, B, ... Z, then A2, B2: the first letter no bay has. */
export function nextLetter(bays: Bay[]): string {
  for (let round = 1; ; round += 1) {
    for (let i = 0; i < 26; i += 1) {
      const name = String.fromCharCode(65 + i) + (round > 1 ? String(round) : '');
      if (!bays.some((bay) => bay.name === name)) return name;
    }
  }
}

function freshName(bay: string, taken: string[]): string {
  for (let n = 1; ; n += 1) if (!taken.includes(`${bay}${n}`)) return `${bay}${n}`;
}

/** The bay with so many cookers. New ones are like the last; a place never keeps a cooker that is gone. */
export function withCookers(bay: Bay, count: number): Bay {
  const cookers = bay.cookers.slice(0, count);
  while (cookers.length < count) {
    const like: Partial<Cooker> = { ...cookers.at(-1) };
    cookers.push({
      ...like,
      name: freshName(
        bay.name,
        cookers.map((cooker) => cooker.name),
      ),
    });
  }
  const there = new Set(cookers.map((cooker) => cooker.name));
  const gone = bay.cookers.filter((cooker) => !there.has(cooker.name)).map((cooker) => cooker.name);
  const places = bay.places.map((place): Place => {
    if (typeof place === 'string' || !place.cookers?.some((name) => gone.includes(name))) return place;
    const left = place.cookers.filter((name) => !gone.includes(name));
    // A place that lost all its cookers is shared out again with the others of its bay.
    return left.length > 0 ? { ...place, cookers: left } : place.name;
  });
  return { ...bay, cookers, places };
}

/** The bay with so many places. */
export function withPlaces(bay: Bay, count: number): Bay {
  const places = bay.places.slice(0, count);
  while (places.length < count) places.push(freshName(bay.name, places.map(placeName)));
  return { ...bay, places };
}

/** One more bay like the last. */
export function withBay(room: Room): Room {
  const name = nextLetter(room.bays);
  const last = room.bays.at(-1);
  let bay: Bay = { name, sinks: last?.sinks ?? 1, cookers: [], places: [] };
  bay = withCookers(bay, last?.cookers.length ?? 1);
  bay.cookers = bay.cookers.map((cooker, i) => ({ ...last?.cookers[i], name: cooker.name }));
  return { ...room, bays: [...room.bays, withPlaces(bay, last?.places.length ?? 4)] };
}

/** A room to begin with: six bays of four places, a cooker and a sink each. */
export function firstRoom(name: string): Room {
  let room: Room = { kind: 'room', version: 1, name, bays: [], hand_basins: 1, kit: [] };
  for (let i = 0; i < 6; i += 1) room = withBay(room);
  return room;
}

/** Which cooker of its bay a place uses, as the program spreads them: its own first one, or evenly by order. */
export function cookerOf(bay: Bay, index: number): string | undefined {
  const place = bay.places[index];
  if (typeof place === 'object' && place.cookers?.[0]) return place.cookers[0];
  return bay.cookers[Math.floor((index * bay.cookers.length) / Math.max(1, bay.places.length))]?.name;
}

export interface Totals {
  places: number;
  cookers: number;
  rings: number;
  ovens: number;
  sinks: number;
}
export function totals(room: Room): Totals {
  const cookers = room.bays.flatMap((bay) => bay.cookers);
  return {
    places: room.bays.reduce((sum, bay) => sum + bay.places.length, 0),
    cookers: cookers.length,
    rings: cookers.reduce((sum, cooker) => sum + (cooker.rings ?? 4), 0),
    ovens: cookers.filter((cooker) => (cooker.shelves ?? 2) > 0).length,
    sinks: room.bays.reduce((sum, bay) => sum + (bay.sinks ?? 1), 0),
  };
}
