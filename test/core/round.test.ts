import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compare, decimalFromNumber, decimalFromText, minus, rounded, times, toText } from '../../app/core/decimal.ts';
import { reported, roundedText, steppedText } from '../../app/core/round.ts';
import { reckoned, refused, why } from './reckoned.ts';

const d = (text: string) => decimalFromText(text) ?? decimalFromNumber(Number.NaN);

describe('rounding', () => {
  test('rounding in two steps is not rounding once', () => {
    expect(roundedText(d('12.254'), 1)).toBe('12.3');
    expect(roundedText(d(roundedText(d('12.254'), 2)), 1)).toBe('12.2');
  });

  test('once rounded it stays, and it is never further than half a step away', () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: -(10n ** 15n), max: 10n ** 15n }),
        fc.integer({ min: 0, max: 8 }),
        fc.integer({ min: 0, max: 8 }),
        (digits, places, to) => {
          const value = { digits, places };
          const once = rounded(value, to);
          expect(toText(rounded(once, to))).toBe(toText(once));
          const apart = minus(value, once);
          const twice = times({ digits: apart.digits < 0n ? -apart.digits : apart.digits, places: apart.places }, d('2'));
          expect(compare(twice, { digits: 1n, places: to })).toBeLessThanOrEqual(0);
        },
      ),
    );
  });

  test('down is toward nothing, on both sides, and there is no minus zero', () => {
    expect(roundedText(d('2.679'), 2, 'down')).toBe('2.67');
    expect(roundedText(d('-2.679'), 2, 'down')).toBe('-2.67');
    expect(roundedText(d('-0.009'), 2, 'down')).toBe('0.00');
    expect(steppedText(d('-0.012'), d('0.025'))).toBe('0.000');
  });

  test('a step keeps the decimals it is written with', () => {
    expect(reckoned('round', { text: '401.149', step: '0.025', rule: 'down' })).toEqual({ text: '401.125' });
    expect(reckoned('round', { text: '7', step: '0.50' })).toEqual({ text: '7.00' });
    expect(reckoned('round', { text: '7.25', step: '0.5' })).toEqual({ text: '7.0' });
    expect(reckoned('round', { text: '7.75', step: '0.5' })).toEqual({ text: '8.0' });
    expect(reckoned('round', { text: '1234', step: '25' })).toEqual({ text: '1225' });
  });

  test('places are filled up, and texts longer than a double are rounded as they stand', () => {
    expect(reckoned('round', { text: '2.5', places: 3 })).toEqual({ text: '2.500' });
    expect(reckoned('round', { text: '123456789012345678901.25', places: 1 })).toEqual({ text: '123456789012345678901.2' });
  });

  test('exactly one of places and step is given, as a whole number and as text', () => {
    expect(refused('round', { text: '1' })).toEqual(['places places-or-step']);
    expect(refused('round', { text: '1', places: 1, step: '0.1' })).toEqual(['step places-and-step']);
    expect(refused('round', { text: '1', places: 1.5 })).toEqual(['places places']);
    expect(refused('round', { text: '1', places: -1 })).toEqual(['places places']);
    expect(refused('round', { text: '1', places: '1' })).toEqual(['places wrong-type']);
    expect(refused('round', { text: 1, step: 0.1 })).toEqual(['text wrong-type', 'step wrong-type']);
    expect(refused('round', { text: '1e3', step: '1,5' })).toEqual(['text decimal-text', 'step decimal-text']);
    expect(refused('round', { text: '1', places: 1, rule: 'up' })).toEqual(['rule not-one-of']);
  });

  test('a step of nothing rounds nothing', () => {
    expect(reckoned('round', { text: '1', step: '0.00' })).toEqual({ text: why('over-nothing') });
  });

  test('an uncertainty keeps two digits and the value the same place', () => {
    const said = (value: string, u: string) => reported(d(value), d(u));
    expect(said('2500.2537', '0.0358185')).toEqual({ value: '2500.254', u: '0.036' });
    expect(said('2714.80', '103.0703')).toEqual({ value: '2710', u: '100' });
    expect(said('12.6', '0.3162')).toEqual({ value: '12.60', u: '0.32' });
    expect(said('1', '0.0996')).toEqual({ value: '1.00', u: '0.10' });
    expect(said('1', '9.96')).toEqual({ value: '1', u: '10' });
    expect(said('1234', '996')).toEqual({ value: '1200', u: '1000' });
    expect(said('-0.004', '0.5')).toEqual({ value: '0.00', u: '0.50' });
    expect(said('5.10', '0')).toEqual({ value: '5.10', u: '0' });
  });
});
