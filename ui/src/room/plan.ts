/** A room as its document has it (docs/files.md "A room"), and the changes a page makes to it: plain values in, plain
 *  values out. Cookers, places and bays are known by their names, so a new name is carried to wherever it stands. */

export type Grill = 'none' | 'in oven' | 'eye level';
/** What of a cooker burns gas; the rest is electric. */
export type Gas = 'none' | 'rings' | 'all';
export interface Cooker {
  name: string;
  /** 0 to 12; left out = 4. */
  rings?: number;
  /** 0 to 12; left out = 2; 0 = a hob without an oven. */
  shelves?: number;
  grill?: Grill;
  /** Under an eye-level grill, 1 to 12. */
  grill_places?: number;
  fan?: boolean;
  gas?: Gas;
}
export interface Place {
  name: string;
  /** Within reach, own one first; also of another bay. */
  cookers?: string[];
}
export interface Bay {
  name: string;
  sinks?: number;
  cookers?: Cooker[];
  places?: (string | Place)[];
}
export interface Kit {
  item: string;
  count?: number;
  washed_between?: boolean;
  full_clean_minutes?: number;
}
export interface Room {
  kind: 'room';
  version: 1;
  name: string;
  bays: Bay[];
  hand_basins?: number;
  hands_at_sinks?: boolean;
  table_positions?: number;
  fridge_tenths?: number;
  freezer_tenths?: number;
  kit?: Kit[];
  change_over?: Record<string, number>;
  seen_together?: string[][];
}

export const rings = (cooker: Cooker): number => cooker.rings ?? 4;
export const shelves = (cooker: Cooker): number => cooker.shelves ?? 2;
export const hasFan = (cooker: Cooker): boolean => cooker.fan ?? shelves(cooker) > 0;
export const gasOf = (cooker: Cooker): Gas => cooker.gas ?? 'none';
export const grillOf = (cooker: Cooker): Grill => cooker.grill ?? (shelves(cooker) > 0 ? 'in oven' : 'none');

/** Places of a bay with the cookers they reach. A place that says nothing is given the bay's cookers evenly, every cooker
 *  being somebody's own (the rule of docs/files.md). */
export function placesOf(bay: Bay): Required<Place>[] {
  const cookers = bay.cookers ?? [];
  const places = bay.places ?? [];
  return places.map((place, i) => {
    if (typeof place !== 'string' && place.cookers) return { name: place.name, cookers: place.cookers };
    const from = Math.floor((i * cookers.length) / places.length);
    const to = Math.max(from + 1, Math.floor(((i + 1) * cookers.length) / places.length));
    const reach = cookers.slice(from, places.length >= cookers.length ? from + 1 : to).map((cooker) => cooker.name);
    return { name: typeof place === 'string' ? place : place.name, cookers: reach };
  });
}

export interface Counts {
  bays: number;
  cookers: number;
  sinks: number;
  places: number;
}
export function counts(room: Room): Counts {
  const sum = (of: (bay: Bay) => number): number => room.bays.reduce((all, bay) => all + of(bay), 0);
  return {
    bays: room.bays.length,
    cookers: sum((bay) => bay.cookers?.length ?? 0),
    sinks: sum((bay) => bay.sinks ?? 1),
    places: sum((bay) => bay.places?.length ?? 0),
  };
}

/** A, B ... Z, AA, AB ...: the first that no bay has. */
export function freeBayName(taken: readonly string[]): string {
  for (let i = 0; ; i += 1) {
    const name = (i >= 26 ? String.fromCharCode(64 + Math.floor(i / 26)) : '') + String.fromCharCode(65 + (i % 26));
    if (!taken.includes(name)) return name;
  }
}

/** "A3": the bay's name with the first number that is free in the room. */
export function freeName(bay: string, taken: readonly string[]): string {
  for (let i = 1; ; i += 1) if (!taken.includes(`${bay}${i}`)) return `${bay}${i}`;
}

/** Whole shares of `all`, the first ones one more. */
function shares(all: number, parts: number): number[] {
  return Array.from({ length: parts }, (_, i) => Math.floor(all / parts) + (i < all % parts ? 1 : 0));
}

