/** The school's own switches (docs/files.md, "House rules"), in the order a teacher thinks of them. */

export interface WashUp {
  one?: number;
  two?: number;
  three?: number;
  each_further_dish?: number;
}
export interface HouseRules {
  kind: 'house_rules';
  version: number;
  school?: string;
  wash_up_minutes?: WashUp;
  [field: string]: unknown;
}

/** What holds where nothing is said: the defaults of docs/files.md. */
export const switches = {
  frying: true,
  second_adult_for_frying: false,
  nuts: true,
  count_knives: true,
  look_at_bays: true,
  wash_in_parts: true,
} as const;
export const years = { frying_from_year: 7, knives_from_year: 7 } as const;
export const minutes = {
  apron_and_hands_minutes: 2,
  collect_ingredients_minutes: 3,
  collect_equipment_minutes: 3,
  hand_wash_minutes: 1,
  clean_after_raw_minutes: 4,
  clean_after_unwashed_minutes: 2,
  kit_wash_minutes: 2,
  store_minutes: 2,
  pack_minutes: 2,
} as const;
export const washUp = { one: 14, two: 10, three: 8, each_further_dish: 3 } as const;

export type Switch = keyof typeof switches;
export type Year = keyof typeof years;
export type Minutes = keyof typeof minutes;
export type Washing = keyof typeof washUp;

export const isOn = (rules: HouseRules, name: Switch): boolean =>
  typeof rules[name] === 'boolean' ? rules[name] : switches[name];
export const numberOf = (rules: HouseRules, name: Year | Minutes): number => {
  const usual = { ...years, ...minutes }[name];
  return typeof rules[name] === 'number' ? rules[name] : usual;
};
export const washMinutes = (rules: HouseRules, name: Washing): number => rules.wash_up_minutes?.[name] ?? washUp[name];
