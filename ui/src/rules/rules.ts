/** House rules as their document has them (docs/files.md "House rules"), and what stands where nothing is written. */

export type Hazard = 'hot oil' | 'first knife' | 'large pan' | 'blender' | 'probing' | 'adult only';
export interface Watch {
  /** Of one adult, 1 to 100. */
  hundredths?: number;
  at_once?: number;
}
export interface WashUp {
  one?: number;
  two?: number;
  three?: number;
  each_further_dish?: number;
}
export interface HouseRules {
  kind: 'house_rules';
  version: 1;
  school?: string;
  frying?: boolean;
  frying_from_year?: number;
  knives_from_year?: number;
  /** 14: no year cooks on gas. */
  gas_from_year?: number;
  nuts?: boolean;
  food_home_chilled?: boolean;
  no_raw_tasting?: boolean;
  second_adult_for_frying?: boolean;
  /** Pupils one adult may have alone; 0: the house does not say. */
  second_adult_above?: number;
  count_knives?: boolean;
  look_at_bays?: boolean;
  watch?: Partial<Record<Hazard, Watch>>;
  apron_and_hands_minutes?: number;
  collect_ingredients_minutes?: number;
  collect_equipment_minutes?: number;
  clean_after_raw_minutes?: number;
  clean_after_unwashed_minutes?: number;
  hand_wash_minutes?: number;
  kit_wash_minutes?: number;
  kit_wash_within_minutes?: number;
  store_minutes?: number;
  pack_minutes?: number;
  wash_up_minutes?: WashUp;
  wash_in_parts?: boolean;
}

/** A switch: its sentence, and what it does to plans, are words of its name. [field, what stands when nothing is said]. */
export const switches = [
  ['frying', true],
  ['second_adult_for_frying', false],
  ['nuts', true],
  ['food_home_chilled', false],
  ['no_raw_tasting', false],
  ['count_knives', true],
  ['look_at_bays', true],
  ['wash_in_parts', true],
] as const;

export const years = [
  ['frying_from_year', 7],
  ['knives_from_year', 7],
  ['gas_from_year', 7],
] as const;

/** [field, minutes when nothing is said] */
export const minutes = [
  ['apron_and_hands_minutes', 2],
  ['collect_ingredients_minutes', 3],
  ['collect_equipment_minutes', 3],
  ['hand_wash_minutes', 1],
  ['clean_after_raw_minutes', 4],
  ['clean_after_unwashed_minutes', 2],
  ['kit_wash_minutes', 2],
  ['kit_wash_within_minutes', 15],
  ['store_minutes', 2],
  ['pack_minutes', 2],
] as const;

export const washUp = [
  ['one', 14],
  ['two', 10],
  ['three', 8],
  ['each_further_dish', 3],
] as const;

/** Hundredths of an adult, and the most at once (1000 = as many as their share lets through). docs/files.md says that all
 *  of it is from memory. */
export const watched: readonly (readonly [Hazard, number, number])[] = [
  ['hot oil', 50, 2],
  ['first knife', 4, 1000],
  ['large pan', 20, 1000],
  ['blender', 20, 1000],
  ['probing', 50, 1000],
  ['adult only', 100, 1000],
];
/** Shares of an adult that have words. */
export const shares = [100, 50, 33, 25, 20, 10, 4] as const;

export const newRules = (school: string): HouseRules => ({
  kind: 'house_rules',
  version: 1,
  ...(school ? { school } : {}),
});

/** How many of these one adult can watch at the same time: what their share of attention lets through. */
export function atOnce(hazard: Hazard, watch: Watch | undefined): number {
  const usual = watched.find(([name]) => name === hazard);
  const share = watch?.hundredths ?? usual?.[1] ?? 100;
  return Math.min(watch?.at_once ?? usual?.[2] ?? 1, Math.max(1, Math.floor(100 / share)));
}