/** What such a room often has, counted for pupils who work in pairs: common practice, no source. A start to correct. */
function usualKit(pupils: number): Kit[] {
  const pairs = Math.ceil(pupils / 2);
  const of = (item: string, count: number, more: Partial<Kit> = {}): Kit => ({
    item,
    count: Math.max(1, count),
    ...more,
  });
  return [
    of('knife', pupils),
    of('red board', pairs),
    of('blue board', pairs),
    of('scales', pairs),
    of('kettle', Math.ceil(pupils / 4)),
    of('electric whisk', Math.ceil(pairs / 2), { washed_between: true }),
    of('hand blender', Math.ceil(pairs / 3), { washed_between: true }),
    of('piping set', Math.ceil(pairs / 2), { washed_between: true }),
    of('food processor', Math.ceil(pairs / 6), { washed_between: true }),
    of('probe', Math.ceil(pairs / 2)),
  ];
}

/** Three numbers make a room: two cookers to an island, but no more islands than sinks, because each has one. */
export function fromThreeNumbers(name: string, cookers: number, sinks: number, pupils: number): Room {
  const bays = Math.max(1, Math.min(Math.ceil(cookers / 2), sinks));
  const cookersOf = shares(cookers, bays);
  const sinksOf = shares(Math.max(sinks, bays), bays);
  const placesOf = shares(Math.max(pupils, bays), bays);
  return {
    kind: 'room',
    version: 1,
    name,
    bays: Array.from({ length: bays }, (_, i) => {
      const bay = freeBayName(Array.from({ length: i }, (_, k) => String.fromCharCode(65 + k)));
      return {
        name: bay,
        sinks: sinksOf[i] ?? 1,
        cookers: Array.from({ length: cookersOf[i] ?? 1 }, (_, k) => ({ name: `${bay}${k + 1}` })),
        places: Array.from({ length: placesOf[i] ?? 1 }, (_, k) => `${bay}${k + 1}`),
      };
    }),
    kit: usualKit(pupils),
  };
}

const cookerNames = (room: Room): string[] => room.bays.flatMap((bay) => (bay.cookers ?? []).map((c) => c.name));
const placeNames = (room: Room): string[] => room.bays.flatMap((bay) => placesOf(bay).map((p) => p.name));

/** Every place with its cookers written out, so that adding or taking one leaves the others as they are. */
const writtenOut = (room: Room): Room => ({
  ...room,
  bays: room.bays.map((bay) => ({ ...bay, places: placesOf(bay) })),
});

function withBay(room: Room, at: number, change: (bay: Bay) => Bay): Room {
  return { ...room, bays: room.bays.map((bay, i) => (i === at ? change(bay) : bay)) };
}

export function addBay(room: Room): Room {
  const name = freeBayName(room.bays.map((bay) => bay.name));
  const cooker = freeName(name, cookerNames(room));
  const taken = placeNames(room);
  const places: Place[] = [];
  for (let i = 0; i < 4; i += 1) {
    const place = freeName(name, [...taken, ...places.map((p) => p.name)]);
    places.push({ name: place, cookers: [cooker] });
  }
  return { ...room, bays: [...room.bays, { name, sinks: 1, cookers: [{ name: cooker }], places }] };
}

export function removeBay(room: Room, at: number): Room {
  const bay = room.bays[at];
  if (!bay) return room;
  const gone = (bay.cookers ?? []).map((cooker) => cooker.name);
  const out = writtenOut(room);
  const seen = out.seen_together?.map((set) => set.filter((name) => name !== bay.name)).filter((set) => set.length > 0);
  return {
    ...withoutCookers({ ...out, bays: out.bays.filter((_, i) => i !== at) }, gone),
    seen_together: seen && seen.length > 0 ? seen : undefined,
  };
}

export function renameBay(room: Room, at: number, name: string): Room {
  const before = room.bays[at]?.name;
  return {
    ...withBay(room, at, (bay) => ({ ...bay, name })),
    seen_together: room.seen_together?.map((set) => set.map((each) => (each === before ? name : each))),
  };
}

/** One bay earlier (-1) or later (1): the order in which places are filled. */
export function moveBay(room: Room, at: number, by: -1 | 1): Room {
  const bays = [...room.bays];
  const [bay] = bays.splice(at, 1);
  if (bay) bays.splice(at + by, 0, bay);
  return { ...room, bays };
}

