import { describe, expect, it } from 'vitest';
import { parse, write } from './csv';

// RFC 4180, section 2: quoted fields, doubled quotes, line breaks within quotes, CRLF.
describe('tables as text', () => {
  it('reads quoted cells, doubled quotes and line breaks inside them', () => {
    const table = parse('food,size\r\n"flour, plain","1.5 kg"\r\n"so-called ""rye""","a\nb"\r\n');
    expect(table.head).toEqual(['food', 'size']);
    expect(table.rows).toEqual([
      ['flour, plain', '1.5 kg'],
      ['so-called "rye"', 'a\nb'],
    ]);
    expect(table.lines).toEqual([2, 3]);
  });

  it('takes what comes out of a spreadsheet: tabs, semicolons, a byte order mark, empty lines, short rows', () => {
    expect(parse('\uFEFFfood\tamount\nmilk\t2 l\n\negg\n')).toEqual({
      mark: '\t',
      head: ['food', 'amount'],
      rows: [
        ['milk', '2 l'],
        ['egg', ''],
      ],
      lines: [2, 4],
    });
    expect(parse('food;price\nmilk;1,20\n').rows).toEqual([['milk', '1,20']]);
  });

  it('reads what it has written', () => {
    const rows = [
      ['a "b", c', '1;2'],
      ['', 'x\ty'],
    ];
    expect(parse(write(['p', 'q'], rows)).rows).toEqual(rows);
  });
});
