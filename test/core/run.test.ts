import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reckoned, refused, why } from './reckoned.ts';

type Firing = { sponge: string; mercury: string; water?: string };
const dry = (sponge: string, mercury: string): Firing => ({ sponge, mercury, water: '0 g' });
const run = (charge: string, firings: readonly Firing[], more: object = {}) =>
  reckoned('run', { charge: [charge], firings, ...more });
const findings = (...args: Parameters<typeof run>) => run(...args).findings;

describe('does it close', () => {
  test('masses are added exactly: 0.3 g less 0.1 g less 0.2 g leaves nothing over', () => {
    const got = reckoned('run', { charge: ['0.1 g', '0.2 g'], firings: [dry('0.1 g', '0.2 g')], u_g: {} });
    expect([got.charge_g, got.gap_g, got.u_gap_g]).toEqual([0.3, 0, 0]);
    expect(got.findings).toEqual(['closes']);
  });

  test('a gap of exactly twice its uncertainty closes, either way, and the next hundredth does not', () => {
    const at = (mercury: string) => findings('100 g', [dry('40 g', mercury)], { u_g: { charge: 0.3, mercury: 0.4 } });
    expect(at('59.0 g')).toEqual(['closes']);
    expect(at('61.0 g')).toEqual(['closes']);
    expect(at('58.99 g')).toEqual(['within-band']);
    expect(at('61.01 g')).toEqual(['more-out-than-in']);
  });

  test('without an uncertainty a gap of nothing is within the band, and anything below it is more out than in', () => {
    expect(findings('100 g', [dry('40 g', '60 g')])).toEqual(['within-band']);
    expect(findings('100 g', [dry('40 g', '60.001 g')])).toEqual(['more-out-than-in']);
  });

  test('a gap exactly at the band is within it', () => {
    expect(findings('100 g', [dry('40 g', '58 g')])).toEqual(['within-band']);
    expect(findings('100 g', [dry('40 g', '57.999 g')])).toEqual(['short-of-mercury']);
  });

  test('above the band but within twice the uncertainty it closes', () => {
    expect(findings('100 g', [dry('40 g', '55 g')], { u_g: { sponge: 3 } })).toEqual(['closes']);
    expect(findings('100 g', [dry('40 g', '55 g')], { u_g: { sponge: 2 } })).toEqual(['short-of-mercury']);
  });

  test('the band is the share of the charge or the allowance, whichever is larger', () => {
    const at = (more: object) => findings('100 g', [dry('40 g', '55 g')], more);
    expect(at({ loss_allowance_g: 5 })).toEqual(['within-band']);
    expect(at({ loss_allowance_g: 4.99 })).toEqual(['short-of-mercury']);
    expect(at({ loss_band: 0.05, loss_allowance_g: 1 })).toEqual(['within-band']);
    expect(at({ loss_band: 0, loss_allowance_g: 0 })).toEqual(['short-of-mercury']);
  });

  test('a gap below nothing stays below nothing', () => {
    const got = run('100 g', [dry('40 g', '62.5 g')]);
    expect([got.gap_g, got.gap_of_charge]).toEqual([-2.5, -0.025]);
  });

  test('the uncertainty is told only when it is given, and a member left out counts as nothing', () => {
    expect(run('100 g', [dry('40 g', '60 g')])).not.toHaveProperty('u_gap_g');
    expect(run('100 g', [dry('40 g', '60 g')], { u_g: { charge: 0.3, mercury: 0.4 } }).u_gap_g).toBe(0.5);
  });
});

