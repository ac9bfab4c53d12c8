import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { type Decimal, decimalFromText, zero } from '../../app/core/decimal.ts';
import type { Entry } from '../../app/core/entry.ts';
import { read } from '../../app/core/read.ts';
import { weight } from '../../app/core/shapes.ts';
import { scalesByUse } from '../../app/screens/shared/scales-by-use.ts';
import { unitSlip } from '../../app/screens/shared/unit-slip.ts';
import { Weighing } from '../../app/screens/shared/weighing.svelte.ts';
import { isBlank, noWeighing, type WeighingEntry, weighingEntry, weightOf } from '../../app/screens/shared/weighing-entry.ts';
import { keeper } from '../daybook/house.ts';

const mark = (n: number) => n.toString(16).padStart(64, '0');
const entry = (
  n: number,
  id: string,
  kind: string,
  body: Record<string, unknown>,
  happened = '2026-01-05T08:00+13:00',
): Entry => ({
  id,
  happened,
  by: keeper.id,
  kind,
  body,
  format: 1,
  desk: 'desk-of-a-test',
  n,
  prev: mark(n - 1),
  written: happened,
  hash: mark(n),
});

const bench = {
  label: 'Bench',
  maximum: '3200 g',
  d: '0.01 g',
  s: '0.018 g',
  linearity: '0.02 g',
  certificate: { U: '0.03 g', at: '2000 g', number: 'C-1', on: '2025-12-01', due: '2026-12-01' },
  tolerance: 0.001,
};
const book = readBook([
  entry(1, 'scale-bench', 'scale', bench),
  entry(2, 'scale-plain', 'scale', { label: 'Plain', maximum: '10 kg', d: '1 g' }),
  entry(3, 'vessel-dish', 'vessel', {
    label: 'Dish',
    use: 'dish',
    tare: { how: 'scale', scale: 'scale-bench', gross: '412.15 g' },
  }),
]);

const exact = (text: string): Decimal => decimalFromText(text) ?? zero;
const at = '2026-03-14T09:20+13:00';
const weighed = (change: Partial<WeighingEntry>, expected?: string, when = at): Weighing => {
  const value = { ...noWeighing('scale-bench'), ...change };
  return new Weighing(
    () => value,
    () => ({
      registers: book.registers,
      at: when,
      expected: expected === undefined ? undefined : { grams: exact(expected), what: 'the label' },
    }),
  );
};
const g = (amount: string) => ({ amount, unit: 'g' as const });

describe('the weighing field', () => {
  test('shows the net with its expanded uncertainty as reference example 16 of the methods has it', () => {
    const field = weighed({ gross: g('2912.40'), tareHow: 'reading', tare: g('412.15') });
    expect(field.net).toBe('2\u202f500.250 ± 0.072\u00a0g');
    expect(field.warnings).toEqual([]);
  });

  test('keeps digits and units exactly as they were read', () => {
    const field = weighed({ gross: g('2912.40'), tareHow: 'vessel', vessel: 'vessel-dish', tare: g('412.15') });
    expect(field.weight).toEqual({
      how: 'scale',
      scale: 'scale-bench',
      gross: '2912.40 g',
      tare: '412.15 g',
      vessel: 'vessel-dish',
    });
  });

  test('a tare that was chosen and not filled in is missing, and the gross never stands for the net', () => {
    const missing = (change: Partial<WeighingEntry>) => {
      const typed = { ...noWeighing('scale-bench'), gross: g('3200.00'), ...change };
      const got = read(weight, JSON.parse(JSON.stringify(weightOf(typed))));
      return got.ok ? [] : got.problems.map((p) => [p.code, p.field]);
    };
    expect(missing({ tareHow: 'reading' })).toEqual([['missing', 'tare']]);
    expect(missing({ tareHow: 'vessel' })).toEqual([
      ['missing', 'tare'],
      ['missing', 'vessel'],
    ]);
    expect(missing({ tareHow: 'vessel', tare: g('1200.00') })).toEqual([['missing', 'vessel']]);
    expect(weighed({ gross: g('3200.00'), tareHow: 'vessel' }).net).toBeNull();
  });

  test('takes the tare of a vessel from the register', () => {
    expect(weighed({}).tareOf('vessel-dish')).toEqual({ amount: '412.15', unit: 'g' });
    expect(weighed({}).tareOf('vessel-unheard-of')).toBeUndefined();
  });

  test('says nothing while nothing is typed', () => {
    const field = weighed({});
    expect([field.blank, field.net, field.warnings, field.weight]).toEqual([true, null, [], null]);
  });

  test('warns over the most the scale weighs', () => {
    expect(weighed({ gross: g('3200.00') }).warnings).toEqual([]);
    const [warning, ...more] = weighed({ gross: g('3200.01') }).warnings;
    expect(warning).toContain('3200 g');
    expect(more).toEqual([]);
  });

  test('warns under the least weight of the scale', () => {
    // two standard deviations of 0.018 g are a thousandth of 36 g
    expect(weighed({ gross: g('36.00') }).warnings).toEqual([]);
    expect(weighed({ gross: g('35.99') }).warnings.length).toBe(1);
  });

  test('warns from the day after the calibration was due', () => {
    const typed = { gross: g('2912.40') };
    expect(weighed(typed, undefined, '2026-12-01T23:50+13:00').warnings).toEqual([]);
    expect(weighed(typed, undefined, '2026-12-02T00:10+13:00').warnings.length).toBe(1);
  });

  test('warns when the tare is the heavier, and still keeps what was read', () => {
    const field = weighed({ gross: g('400.00'), tareHow: 'reading', tare: g('412.15') });
    expect(field.warnings.some((w) => w.includes('412.15 g'))).toBe(true);
    expect(field.weight).not.toBeNull();
  });

  test('says that the uncertainty is not known where no scale or no certificate is', () => {
    expect(weighed({ scale: '', gross: g('100.0') }).net).toBe('100.00\u00a0g, uncertainty not known');
    expect(weighed({ scale: 'scale-plain', gross: g('1000') }).net).toContain('uncertainty not known');
  });

  test('tells a comma at once, and not that something is still missing', () => {
    expect(weighed({ gross: g('2,5') }).typing('gross').length).toBe(1);
    expect(weighed({ gross: g('') }).typing('gross')).toEqual([]);
  });

  test('takes a stated weight with its uncertainty', () => {
    const field = weighed({
      how: 'stated',
      mass: { amount: '76', unit: 'lb' },
      u: { amount: '0.5', unit: 'oz-av' },
      by: 'Invoice',
    });
    expect(field.weight).toEqual({ how: 'stated', mass: '76 lb', u: '0.5 oz-av', by: 'Invoice' });
    expect(field.net).toBe('34\u202f473 ± 28\u00a0g');
  });

  test('takes mercury by volume at its temperature', () => {
    const field = weighed({ how: 'volume', volume: '186.0', volumeUnit: 'ml', temperature: '24' });
    expect(field.weight).toEqual({ how: 'volume', volume: '186.0 ml', temperatureC: 24 });
  });

  test('every weight of the record fills the fields and comes out the same', () => {
    for (const weight of [
      { how: 'scale', scale: 'scale-bench', gross: '2912.40 g', tare: '412.15 g', vessel: 'vessel-dish' },
      { how: 'scale', gross: '18 ozt 18 dwt' },
      { how: 'volume', volume: '186.0 ml', temperatureC: 24, volumeUMl: 0.4, temperatureUC: 1 },
      { how: 'stated', mass: '76 lb', by: 'Invoice' },
    ] as const)
      expect(JSON.parse(JSON.stringify(weightOf(weighingEntry(weight))))).toEqual(weight);
  });

  test('a field of which only the scale is picked is blank', () => {
    expect(isBlank(noWeighing('scale-bench'))).toBe(true);
    expect(weightOf(noWeighing('scale-bench'))).toBeUndefined();
  });
});

