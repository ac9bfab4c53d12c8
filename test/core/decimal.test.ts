import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  compare,
  decimalFromNumber,
  decimalFromText,
  dividedWhole,
  minus,
  plus,
  times,
  toNumber,
  toText,
} from '../../app/core/decimal.ts';
import { compareRatio, mean, over, quotient, ratioFromText, toDouble } from '../../app/core/ratio.ts';

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

test('whole quotients round by their rule on both sides of nothing', () => {
  expect(dividedWhole(d('5'), d('2'))).toBe(2n);
  expect(dividedWhole(d('7'), d('2'))).toBe(4n);
  expect(dividedWhole(d('-5'), d('2'))).toBe(-2n);
  expect(dividedWhole(d('-7'), d('-2'), 'down')).toBe(3n);
});

describe('short decimals, which are read and divided as doubles', () => {
  const shown = fc
    .tuple(fc.bigInt({ min: 0n, max: 10n ** 17n }), fc.nat(12))
    .map(([digits, places]) => toText({ digits, places }));

  test('are the decimals their digits say, to the last zero', () => {
    fc.assert(
      fc.property(shown, (text) => {
        const fraction = text.split('.')[1] ?? '';
        expect(d(text)).toEqual({ digits: BigInt(text.replace('.', '')), places: fraction.length });
        expect(toNumber(d(text))).toBe(Number(text));
      }),
    );
    for (const text of ['', '.', '1.', '.5', '1..2', '1.2.3', '+1', '1e3', ' 1', '1 ', '--1'])
      expect(decimalFromText(text)).toBeNull();
  });

  test('divide to the double nearest to the exact quotient, however they are written', () => {
    fc.assert(
      fc.property(shown, shown, fc.nat(30), (a, b, zeros) => {
        fc.pre(d(b).digits > 0n);
        // the same quotient with so many digits that doubles cannot hold them
        const longer = { digits: d(a).digits * 10n ** BigInt(zeros), places: d(a).places };
        const divisor = { digits: d(b).digits * 10n ** BigInt(zeros), places: d(b).places };
        expect(quotient(d(a), d(b))).toBe(quotient(longer, divisor));
      }),
    );
  });
});
