/** The week's order as `benchbell order --json` gives it, grouped for shopping. */

export interface OrderLine {
  supplier: string;
  order_by: string | null;
  arrives: string | null;
  food: string;
  name: string;
  pack: string;
  count: number;
  pence: number;
  uses: { lesson: string; date: string | null; amount: number }[];
}
export interface Order {
  lines: OrderLine[];
  shortfalls: { name: string; lesson: string; why: string }[];
  classes: { class: string; pence: number; pence_per_pupil: number }[];
  total_pence: number;
}
export interface Supplier {
  name: string;
  orderBy: string | null;
  arrives: string | null;
  lines: OrderLine[];
}

/** One list a supplier and van, the most urgent first. */
export function bySupplier(order: Order): Supplier[] {
  const found = new Map<string, Supplier>();
  for (const line of order.lines) {
    const key = `${line.supplier}|${line.order_by ?? ''}`;
    const known = found.get(key);
    if (known) known.lines.push(line);
    else found.set(key, { name: line.supplier, orderBy: line.order_by, arrives: line.arrives, lines: [line] });
  }
  return [...found.values()].sort((a, b) => (a.orderBy ?? '9').localeCompare(b.orderBy ?? '9'));
}

/** "£1.40", "66p" below a pound. */
export function money(pence: number): string {
  const whole = Math.round(pence);
  return whole < 100 ? `${whole}p` : `£${(whole / 100).toFixed(2)}`;
}