describe('is the sponge right', () => {
  const at = (sponge: string, more: object = {}) =>
    (findings('100 g', [dry(sponge, '50 g')], { loss_band: 1, ...more }) as string[]).filter((f) => f.endsWith('sponge'));

  test('further than the band from the usual ratio it is heavy or light; exactly at the band it is neither', () => {
    const usual = { usual_ratio: 0.38 };
    expect(at('42 g', usual)).toEqual([]);
    expect(at('42.001 g', usual)).toEqual(['heavy-sponge']);
    expect(at('34 g', usual)).toEqual([]);
    expect(at('33.999 g', usual)).toEqual(['light-sponge']);
    expect(at('39 g', { ...usual, ratio_band: 0.005 })).toEqual(['heavy-sponge']);
  });

  test('without a usual ratio 0.25 to 0.50 goes without remark, ends included', () => {
    expect(at('25 g')).toEqual([]);
    expect(at('50 g')).toEqual([]);
    expect(at('24.9 g')).toEqual(['light-sponge']);
    expect(at('50.1 g')).toEqual(['heavy-sponge']);
  });

  test('only amalgam leaves a sponge that says something', () => {
    for (const kind of ['mercury', 'residues']) expect(at('2 g', { kind })).toEqual([]);
    expect(at('2 g', { kind: 'amalgam' })).toEqual(['light-sponge']);
  });
});

describe('water and the condenser', () => {
  test('water left out in any firing makes the gap mercury and water together; none is not left out', () => {
    expect(findings('100 g', [{ sponge: '40 g', mercury: '60 g' }])).toEqual(['within-band', 'water-not-known']);
    expect(findings('100 g', [dry('40 g', '60 g')])).toEqual(['within-band']);
    const two = run('100 g', [dry('60 g', '40 g'), { sponge: '40 g', mercury: '20 g' }]);
    expect(two.findings).toEqual(['within-band', 'water-not-known']);
    expect((two.per_firing as { findings: string[] }[])[0]?.findings).toEqual(['within-band', 'heavy-sponge']);
  });

  test('findings stand in their order: closing, sponge, water', () => {
    expect(findings('100 g', [{ sponge: '60 g', mercury: '10 g' }])).toEqual([
      'short-of-mercury',
      'heavy-sponge',
      'water-not-known',
    ]);
  });

  test('a wet charge is not a loss of mercury beyond what is known', () => {
    const wet = run('520 g', [{ sponge: '190 g', mercury: '313.5 g' }]);
    expect(wet.gap_g).toBe(16.5);
    expect(wet.findings).toEqual(['short-of-mercury', 'water-not-known']);
    const weighed = run('520 g', [{ sponge: '190 g', mercury: '313.5 g', water: '14 g' }]);
    expect([weighed.gap_g, weighed.findings]).toEqual([2.5, ['within-band']]);
  });

  test('what the condenser holds more than before is not missing, and what it gave up was not gained', () => {
    const first = run('400 g', [dry('150 g', '241.5 g')], { condenser_before_g: 0, condenser_after_g: 8.5 });
    const second = run('380 g', [dry('142 g', '245 g')], { condenser_before_g: 8.5, condenser_after_g: 1.5 });
    expect([first.gap_g, second.gap_g]).toEqual([0, 0]);
    expect(run('400 g', [dry('150 g', '241.5 g')]).gap_g).toBe(8.5);
    expect(run('380 g', [dry('142 g', '245 g')]).findings).toEqual(['more-out-than-in']);
  });
});

describe('how much was caught', () => {
  test('the upper bound counts the sponge as gold and leaves the water out', () => {
    const got = run('100 g', [{ sponge: '40 g', mercury: '45 g', water: '10 g' }]);
    expect(got.caught_upper).toBe(0.9);
    expect(got.driven_off_g).toBe(60);
  });

  test('with nothing driven off but water there is nothing to take a share of', () => {
    expect(run('100 g', [dry('100 g', '0 g')]).caught_upper).toEqual(why('no-charge-driven-off'));
    expect(run('100 g', [{ sponge: '90 g', mercury: '1 g', water: '12 g' }]).caught_upper).toEqual(why('no-charge-driven-off'));
  });

  test('the lower bound stands only where a bar is given', () => {
    expect(run('100 g', [dry('40 g', '54 g')])).not.toHaveProperty('caught_lower');
    expect(run('100 g', [dry('40 g', '54 g')], { bar: '39 g', prills: '1 g' }).caught_lower).toBe(0.9);
  });

  test('a bar of more than this charge makes no bound above 1; exactly 1 is one', () => {
    const shared = run('955.6 g', [dry('371.8 g', '571.2 g')], { bar: '560 g' });
    expect(shared.caught_lower).toEqual(why('caught-above-one'));
    expect(run('100 g', [dry('40 g', '60 g')], { bar: '40 g' }).caught_lower).toBe(1);
    expect(run('100 g', [dry('40 g', '0 g')], { bar: '100 g' }).caught_lower).toEqual(why('caught-above-one'));
  });
});

