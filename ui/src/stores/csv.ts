/** Tables as text (RFC 4180, with semicolons and tabs as well): the form in which prices, stock and labels are kept, so
 *  that a school can take them out, change them in any spreadsheet and paste them back. */

export interface Table {
  /** "," ";" or tab, as found in the heading line. */
  mark: string;
  head: string[];
  /** As many cells as the heading has; more are kept so that a fault can be seen. */
  rows: string[][];
  /** Line of each row in the text, from 1, for faults told by line. */
  lines: number[];
}

export function parse(text: string): Table {
  const plain = text.replace(/^\uFEFF/, '');
  const first = /^[^\r\n]*/.exec(plain)?.[0] ?? '';
  const often = (mark: string): number => first.split(mark).length - 1;
  const mark = [',', ';', '\t'].sort((a, b) => often(b) - often(a))[0] ?? ',';
  const all: { cells: string[]; line: number }[] = [];
  let cells: string[] = [];
  let cell = '';
  let quoted = false;
  let line = 1;
  let begun = 1;
  const end = (): void => {
    cells.push(cell);
    if (cells.some((each) => each.trim() !== '')) all.push({ cells: cells.map((each) => each.trim()), line: begun });
    cells = [];
    cell = '';
  };
  for (let i = 0; i < plain.length; i += 1) {
    const letter = plain.charAt(i);
    if (letter === '\n') line += 1;
    if (quoted) {
      if (letter !== '"') cell += letter;
      else if (plain.charAt(i + 1) === '"') {
        cell += '"';
        i += 1;
      } else quoted = false;
    } else if (letter === '"' && cell.trim() === '') {
      quoted = true;
      cell = '';
    } else if (letter === mark) {
      cells.push(cell);
      cell = '';
    } else if (letter === '\n') {
      end();
      begun = line;
    } else if (letter !== '\r') cell += letter;
  }
  end();
  const [top, ...rest] = all;
  const head = top?.cells ?? [];
  return {
    mark,
    head,
    rows: rest.map(({ cells: row }) => [...row, ...Array<string>(Math.max(0, head.length - row.length)).fill('')]),
    lines: rest.map(({ line: at }) => at),
  };
}

const quote = (cell: string): string => (/[",;\t\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

/** Always with commas, so that what was pasted with tabs can be read everywhere. */
export function write(head: string[], rows: string[][]): string {
  return [head, ...rows].map((row) => row.map(quote).join(',')).join('\n') + '\n';
}
