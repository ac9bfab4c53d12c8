import fc from 'fast-check';
import { all, create } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { decimalFromText, sum, toText } from '../../app/core/decimal.ts';
import { gramsFromText, gramsText, massFromText, massUnits, troyText } from '../../app/core/mass.ts';
import { reckoned, refused } from './reckoned.ts';

const grams = (text: string) => {
  const got = gramsFromText(text, 'mass');
  if (!got.ok) throw new Error(JSON.stringify(got.problems));
  return got.value;
};
const code = (text: unknown) => {
  const got = massFromText(text, 'mass');
  return got.ok ? 'taken' : got.problems[0]?.code;
};

describe('a mass as written', () => {
  test('a bare ounce is refused in every spelling, and a bare ton', () => {
    for (const unit of ['oz', 'Oz', 'OZ', 'oz.', 'ounce', 'ounces']) expect(code(`3 ${unit}`)).toBe('mass-bare-ounce');
    for (const unit of ['ton', 'tons', 'Ton']) expect(code(`3 ${unit}`)).toBe('mass-bare-ton');
    expect(code('3 oz 5 dwt')).toBe('mass-bare-ounce');
  });

  test('sign, comma, exponent, missing unit, unknown unit and capitals are each refused for what they are', () => {
    expect(code('-3 g')).toBe('mass-sign');
    expect(code('+3 g')).toBe('mass-sign');
    expect(code('−3 g')).toBe('mass-sign');
    expect(code('1,5 g')).toBe('mass-comma');
    expect(code('1,000.5 g')).toBe('mass-comma');
    expect(code('1e3 g')).toBe('mass-exponent');
    expect(code('1E-3 g')).toBe('mass-exponent');
    expect(code('3')).toBe('mass-no-unit');
    expect(code('18 ozt 18')).toBe('mass-no-unit');
    expect(code('3 G')).toBe('mass-unit');
    expect(code('3 stone')).toBe('mass-unit');
    expect(code('3 constructor')).toBe('mass-unit');
    expect(code('.5 g')).toBe('mass-number');
    expect(code('5. g')).toBe('mass-number');
    expect(code('1.2.3 g')).toBe('mass-number');
    expect(code('')).toBe('mass-empty');
    expect(code(3)).toBe('mass-not-text');
    expect(code(null)).toBe('mass-not-text');
  });

  test('units run from large to small, each once', () => {
    expect(code('18 dwt 18 ozt')).toBe('mass-order');
    expect(code('3 g 4 g')).toBe('mass-order');
    expect(code('1 kg 2 g 3 mg')).toBe('taken');
    expect(code('1 lb 3 oz-av')).toBe('taken');
  });

  test('zero is a weight, and the text stays as it was read', () => {
    const got = massFromText(' 2.50 g ', 'mass');
    expect(got).toEqual({ ok: true, value: { text: '2.50 g', grams: { digits: 250n, places: 2 }, ug: 2_500_000 } });
    expect(code('0 g')).toBe('taken');
    expect(code('0.000 ozt')).toBe('taken');
  });

  test('more than the book can count in micrograms is refused there, and still reckoned', () => {
    expect(code('9007199254.740991 g')).toBe('taken');
    expect(code('9007199254.740992 g')).toBe('mass-too-large');
    expect(reckoned('mass', { mass: '20000 long-ton', to: ['t'] }).t).toBe(20320.938176);
  });

  test('whole micrograms go to text and back unchanged', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: Number.MAX_SAFE_INTEGER }), (ug) => {
        const got = massFromText(`${gramsText(ug)} g`, 'mass');
        expect(got.ok && got.value.ug).toBe(ug);
      }),
    );
  });

  test('reading any text gives a mass or a problem with the field, and never throws', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[0-9 .,eE+-]{0,8} ?[a-z-]{0,6}$/)), (text) => {
        const got = massFromText(text, 'charge[1]');
        if (!got.ok) expect(got.problems[0]?.field).toBe('charge[1]');
      }),
    );
  });

  test('sums leave nothing over: 0.1 and 0.2 make 0.3', () => {
    expect(toText(sum([grams('0.1 g'), grams('0.2 g')]))).toBe('0.3');
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 1e12 }), { maxLength: 30 }), (ugs) => {
        const whole = ugs.reduce((a, b) => a + b, 0);
        expect(toText(sum(ugs.map((ug) => grams(`${gramsText(ug)} g`))))).toBe(ugs.length ? gramsText(whole) : '0');
      }),
    );
  });
});

