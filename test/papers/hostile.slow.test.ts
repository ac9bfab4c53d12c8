/**
 * Hostile cells in the tables that are taken away: a hundred thousand, each read back by another program as the text it was, or as that text with an
 * apostrophe before it, and none as a formula.
 */
import Papa from 'papaparse';
import { expect, it } from 'vitest';
import { csvText } from '../../app/papers/csv/cells.ts';
import { anyText, byBytes, byShapes, casesEach } from '../host/mutate.ts';

it('a cell of any bytes stays one cell, and starts no formula', () => {
  let marked = 0;
  const read = (text: string) => {
    const written = csvText(['h', 'i'], [[text, 'x']]);
    const rows = Papa.parse<string[]>(written.slice(0, -1), { delimiter: ',', newline: '\n' }).data;
    const [cell = '', last] = rows[1] ?? [];
    if (rows.length !== 2 || rows[1]?.length !== 2 || last !== 'x') throw new Error('it broke out of its cell');
    if (cell !== text && cell !== `'${text}`) throw new Error(`it became ${JSON.stringify(cell)}`);
    if (cell !== text) marked++;
    if (/^[=+@\t\r\n]/.test(cell) || (cell.startsWith('-') && !/^-\d+(\.\d+)?$/.test(cell)))
      throw new Error('it starts a formula');
    return cell.length;
  };
  const samples = [
    '=1+1',
    "=cmd|' /C x'!A0",
    '+44 1',
    '-0.5',
    '@SUM(A1)',
    'Upper "battery", east',
    'line\nline',
    '\t=1',
    '955.6 g',
    '\ufeff=1',
  ];
  const done = byBytes('cell', samples, (bytes) => read(bytes.toString('utf8')));
  expect(done + byShapes('cell', anyText, read)).toBe(casesEach);
  expect(marked).toBeGreaterThan(casesEach / 100);
}, 240_000);
