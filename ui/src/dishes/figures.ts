/** What the panels of a dish read out of the program's JSON (`benchbell label --json`, ratios). */
import { t } from '../words/words.svelte';

export interface Amount {
  amount: number;
  /** More than `amount` where not everything is known; null where there is no upper end. */
  most: number | null;
  known: string;
}
export interface LabelLine {
  name: string;
  unit: string;
  portion: Amount;
  per_100_g: Amount;
  says: string;
}
export interface Label {
  portions: number;
  portion_grams: number;
  weight_known: boolean;
  lines: LabelLine[];
  colours: { name: string; level: 'low' | 'medium' | 'high' | null }[];
  missing: string[];
  ingredients: { name: string; source: string; grams: number | null; problem: string }[];
  totals: { name: string; unit: string; by_ingredient: number[] }[];
  caution: string;
}
export interface Ratio {
  preparation: string;
  says: string;
  verdict: string;
  lines: { says: string; value: number | null; least: number; most: number; verdict: string }[];
}

/** A figure as precise as it is known: grams to a tenth below ten, else whole. */
export function rounded(value: number): string {
  return Math.abs(value) >= 10 ? String(Math.round(value)) : String(Math.round(value * 10) / 10);
}

/** "14 g", "14 to 17 g", "at least 14 g", by what is known. */
export function amountText({ amount, most }: Amount, unit: string): string {
  const low = rounded(amount);
  if (most === null || most < amount) return t('dish.at_least', { amount: `${low} ${unit}` });
  const high = rounded(most);
  return low === high ? `${low} ${unit}` : t('dish.range', { low, high: `${high} ${unit}` });
}

/** "10 g" a hundred grams; words ("not known") stay alone. */
export function withUnit({ says, unit }: LabelLine): string {
  return /\d$/.test(says) ? `${says} ${unit}` : says;
}

/** What the front of a pack has to say: these four, in this order, beside the energy. */
export const front = ['fat', 'of which saturates', 'of which sugars', 'salt'];
/** The name a level goes by on a pack. */
export const levelName = (line: string): string => line.replace('of which ', '');
