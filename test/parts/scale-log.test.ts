import { afterEach, describe, expect, test } from 'vitest';
import { ownNotation } from '../../app/core/book/site-notation.ts';
import { massFromText } from '../../app/core/mass.ts';
import { massText } from '../../app/parts/mass-entry.ts';
import { mostLines, pastedLog, scaleLines } from '../../app/screens/shared/scale-log.ts';
import { noWeighing, weightOf } from '../../app/screens/shared/weighing-entry.ts';
import { writeIn } from '../../app/words/notation.ts';

const one = (text: string) => scaleLines(text)[0];
afterEach(() => {
  writeIn(ownNotation);
});

// forms of output in common use: common practice, no source; every figure is invented
describe('lines from a scale', () => {
  test.each([
    ['ST,GS,+  12.345 g', '12.345', 'g', true],
    ['ST,NT,+0012.50  g', '12.50', 'g', true],
    ['ST,GS, 0.500kg', '0.500', 'kg', true],
    ['S S     955.60 g', '955.60', 'g', true],
    ['+   30.72 ozt', '30.72', 'ozt', false],
    ['N 12.3 dwt', '12.3', 'dwt', false],
    ['ST,GS,+ 47.1 GN', '47.1', 'gr', true],
  ])('“%s” is a reading of %s %s', (text, amount, unit, still) => {
    const line = one(text);
    expect([line?.reading, line?.why, line?.still]).toEqual([{ amount, unit }, null, still]);
    expect(line?.reading && massFromText(massText(line.reading), '').ok).toBe(true);
  });

  test.each([
    ['US,GS,+  12.345 g', 'moving'],
    ['S D   12.345 g', 'moving'],
    ['OL,GS,+ 9999999', 'overload'],
    ['ST,TR,+ 250.0 g', 'tare'],
    ['ST,GS,-  0.010 g', 'below'],
    ['ST,GS,+ 12,345 g', 'comma'],
    ['ST,GS,+ 12.3 oz', 'unit'],
    ['ST,GS,+ 12.3 ct', 'unit'],
    ['ST,GS,+ 17 PCS', 'unit'],
    ['ST,GS,+ 12.3', 'no-unit'],
    ['S I', 'not-read'],
    ['2026-03-14 09:20', 'not-read'],
    ['ST,GS,+ 1.2.3 g', 'not-read'],
    ['ST,GS,+ 12 345 g', 'not-read'],
  ])('“%s” is refused as %s', (text, why) => {
    expect([one(text)?.reading, one(text)?.why]).toEqual([null, why]);
  });

  test('a comma is the decimal mark where the site writes commas', () => {
    writeIn({ ...ownNotation, decimal: 'comma' });
    expect(one('ST,GS,+ 12,345 g')?.reading).toEqual({ amount: '12.345', unit: 'g' });
  });

  test('every kind of line end parts lines, empty ones are left out, and a very long log gives its last lines', () => {
    expect(scaleLines('ST,GS,+1.0 g\r\n\r\nUS,GS,+2.0 g\rST,GS,+3.0 g\n').map((l) => l.text)).toEqual([
      'ST,GS,+1.0 g',
      'US,GS,+2.0 g',
      'ST,GS,+3.0 g',
    ]);
    const long = scaleLines(Array.from({ length: 1000 }, (_, i) => `ST,GS,+${i} g`).join('\n'));
    expect([long.length, long.at(-1)?.reading?.amount]).toEqual([mostLines, '999']);
  });

  test('what is pasted into a reading is a log where a line bears a scale’s marks or there are several; one still line is taken at once', () => {
    expect(pastedLog('ST,GS,+ 12.345 g')).toEqual({ only: { amount: '12.345', unit: 'g' } });
    expect(pastedLog('US,GS,+ 12.345 g')).toEqual({ only: null });
    expect(pastedLog('ST,GS,+ 1.0 g\nST,GS,+ 2.0 g')).toEqual({ only: null });
    for (const plain of ['12.345', '12.5 g', '18 ozt 18 dwt', '']) expect(pastedLog(plain)).toBeNull();
  });

  test('pasted lines stay in the form and are no part of the weight', () => {
    const typed = { ...noWeighing('bench-scale'), log: 'ST,GS,+ 12.345 g', gross: { amount: '12.345', unit: 'g' as const } };
    expect(weightOf(typed)).toEqual({
      how: 'scale',
      scale: 'bench-scale',
      gross: '12.345 g',
      tare: undefined,
      vessel: undefined,
    });
  });
});
