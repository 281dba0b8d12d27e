/** The week's order as the program gives it (schemas/order.schema.json), sorted for a page. */
import type { Schemas } from '../api/client';

export interface Use {
  lesson: string;
  date: string;
  amount: number;
}
export interface Line {
  supplier: string;
  order_by: string;
  arrives: string;
  food: string;
  name: string;
  pack: string;
  count: number;
  pence: number;
  unit: string;
  holds: number;
  uses: Use[];
  left: number;
  good_until: string;
  keeping_assumed: boolean;
}
export interface Order {
  title: string;
  lines: Line[];
  from_stores: { name: string; unit: string; uses: Use[] }[];
  shortfalls: { name: string; lesson: string; amount: number; unit: string; why: string }[];
  goods_pence: number;
  delivery_pence: number;
  below_minimum_pence: number;
  total_pence: number;
  lesson_by_lesson_pence: number;
  left_over_pence: number;
  classes: { class: string; pupils: number; pence: number; pence_per_pupil: number }[];
  unsettled: { code: string; message: string; remedy: string }[];
}
export interface Lot {
  food: string;
  key: string;
  amount: string;
  use_by: string | null;
  opened: boolean;
  where: string;
}
/** /api/stores/order with what the contract leaves open. */
export interface OrderView extends Omit<Schemas['OrderView'], 'order' | 'stock'> {
  order: Order | null;
  stock: Lot[];
  /** Keys of foods worth a look first. */
  look_at?: string[];
  summary?: { says: string; order_by: string | null; days_left: number | null; total: string } | null;
}

export interface Van {
  supplier: string;
  order_by: string;
  arrives: string;
  lines: Line[];
  pence: number;
}

/** One list for each delivery, the first to be ordered first. */
export function vans(order: Order): Van[] {
  const out: Van[] = [];
  for (const line of order.lines) {
    let van = out.find(
      (v) => v.supplier === line.supplier && v.order_by === line.order_by && v.arrives === line.arrives,
    );
    if (!van) {
      van = { supplier: line.supplier, order_by: line.order_by, arrives: line.arrives, lines: [], pence: 0 };
      out.push(van);
    }
    van.lines.push(line);
    van.pence += line.pence;
  }
  return out.sort((a, b) => a.order_by.localeCompare(b.order_by) || a.supplier.localeCompare(b.supplier));
}

const figure = (n: number): string => String(Number(n.toPrecision(3)));

/** "5.4 kg", "750 g", "1.2 l", "12". */
export function amountWords(amount: number, unit: string): string {
  if (unit === 'g' && amount >= 1000) return `${figure(amount / 1000)} kg`;
  if (unit === 'ml' && amount >= 1000) return `${figure(amount / 1000)} l`;
  if (unit === 'each' || unit === '') return figure(amount);
  return `${figure(amount)} ${unit}`;
}

/** Shortfalls of one food in one line: who goes without, and why. */
export function shortOf(
  order: Order,
): { name: string; why: string; amount: number; unit: string; lessons: string[] }[] {
  const out: { name: string; why: string; amount: number; unit: string; lessons: string[] }[] = [];
  for (const short of order.shortfalls) {
    const there = out.find((each) => each.name === short.name && each.why === short.why && each.unit === short.unit);
    if (there) {
      there.amount += short.amount;
      there.lessons.push(short.lesson);
    } else
      out.push({ name: short.name, why: short.why, amount: short.amount, unit: short.unit, lessons: [short.lesson] });
  }
  return out;
}
