import { afterEach, describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { type Notation, notationAt, ownNotation } from '../../app/core/book/site-notation.ts';
import { decimalFromText, zero } from '../../app/core/decimal.ts';
import { massFromText } from '../../app/core/mass.ts';
import type { RunBands } from '../../app/core/run.ts';
import { alignedAmounts } from '../../app/papers/ledger.ts';
import { decimalTails } from '../../app/parts/decimal-column.ts';
import { massText as massHeld } from '../../app/parts/mass-entry.ts';
import { dayShown, dayTyped } from '../../app/parts/typed-day.ts';
import { countsOf, heldNumber, shownNumber } from '../../app/parts/typed-number.ts';
import { asReadText } from '../../app/screens/retort/typed.ts';
import { dayText, momentText } from '../../app/words/dates.ts';
import { exactMass, massAsRead, weightAsRead } from '../../app/words/daybook-weights.ts';
import { decimalText, gramText, massHead, withoutUnit, withU } from '../../app/words/figures.ts';
import { marked, notation, swappedMarks, writeIn, writtenIn } from '../../app/words/notation.ts';
import { problemText } from '../../app/words/problems.ts';
import { lossRule } from '../../app/words/retort-bands.ts';
import { temperatureText, unitShown } from '../../app/words/temperatures.ts';
import { BookMaker } from '../core/book-maker.ts';

const site = (some: Partial<Notation>): Notation => ({ ...ownNotation, ...some });
const decimal = (text: string) => decimalFromText(text) ?? zero;
afterEach(() => {
  writeIn(ownNotation);
});

describe('how the site writes is an entry', () => {
  test('the last one that holds at a moment counts, and before the first the program’s own', () => {
    const book = new BookMaker();
    book.add('comma', 'site-notation', site({ decimal: 'comma' }), { happened: '2026-03-10T08:00+13:00' });
    book.add('troy', 'site-notation', site({ masses: 'troy', days: 'd/m/y' }), { happened: '2026-03-12T08:00+13:00' });
    const at = (moment: string) => notationAt(readBook(book.entries).current, moment);
    expect(at('2026-03-09T08:00+13:00')).toEqual(ownNotation);
    expect(at('2026-03-11T08:00+13:00')).toEqual(site({ decimal: 'comma' }));
    expect(at('2026-03-13T08:00+13:00')).toEqual(site({ masses: 'troy', days: 'd/m/y' }));
  });

  test('a paper drawn up in a notation leaves the one before standing, also where it fails', () => {
    expect(writtenIn(site({ decimal: 'comma' }), () => gramText(12_500_000))).toBe('12,50\u00a0g');
    expect(() =>
      writtenIn(site({ decimal: 'comma' }), () => {
        throw new Error('no paper');
      }),
    ).toThrow();
    expect(notation()).toEqual(ownNotation);
  });
});

describe('a decimal comma', () => {
  test('shows figures, readings and columns with it, thousands with narrow spaces', () => {
    writeIn(site({ decimal: 'comma' }));
    expect(decimalText(decimal('-12345.678'), 2)).toBe('−12\u202f345,68');
    expect(withU(decimal('12.6'), 320_000 / 1e6)).toBe('12,60 ± 0,64\u00a0g');
    expect(massAsRead('1204.50 g')).toBe('1\u202f204,50\u00a0g');
    expect(decimalTails(['12,5', '3', '0,125'])).toEqual(['00', ',000', '']);
    expect(marked('1.2.3')).toBe('1,2,3');
  });

  test('is what figures are shortened at, and what stands below each other in a column of a paper', () => {
    writeIn(site({ decimal: 'comma' }));
    const bands = (lossBand: string): RunBands => ({ lossBand: decimal(lossBand) }) as RunBands;
    const rule = (band: string) => lossRule(bands(band), { loss: 'start', ratio: 'start' }, 1);
    expect(['0.02', '0.025', '0.2', '0.0205'].map(rule).map((text) => /\(.*\u00a0%/.exec(text)?.[0])).toEqual(
      ['(2', '(2,5', '(20', '(2,05'].map((text) => `${text}\u00a0%`),
    );
    const pointed = ['79.84', '0', '1\u202f204.5', '± 0.125'];
    const aligned = alignedAmounts(pointed);
    expect(aligned[1]).not.toBe(pointed[1]);
    expect(alignedAmounts(pointed.map(marked))).toEqual(aligned.map(marked));
  });

  test('is read as the decimal mark, and a point is refused by name', () => {
    writeIn(site({ decimal: 'comma' }));
    const kept = massHeld({ amount: swappedMarks('12,5'), unit: 'g' });
    expect(kept).toBe('12.5 g');
    const refused = massFromText(massHeld({ amount: swappedMarks('1.234'), unit: 'g' }), 'body.mass');
    expect(refused.ok).toBe(false);
    if (!refused.ok) expect(refused.problems.map(problemText).join()).toMatch(/“1\.234 g” has a point.*this site writes a comma/);
  });

  test('with the point setting a comma is refused by name', () => {
    const refused = massFromText(massHeld({ amount: swappedMarks('12,5'), unit: 'g' }), 'body.mass');
    expect(refused.ok).toBe(false);
    if (!refused.ok) expect(refused.problems.map(problemText).join()).toMatch(/“12,5 g” has a comma/);
  });

  test('typed and shown again is the same text, half a number too', () => {
    writeIn(site({ decimal: 'comma' }));
    for (const typed of ['12,5', '12,', '1.234,5', '', 'about 3'])
      expect(shownNumber(heldNumber(typed, 'other'), 'other')).toBe(typed);
  });
});

describe('troy ounces', () => {
  test('are what computed masses are shown in, rounded once, the uncertainty with the value', () => {
    writeIn(site({ masses: 'troy' }));
    // 31.1034768 g are one troy ounce: National Institute of Standards and Technology, Handbook 44, appendix C
    expect(gramText(31_103_477)).toBe('1.0000\u00a0ozt');
    expect(gramText(-15_551_738)).toBe('−0.5000\u00a0ozt');
    expect(withU(decimal('62.2069536'), 0.311034768 / 2)).toBe('2.000 ± 0.010\u00a0ozt');
    expect(exactMass(decimal('311.034768'))).toBe('10.00\u00a0ozt');
    expect(exactMass(decimal('22.4'))).toBe('0.720177\u00a0ozt');
    expect([massHead('Mercury'), withoutUnit(gramText(31_103_477))]).toEqual(['Mercury, ozt', '1.0000']);
  });

  test('are said once where a weight was read in them', () => {
    const read = (gross: string) =>
      asReadText({ as: { how: 'scale', gross }, grams: decimal('212.4') } as unknown as Parameters<typeof asReadText>[0]);
    expect(read('6.83 ozt')).toBe('6.83 ozt (212.40\u00a0g)');
    writeIn(site({ masses: 'troy', decimal: 'comma' }));
    expect([read('6.83 ozt'), read('212.4 g')]).toEqual(['6,83\u00a0ozt', '212,4\u00a0g']);
    expect(read('137 dwt')).toBe('137 dwt (6,8288\u00a0ozt)');
  });

  test('leave a reading its own unit and digits', () => {
    writeIn(site({ masses: 'troy' }));
    expect(weightAsRead({ how: 'scale', gross: '955.60 g' })).toBe('955.60\u00a0g');
  });
});

describe('degrees Fahrenheit', () => {
  test('are typed and shown; the form holds degrees Celsius to a hundredth', () => {
    writeIn(site({ temperature: 'fahrenheit' }));
    expect([unitShown('°C'), unitShown('ml')]).toEqual(['°F', 'ml']);
    expect(heldNumber('104', countsOf('°C', false))).toBe('40');
    expect(heldNumber('100', countsOf('°C', false))).toBe('37.78');
    expect(shownNumber('37.78', 'temperature')).toBe('100');
    expect(heldNumber('−40', 'temperature')).toBe('-40');
    expect(temperatureText(21)).toBe('69.8\u00a0°F');
  });

  test('a difference has no offset, another number is left alone, and what is no number goes through', () => {
    writeIn(site({ temperature: 'fahrenheit', decimal: 'comma' }));
    expect(heldNumber('0,9', countsOf('°C', true))).toBe('0.5');
    expect(heldNumber('104', countsOf('ml', false))).toBe('104');
    expect(heldNumber('warm', 'temperature')).toBe('warm');
  });
});

describe('days', () => {
  test.each([
    ['words', '14 March 2026'],
    ['y-m-d', '2026-03-14'],
    ['d.m.y', '14.3.2026'],
    ['d/m/y', '14/3/2026'],
    ['m/d/y', '3/14/2026'],
  ] as const)('as %s', (days, text) => {
    writeIn(site({ days }));
    expect(dayText('2026-03-14')).toBe(text);
    expect(momentText('2026-03-14T09:20+13:00')).toBe(`${text}, 09:20`);
    if (days !== 'words') expect(dayTyped(dayShown('2026-03-14'))).toBe('2026-03-14');
  });

  test('are read in the site’s order only; an ISO day always', () => {
    writeIn(site({ days: 'd/m/y' }));
    expect(dayTyped('03/04/2026')).toBe('2026-04-03');
    expect(dayTyped('3/14/2026')).toBeNull();
    expect(dayTyped('2026-03-14')).toBe('2026-03-14');
    writeIn(site({ days: 'm/d/y' }));
    expect(dayTyped('03/04/2026')).toBe('2026-03-04');
  });

  test('a short year, another mark and a day that is none are not guessed', () => {
    writeIn(site({ days: 'd.m.y' }));
    for (const text of ['14.3.26', '14/3/2026', '31.2.2026', '14.3', 'today']) expect(dayTyped(text)).toBeNull();
    expect(dayShown('31.2.2026')).toBe('31.2.2026');
  });
});