export function addCooker(room: Room, at: number): Room {
  const out = writtenOut(room);
  const name = freeName(room.bays[at]?.name ?? '', cookerNames(room));
  return withBay(out, at, (bay) => ({ ...bay, cookers: [...(bay.cookers ?? []), { name }] }));
}

function withoutCookers(room: Room, gone: string[]): Room {
  return {
    ...room,
    bays: room.bays.map((bay) => {
      const left = (bay.cookers ?? []).filter((cooker) => !gone.includes(cooker.name));
      return {
        ...bay,
        cookers: left,
        places: placesOf(bay).map((place) => {
          const reach = place.cookers.filter((name) => !gone.includes(name));
          // Whoever loses the last cooker is given the bay's first one, if there is one.
          return { ...place, cookers: reach.length > 0 ? reach : left.slice(0, 1).map((cooker) => cooker.name) };
        }),
      };
    }),
  };
}

export const removeCooker = (room: Room, name: string): Room => withoutCookers(writtenOut(room), [name]);

export function renameCooker(room: Room, from: string, to: string): Room {
  const out = writtenOut(room);
  return {
    ...out,
    bays: out.bays.map((bay) => ({
      ...bay,
      cookers: bay.cookers?.map((cooker) => (cooker.name === from ? { ...cooker, name: to } : cooker)),
      places: placesOf(bay).map((place) => ({
        ...place,
        cookers: place.cookers.map((name) => (name === from ? to : name)),
      })),
    })),
  };
}

/** A cooker without what is usual, and without what it cannot have: a hob has no fan and no grill in its oven. */
export function leanCooker(cooker: Cooker): Cooker {
  const out: Cooker = { name: cooker.name };
  const oven = shelves(cooker) > 0;
  if (rings(cooker) !== 4) out.rings = rings(cooker);
  if (shelves(cooker) !== 2) out.shelves = shelves(cooker);
  const grill = !oven && grillOf(cooker) === 'in oven' ? 'none' : grillOf(cooker);
  if (grill !== (oven ? 'in oven' : 'none')) out.grill = grill;
  if (grill === 'eye level' && (cooker.grill_places ?? 1) !== 1) out.grill_places = cooker.grill_places;
  if (oven && !hasFan(cooker)) out.fan = false;
  if (gasOf(cooker) !== 'none') out.gas = gasOf(cooker);
  return out;
}

export function setCooker(room: Room, at: number, i: number, change: Partial<Cooker>): Room {
  return withBay(room, at, (bay) => ({
    ...bay,
    cookers: (bay.cookers ?? []).map((cooker, k) => (k === i ? leanCooker({ ...cooker, ...change }) : cooker)),
  }));
}

export function addPlace(room: Room, at: number): Room {
  const out = writtenOut(room);
  const bay = out.bays[at];
  if (!bay) return room;
  const own = (bay.cookers ?? [])[0]?.name ?? cookerNames(room)[0];
  // The cooker that fewest call their own gets the newcomer.
  const uses = (name: string): number => placesOf(bay).filter((place) => place.cookers[0] === name).length;
  const least = (bay.cookers ?? []).map((c) => c.name).sort((a, b) => uses(a) - uses(b))[0] ?? own;
  const place: Place = { name: freeName(bay.name, placeNames(room)), cookers: least ? [least] : [] };
  return withBay(out, at, (b) => ({ ...b, places: [...(b.places ?? []), place] }));
}

export function removePlace(room: Room, at: number, i: number): Room {
  return withBay(writtenOut(room), at, (bay) => ({ ...bay, places: (bay.places ?? []).filter((_, k) => k !== i) }));
}

export function setPlace(room: Room, at: number, i: number, change: Partial<Place>): Room {
  return withBay(writtenOut(room), at, (bay) => ({
    ...bay,
    places: placesOf(bay).map((place, k) => (k === i ? { ...place, ...change } : place)),
  }));
}

/** Another own cooker: it goes to the front of what is within reach. */
export function setOwn(place: Required<Place>, own: string): string[] {
  return [own, ...place.cookers.filter((name) => name !== own)];
}

export const allCookers = cookerNames;
