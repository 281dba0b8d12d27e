/** The school's tables (docs/files.md): which columns each has, and what can be told of a row before it is kept. Whether a
 *  food is known is for the program to say; here stand only the faults that can be seen in the row itself. */
import { pence } from '../setup/school';
import { t, type Key } from '../words/words.svelte';
import { parse, type Table } from './csv';

export type TableName = 'prices' | 'labels' | 'stock' | 'foods';
export interface TableBody {
  kind: 'table';
  version: 1;
  name: string;
  text: string;
}

type What = 'text' | 'date' | 'money' | 'days' | 'yes';
interface Column {
  name: string;
  what: What;
  /** A row without it cannot be read. */
  must?: boolean;
}

const text = (name: string, must = false): Column => ({ name, what: 'text', must });

export const columns: Record<TableName, Column[]> = {
  prices: [
    text('food', true),
    text('supplier'),
    text('pack'),
    text('size', true),
    { name: 'price', what: 'money' },
    text('usable'),
    { name: 'loose', what: 'yes' },
    { name: 'keeps_days', what: 'days' },
    { name: 'opened_days', what: 'days' },
  ],
  labels: [
    text('food', true),
    text('pack', true),
    { name: 'read_on', what: 'date', must: true },
    text('contains'),
    text('may_contain'),
    { name: 'in_use', what: 'yes' },
  ],
  stock: [
    text('food', true),
    text('amount', true),
    { name: 'use_by', what: 'date' },
    { name: 'opened', what: 'yes' },
    text('where'),
  ],
  foods: [
    text('key', true),
    text('name', true),
    text('other_names'),
    text('source'),
    text('contains'),
    text('storage'),
  ],
};

export const isTable = (name: string): name is TableName => name in columns;
export const emptyTable = (name: TableName): TableBody => ({
  kind: 'table',
  version: 1,
  name: name === 'labels' ? 'labels' : name.charAt(0).toUpperCase() + name.slice(1),
  text: columns[name].map((column) => column.name).join(',') + '\n',
});
/** "keeps_days" as people say it. */
export const columnWords = (name: string): string => name.replaceAll('_', ' ');

export interface Fault {
  /** Line of the text, from 1. */
  line: number;
  says: string;
}

const wrong: Record<What, { key: Key; ok: (cell: string) => boolean } | null> = {
  text: null,
  yes: null,
  date: { key: 'table.fault.date', ok: (cell) => /^\d{4}-\d{2}-\d{2}$/.test(cell) && !Number.isNaN(Date.parse(cell)) },
  money: { key: 'table.fault.money', ok: (cell) => pence(cell) !== null || /^\d{1,6}\s*p$/.test(cell) },
  days: { key: 'table.fault.number', ok: (cell) => /^\d{1,5}$/.test(cell) },
};

/** What is wrong with the rows, line by line. */
export function faultsIn(name: TableName, table: Table): Fault[] {
  const out: Fault[] = [];
  const known = columns[name].map((column) => ({ ...column, at: table.head.indexOf(column.name) }));
  table.rows.forEach((row, i) => {
    const line = table.lines[i] ?? i + 2;
    if (row.length > table.head.length) out.push({ line, says: t('table.fault.long') });
    for (const column of known) {
      if (column.at < 0) continue;
      const cell = row[column.at] ?? '';
      if ((!cell || cell === '?') && column.must)
        out.push({ line, says: t('table.fault.empty', { column: columnWords(column.name) }) });
      const check = wrong[column.what];
      if (cell && check && !check.ok(cell)) out.push({ line, says: t(check.key, { cell }) });
    }
  });
  return out;
}

/** How many lines have a fault. */
export const linesOf = (faults: Fault[]): number => new Set(faults.map((fault) => fault.line)).size;

export const missingIn = (name: TableName, table: Table): string[] =>
  columns[name].filter((column) => column.must && !table.head.includes(column.name)).map((column) => column.name);

export const unknownIn = (name: TableName, table: Table): string[] =>
  name === 'foods' ? [] : table.head.filter((head) => !columns[name].some((column) => column.name === head));

/** Rows of `more` put into the columns of `table`; columns that only `more` has come last. */
export function joined(table: Table, more: Table): { head: string[]; rows: string[][] } {
  const head = [...table.head, ...more.head.filter((name) => !table.head.includes(name))];
  const into = (from: Table) => (row: string[]) =>
    head.map((name) => (from.head.includes(name) ? (row[from.head.indexOf(name)] ?? '') : ''));
  return { head, rows: [...table.rows.map(into(table)), ...more.rows.map(into(more))] };
}

/** Pasted text with headings as people write them: "Use by" is use_by. */
export function read(textIn: string): Table {
  const table = parse(textIn);
  return { ...table, head: table.head.map((name) => name.toLowerCase().replace(/[\s-]+/g, '_')) };
}
