import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  compare,
  decimalFromNumber,
  decimalFromText,
  dividedWhole,
  minus,
  plus,
  rounded,
  times,
  toNumber,
  toText,
} from '../../app/core/decimal.ts';
import { added, exactly, less, measured, scaled, total, uOf } from '../../app/core/measured.ts';
import { compareRatio, mean, over, quotient, ratioFromText, toDouble } from '../../app/core/ratio.ts';
import { reported, roundedText, steppedText } from '../../app/core/round.ts';
import { reckoned, refused, why } from './reckoned.ts';

const d = (text: string) => decimalFromText(text) ?? decimalFromNumber(Number.NaN);
const number = fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 });

describe('decimals', () => {
  test('a number becomes the decimal it prints as, and comes back as itself', () => {
    fc.assert(
      fc.property(number, (x) => {
        expect(toNumber(decimalFromNumber(x))).toBe(x === 0 ? 0 : x);
      }),
    );
    expect(toText(decimalFromNumber(1e-7))).toBe('0.0000001');
    expect(toText(decimalFromNumber(1e21))).toBe('1000000000000000000000');
  });

  test('what is added and taken off again leaves nothing', () => {
    fc.assert(
      fc.property(number, number, (x, y) => {
        const [a, b] = [decimalFromNumber(x), decimalFromNumber(y)];
        expect(compare(minus(plus(a, b), b), a)).toBe(0);
        expect(compare(times(a, b), times(b, a))).toBe(0);
      }),
    );
  });

  test('only plain decimals are read', () => {
    for (const text of ['1e3', '1,5', '+1', '.5', '5.', ' 1', '', '1 ', '--1', '0x1', '１'])
      expect(decimalFromText(text)).toBeNull();
  });
});

describe('ratios', () => {
  test('a quotient is the double nearest to it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2 ** 53 - 1 }), fc.integer({ min: 1, max: 2 ** 53 - 1 }), (a, b) => {
        // both are exact doubles, so the machine's own division is the nearest double
        expect(quotient(decimalFromNumber(a), decimalFromNumber(b))).toBe(a / b);
      }),
    );
  });

  test('nothing is shared out over nothing or less', () => {
    expect(over(ratioFromText('1'), ratioFromText('0'))).toBeNull();
    expect(over(ratioFromText('1'), ratioFromText('-2'))).toBeNull();
    expect(mean([])).toBeNull();
  });

  test('a mean of thirds is exact', () => {
    const third = over(ratioFromText('1'), ratioFromText('3')) ?? ratioFromText('0');
    expect(compareRatio(mean([third, third, third]) ?? ratioFromText('0'), third)).toBe(0);
    expect(toDouble(third)).toBe(1 / 3);
  });
});

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

describe('measured values', () => {
  const inAndOut = fc.tuple(
    fc.integer({ min: 1, max: 1e9 }),
    fc.double({ min: 1e-6, max: 1e3, noNaN: true }),
    fc.integer({ min: 1, max: 20 }),
  );

  test('what two values share cancels when one is taken from the other', () => {
    fc.assert(
      fc.property(inAndOut, ([ug, u]) => {
        const a = measured(ug, [['scale', u]]);
        expect(uOf(less(a, a))).toBe(0);
        expect(less(a, a).ug).toBe(0);
      }),
    );
  });

  test('what n values share counts n-fold when they are added, and their scatter by the root of n', () => {
    fc.assert(
      fc.property(inAndOut, ([ug, u, n]) => {
        const shared = total(Array.from({ length: n }, () => measured(ug, [['scale', u]])));
        const apart = total(Array.from({ length: n }, (_, i) => measured(ug, [[`reading ${i}`, u]])));
        expect(uOf(shared) / (n * u)).toBeCloseTo(1, 12);
        expect(uOf(apart) / (Math.sqrt(n) * u)).toBeCloseTo(1, 12);
        expect(shared.ug).toBe(n * ug);
      }),
    );
  });

  test('any sum has the variance that its parts give when they are squared one source at a time', () => {
    const value = fc.record({
      ug: fc.integer({ min: -1e9, max: 1e9 }),
      scatter: fc.integer({ min: 0, max: 9 }),
      group: fc.constantFrom('a', 'b', 'c'),
    });
    fc.assert(
      fc.property(fc.array(fc.tuple(value, fc.constantFrom(1, -1)), { maxLength: 12 }), (items) => {
        const sum = total(
          items.map(([v, sign], i) =>
            scaled(
              measured(v.ug, [
                [`own ${i}`, v.scatter],
                [v.group, v.ug * 1e-4],
              ]),
              sign,
            ),
          ),
        );
        let variance = 0;
        for (const [v] of items) variance += v.scatter ** 2;
        for (const group of ['a', 'b', 'c']) {
          let together = 0;
          for (const [v, sign] of items) if (v.group === group) together += sign * v.ug * 1e-4;
          variance += together ** 2;
        }
        expect(uOf(sum)).toBeCloseTo(Math.sqrt(variance), 6);
      }),
    );
  });

  test('an exact value adds no uncertainty', () => {
    expect(added(exactly(5), measured(7, [['x', 2]]))).toEqual({ ug: 12, parts: new Map([['x', 2]]) });
  });
});

test('whole quotients round by their rule on both sides of nothing', () => {
  expect(dividedWhole(d('5'), d('2'))).toBe(2n);
  expect(dividedWhole(d('7'), d('2'))).toBe(4n);
  expect(dividedWhole(d('-5'), d('2'))).toBe(-2n);
  expect(dividedWhole(d('-7'), d('-2'), 'down')).toBe(3n);
});