describe('several firings of one charge', () => {
  const two = run('1000 g', [dry('500 g', '480 g'), dry('400 g', '95 g')], { usual_ratio: 0.4 });

  test('the last sponge counts, mercury and water add up', () => {
    expect([two.sponge_g, two.mercury_g, two.gap_g]).toEqual([400, 575, 25]);
  });

  test('each opening shows the charge as it then stood, and the last one speaks for the run', () => {
    expect(two.per_firing).toEqual([
      { sponge_ratio: 0.5, gap_g: 20, gap_of_charge: 0.02, caught_upper: 0.96, findings: ['within-band', 'heavy-sponge'] },
      { sponge_ratio: 0.4, gap_g: 25, gap_of_charge: 0.025, caught_upper: 575 / 600, findings: ['short-of-mercury'] },
    ]);
    expect(two.findings).toEqual(['short-of-mercury']);
  });
});

describe('what cannot be meant', () => {
  test('a charge of nothing, a run without a firing and a sponge above the charge are refused', () => {
    expect(refused('run', { charge: ['0 g'], firings: [dry('0 g', '0 g')] })).toEqual(['charge charge-weighs-nothing']);
    expect(refused('run', { charge: [], firings: [dry('0 g', '0 g')] })).toEqual(['charge charge-weighs-nothing']);
    expect(refused('run', { charge: ['1 g'], firings: [] })).toEqual(['firings no-firing']);
    expect(refused('run', { charge: ['1 g'], firings: [dry('1.001 g', '0 g'), dry('1 g', '0 g'), dry('2 g', '0 g')] })).toEqual([
      'firings[0].sponge sponge-over-charge',
      'firings[2].sponge sponge-over-charge',
    ]);
  });

  test('every refused field is told by its path from the top', () => {
    expect(
      refused('run', {
        kind: 'gold',
        charge: ['1 g', '1 oz', 3],
        firings: [{ sponge: '1e2 g', mercury: null, wet: true }],
        u_g: { charge: -0.1, bar: 1 },
        usual_ratio: '0.38',
        loss_band: -1,
      }),
    ).toEqual([
      'kind not-one-of',
      'charge[1] mass-bare-ounce',
      'charge[2] mass-not-text',
      'firings[0].sponge mass-exponent',
      'firings[0].mercury mass-not-text',
      'firings[0].wet unknown-field',
      'u_g.charge u-below-zero',
      'u_g.bar unknown-field',
      'usual_ratio wrong-type',
      'loss_band below-zero',
    ]);
  });
});

test('a second reckoning in whole micrograms finds the same gap and the same closing', () => {
  const ug = fc.integer({ min: 0, max: 1e9 });
  const firing = fc.record({ sponge: ug, mercury: ug, water: ug });
  fc.assert(
    fc.property(
      fc.array(ug, { minLength: 1, maxLength: 5 }),
      fc.array(firing, { minLength: 1, maxLength: 4 }),
      (charge, firings) => {
        const text = (n: number) => `${n} ug`;
        const whole = charge.reduce((a, b) => a + b, 0);
        const highest = Math.max(...firings.map((f) => f.sponge));
        if (whole === 0 || highest > whole) return;
        const got = reckoned('run', {
          charge: charge.map(text),
          firings: firings.map((f) => ({ sponge: text(f.sponge), mercury: text(f.mercury), water: text(f.water) })),
        });
        const out = firings.reduce((total, f) => total + f.mercury + f.water, firings.at(-1)?.sponge ?? 0);
        const gap = whole - out;
        expect(Math.round((got.gap_g as number) * 1e6)).toBe(gap);
        const closing = gap < 0 ? 'more-out-than-in' : gap * 50 > whole ? 'short-of-mercury' : 'within-band';
        expect((got.findings as string[])[0]).toBe(closing);
      },
    ),
  );
});
