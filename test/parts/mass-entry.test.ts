import { describe, expect, test } from 'vitest';
import { massEntry, massText, whichUnit, withUnit } from '../../app/parts/mass-entry.ts';

describe('a mass as typed', () => {
  test('digits stay as typed and take the picked unit', () => {
    expect(massText({ amount: '2.50', unit: 'g' })).toBe('2.50 g');
    expect(massText({ amount: ' 955.6 ', unit: 'ozt' })).toBe('955.6 ozt');
  });

  test('a unit typed with the digits wins over the picked one', () => {
    expect(massText({ amount: '18 ozt 18 dwt', unit: 'g' })).toBe('18 ozt 18 dwt');
  });

  test('nothing typed is no mass', () => {
    expect(massText({ amount: '  ', unit: 'g' })).toBeUndefined();
  });

  test.each([
    ['12 oz', ['ozt', 'oz-av']],
    ['12oz', ['ozt', 'oz-av']],
    ['12 OZ.', ['ozt', 'oz-av']],
    ['3 ounces', ['ozt', 'oz-av']],
    ['2 tons', ['long-ton', 'short-ton', 't']],
    ['2 ton', ['long-ton', 'short-ton', 't']],
  ])('“%s” is asked about', (amount, units) => {
    expect(whichUnit({ amount, unit: 'g' })).toEqual(units);
  });

  test.each(['12 ozt', '12 oz-av', '2 long-ton', '2 short-ton', '12', '12 g'])('“%s” is not asked about', (amount) => {
    expect(whichUnit({ amount, unit: 'g' })).toBeNull();
  });

  test('the answer keeps the digits and sets the unit', () => {
    expect(withUnit({ amount: '12.50oz', unit: 'g' }, 'ozt')).toEqual({ amount: '12.50', unit: 'ozt' });
    expect(withUnit({ amount: '2 tons', unit: 'g' }, 'long-ton')).toEqual({ amount: '2', unit: 'long-ton' });
  });

  test('a kept mass comes apart and together again to the same text', () => {
    for (const text of ['2.50 g', '0.01 g', '18 ozt 18 dwt', '3 kg', '200 mg']) expect(massText(massEntry(text))).toBe(text);
  });
});
