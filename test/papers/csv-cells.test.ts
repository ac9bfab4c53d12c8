/** A table that is taken away opens in a spreadsheet as the text and the numbers it holds, and nothing in it runs. */
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { csvText } from '../../app/papers/csv/cells.ts';

const cellOf = (text: string): string => Papa.parse<string[]>(csvText(['h', 'i'], [[text, 'x']]).trimEnd()).data[1]?.[0] ?? '';

describe('a cell', () => {
  it.each([
    ...[
      '=1+1',
      '+1',
      '-1+2',
      '@SUM(A1)',
      '\t=1',
      '\r=1',
      '\n=1',
      '＝1',
      '＋1',
      '－1',
      '＠x',
      '−4',
      '﹦1',
      ' =1',
      '\u200b=1',
      '\ufeff=1',
    ],
    ...['-', '--1', '-1e5', '-.5', '-1.', '-1,5', "=cmd|' /C x'!A0", '=HYPERLINK("x")'],
  ])('that would start a formula gets an apostrophe and is text: %j', (text) => {
    expect(cellOf(text)).toBe(`'${text}`);
  });

  it.each(['0', '-0.5', '-12', '3.25', '-0', '1e5', '2026-03-14', 'a=b', 'a, b', '"q"', 'line\nline', "'=1", '<b>', ''])(
    'that is a plain decimal or plain text stays as it is: %j',
    (text) => {
      expect(cellOf(text)).toBe(text);
    },
  );

  it('comes back as it was, but for that apostrophe, whatever it holds', () => {
    const text = fc.oneof(fc.string({ unit: 'binary' }), fc.string({ unit: fc.constantFrom(...'=+-@\t\r\n,;"\'１ 1.＝') }));
    fc.assert(
      fc.property(fc.array(text, { minLength: 2, maxLength: 4 }), (cells) => {
        const written = csvText(
          cells.map((_, i) => `h${i}`),
          [cells],
        );
        const [, back = []] = Papa.parse<string[]>(written.slice(0, -1), { delimiter: ',', newline: '\n' }).data;
        for (const [i, cell] of cells.entries()) {
          if (back[i] !== cell && back[i] !== `'${cell}`) return false;
          if (/^[=+\-@\t\r\n＝＋－＠]/.test(back[i] ?? '') && !/^-?\d+(\.\d+)?$/.test(back[i] ?? '')) return false;
        }
        return back.length === cells.length;
      }),
      { numRuns: 2000 },
    );
  });
});