describe('the units', () => {
  // mathjs keeps its own tables
  const math = create(all ?? {}, { number: 'BigNumber', precision: 64 });
  const theirs: Readonly<Record<string, string>> = {
    ug: 'microgram',
    mg: 'milligram',
    g: 'gram',
    kg: 'kilogram',
    t: 'tonne',
    gr: 'grain',
    dwt: '24 grain',
    ozt: '480 grain',
    lbt: '5760 grain',
    'oz-av': 'ounce',
    lb: 'poundmass',
    'short-ton': '2000 poundmass',
    'long-ton': '2240 poundmass',
  };

  test.each(massUnits)('one %s is what an independent library makes it', (unit) => {
    const wanted = math.evaluate(`number(1 * ${theirs[unit]?.replace(/^(\d+) /, '$1 * 1 ')}, gram)`) as { toNumber(): number };
    const ours = reckoned('mass', { mass: `1 ${unit}`, to: ['g'] }).g as number;
    expect(Math.abs(ours / Number(wanted) - 1)).toBeLessThan(1e-12);
  });
});

describe('troy notation', () => {
  const troy = (text: string) => troyText(grams(text));

  test('grains carry at 24 and pennyweights at 20, and nothing is left out', () => {
    expect(troy('18 ozt 18 dwt')).toBe('18 ozt 18 dwt 0 gr');
    expect(troy('0 g')).toBe('0 ozt 0 dwt 0 gr');
    expect(troy('23.99996 gr')).toBe('0 ozt 1 dwt 0 gr');
    expect(troy('479.99999 gr')).toBe('1 ozt 0 dwt 0 gr');
    expect(troy('12.5760 gr')).toBe('0 ozt 0 dwt 12.576 gr');
    expect(troy('10 gr')).toBe('0 ozt 0 dwt 10 gr');
  });

  test('grains are rounded once, half to even, at four places', () => {
    expect(troy('0.00005 gr')).toBe('0 ozt 0 dwt 0 gr');
    expect(troy('0.00015 gr')).toBe('0 ozt 0 dwt 0.0002 gr');
    expect(troy('0.000150000001 gr')).toBe('0 ozt 0 dwt 0.0002 gr');
  });

  test('what it says reads back as the same mass within half of its last place', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e13 }), (ug) => {
        const mass = grams(`${gramsText(ug)} g`);
        const back = grams(troyText(mass));
        const apart = Math.abs(Number(toText(back)) - Number(toText(mass)));
        expect(apart).toBeLessThanOrEqual(0.0000032399456 + Number(toText(mass)) * 1e-15);
      }),
    );
  });
});

describe('reckon mass', () => {
  test('one key per unit asked, and the troy text always', () => {
    expect(reckoned('mass', { mass: '18 ozt 18 dwt', to: ['g', 'ozt'] })).toEqual({
      g: 587.85571152,
      ozt: 18.9,
      text: '18 ozt 18 dwt 0 gr',
    });
    expect(Object.keys(reckoned('mass', { mass: '1 g', to: [] }))).toEqual(['text']);
  });

  test('a unit asked for is held to the same rules as a unit read', () => {
    expect(refused('mass', { mass: '1 g', to: ['g', 'oz', 'ton', 'stone'] })).toEqual([
      'to[1] mass-bare-ounce',
      'to[2] mass-bare-ton',
      'to[3] mass-unit',
    ]);
  });

  test('every refused field is told, once each', () => {
    expect(refused('mass', { mass: 5, to: 'g', also: 1 })).toEqual(['mass mass-not-text', 'to wrong-type', 'also unknown-field']);
    expect(refused('mass', {})).toEqual(['mass missing', 'to missing']);
    for (const not of [null, [], 'text', 3]) expect(refused('mass', not)).toEqual(['wrong-type']);
  });

  test('a topic nobody knows is refused', () => {
    expect(refused('toString', {})).toEqual(['topic']);
  });
});

test('a decimal keeps its trailing zeros', () => {
  expect(toText(decimalFromText('2.50') ?? { digits: 0n, places: 0 })).toBe('2.50');
});