describe('the question about units', () => {
  // reference: the table of failure signs; each pair is one mass written in the two units that are mistaken for one another
  test.each([
    ['troy for avoirdupois ounces', '311.034768', '283.49523125', 'ounces'],
    ['avoirdupois for troy pounds', '4535.9237', '3732.417216', 'pounds'],
    ['long for short tons', '1016046.9088', '907184.74', 'tons'],
    ['twelve fluid ounces of mercury read as troy ounces', '4618.6', '373.24', 'fluid'],
  ])('%s, whichever way round', (_, a, b, slip) => {
    expect(unitSlip(exact(a), exact(b))?.slip).toBe(slip);
    expect(unitSlip(exact(b), exact(a))?.slip).toBe(slip);
  });

  test.each(['100', '101.5', '105', '93', '150', '200', '3110', '250'])('is not asked at %s against 100', (other) => {
    expect(unitSlip(exact(other), exact('100'))).toBeNull();
  });

  test('is not asked about nothing', () => {
    expect(unitSlip(zero, exact('100'))).toBeNull();
    expect(unitSlip(exact('100'), zero)).toBeNull();
  });

  test('stands in the field’s warnings with what was expected', () => {
    const warnings = weighed({ gross: g('311.03') }, '283.50').warnings;
    expect(warnings.length).toBe(1);
    expect(warnings[0]).toContain('1.097');
    expect(warnings[0]).toContain('the label');
    expect(weighed({ gross: g('283.40') }, '283.50').warnings).toEqual([]);
  });
});

describe('the list of scales', () => {
  test('begins with the one read last', () => {
    expect(scalesByUse(book, at).map((s) => s.id)).toEqual(['scale-bench', 'scale-plain']);
    const later = readBook([
      ...book.entries,
      entry(4, 'vessel-jar', 'vessel', {
        label: 'Jar',
        use: 'jar',
        tare: { how: 'scale', scale: 'scale-plain', gross: '300 g' },
      }),
    ]);
    expect(scalesByUse(later, at).map((s) => s.id)).toEqual(['scale-plain', 'scale-bench']);
  });

  test('leaves out a scale that is out of use on that day', () => {
    const later = readBook([
      ...book.entries,
      entry(4, 'scale-out-1', 'scale', { of: 'scale-plain', label: 'Plain', maximum: '10 kg', d: '1 g', out: '2026-03-01' }),
    ]);
    expect(scalesByUse(later, at).map((s) => s.id)).toEqual(['scale-bench']);
    expect(scalesByUse(later, '2026-02-20T09:00+13:00').map((s) => s.id)).toEqual(['scale-bench', 'scale-plain']);
  });
});
