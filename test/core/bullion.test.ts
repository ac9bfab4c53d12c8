import { describe, expect, test } from 'vitest';
import { reckoned, refused, why } from './reckoned.ts';

describe('reckon melt', () => {
  test('shrinkage is what went in less bars and samples, and the prills come off it once', () => {
    expect(
      reckoned('melt', { sponge: ['0.1 g', '0.2 g'], added: ['0.7 g'], bars: ['0.6 g'], samples: ['0.1 g'], prills: '0.1 g' }),
    ).toEqual({ in_g: 1, shrinkage_g: 0.3, shrinkage_of_in: 0.3, net_g: 0.2, net_of_in: 0.2, findings: [] });
  });

  test('bars and samples above what went in are a finding, and the shrinkage stays below nothing', () => {
    const got = reckoned('melt', { sponge: ['10 g'], bars: ['9.5 g'], samples: ['0.6 g'] });
    expect([got.shrinkage_g, got.net_of_in, got.findings]).toEqual([-0.1, -0.01, ['bars-over-charge']]);
    expect(reckoned('melt', { sponge: ['10 g'], bars: ['10 g'] }).findings).toEqual([]);
  });

  test('nothing melted has no share', () => {
    const got = reckoned('melt', { sponge: [], bars: [] });
    expect([got.in_g, got.shrinkage_of_in, got.net_of_in]).toEqual([0, why('nothing-melted'), why('nothing-melted')]);
  });

  test('lists are lists of masses', () => {
    expect(refused('melt', { sponge: '10 g', bars: [10], slag: '1 g' })).toEqual([
      'sponge wrong-type',
      'bars[0] mass-not-text',
      'slag unknown-field',
    ]);
  });
});

describe('reckon yield', () => {
  const four = ['gross_g_t', 'fine_g_t', 'gross_dwt_long_ton', 'fine_dwt_long_ton'];

  test('without ore above nothing none of the four yields can be had, and the metal still can', () => {
    for (const ore of [{}, { ore: '0 t' }]) {
      const got = reckoned('yield', { bar: '10 g', gold_permille: 801, ...ore });
      for (const name of four) expect(got[name], name).toEqual(why('no-ore'));
      expect(got.fine_gold_g).toBe(8.01);
    }
  });

  test('one gram a tonne is 49/75 of a pennyweight a long ton', () => {
    const got = reckoned('yield', { bar: '1 g', gold_permille: 500, ore: '1 t' });
    expect(four.map((name) => got[name])).toEqual([1, 0.5, 49 / 75, 49 / 150]);
  });

  test('silver and base stand only where silver is given, and the base may be below nothing', () => {
    expect(reckoned('yield', { bar: '1 g', gold_permille: 900 })).not.toHaveProperty('base_permille');
    expect(reckoned('yield', { bar: '1 g', gold_permille: 900, silver_permille: 100.5 }).base_permille).toBe(-0.5);
  });

  test('fineness runs from 0 to 1000', () => {
    const at = (gold_permille: unknown) => refused('yield', { bar: '1 g', gold_permille });
    expect([at(0), at(1000)]).toEqual([[], []]);
    for (const wrong of [-0.1, 1000.1]) expect(at(wrong)).toEqual(['gold_permille fineness-range']);
    expect(at('801')).toEqual(['gold_permille wrong-type']);
  });

  test('fine gold is told in troy notation as well', () => {
    expect(reckoned('yield', { bar: '1 ozt', gold_permille: 500 }).fine_gold_text).toBe('0 ozt 10 dwt 0 gr');
  });
});

describe('reckon bars', () => {
  test('bars weigh in by mass, and silver stands only when every bar has one', () => {
    const bars = [
      { mass: '100 g', gold_permille: 900, silver_permille: 50 },
      { mass: '300 g', gold_permille: 800 },
    ];
    const got = reckoned('bars', { bars });
    expect([got.g, got.gold_permille, got.fine_gold_g]).toEqual([400, 825, 330]);
    expect(got).not.toHaveProperty('silver_permille');
    expect(reckoned('bars', { bars: bars.slice(0, 1) }).silver_permille).toBe(50);
  });

  test('standard gold is eleven parts in twelve, at 3 pounds 17 shillings 10½ pence', () => {
    const got = reckoned('bars', { bars: [{ mass: '11 ozt', gold_permille: 1000 }] });
    expect([got.fine_gold_ozt, got.standard_ozt, got.mint_value_pounds]).toEqual([11, 12, 46.725]);
  });

  test('bars that weigh nothing have no fineness', () => {
    expect(reckoned('bars', { bars: [] })).toMatchObject({ g: 0, gold_permille: why('over-nothing'), fine_gold_ozt: 0 });
    expect(reckoned('bars', { bars: [{ mass: '0 g', gold_permille: 900, silver_permille: 1 }] })).toMatchObject({
      gold_permille: why('over-nothing'),
      silver_permille: why('over-nothing'),
    });
  });
});

describe('reckon assay', () => {
  test('the correction is what the proofs lost on average, added to each cornet', () => {
    const got = reckoned('assay', {
      samples: [{ sample_mg: 250, cornet_mg: 225 }],
      proofs: [
        { taken_mg: 225, found_mg: 224.9 },
        { taken_mg: 225, found_mg: 225.2 },
      ],
    });
    expect([got.delta_mg, got.gold_mean_permille, got.uncorrected_mean_permille]).toEqual([-0.05, 899.8, 900]);
    expect(got.surcharge_permille).toBe(50 / 225);
    expect([got.range_permille, got.findings]).toEqual([0, []]);
    expect(got).not.toHaveProperty('silver_permille');
  });

  test('without proofs nothing is corrected, and it is said', () => {
    const got = reckoned('assay', { samples: [{ sample_mg: 250, cornet_mg: 225, bead_mg: 240 }], proofs: [] });
    expect([got.delta_mg, got.surcharge_permille]).toEqual([why('no-proofs'), why('no-proofs')]);
    expect([got.gold_mean_permille, got.silver_permille, got.base_permille]).toEqual([900, 60, 40]);
    expect(got.findings).toEqual(['no-proofs', 'no-silver-loss']);
  });

  test('silver is the beads less the mean gold, with the proofs’ mean loss added', () => {
    const got = reckoned('assay', {
      samples: [
        { sample_mg: 200, cornet_mg: 160 },
        { sample_mg: 200, cornet_mg: 161, bead_mg: 190 },
      ],
      proofs: [
        { taken_mg: 160, found_mg: 160, silver_loss_mg: 1 },
        { taken_mg: 160, found_mg: 160, silver_loss_mg: 3 },
      ],
    });
    expect([got.silver_permille, got.base_permille]).toEqual([157.5, 40]);
    expect(got.findings).toEqual([]);
  });

  test('above 1000 is told and nothing is set back; at 1000 nothing is said', () => {
    const at = (taken_mg: number, cornet_mg: number, bead_mg?: number) =>
      reckoned('assay', {
        samples: [{ sample_mg: 100, cornet_mg, bead_mg }],
        proofs: [{ taken_mg, found_mg: 100, silver_loss_mg: 0 }],
      });
    expect(at(100, 100).findings).toEqual([]);
    expect(at(100.1, 100)).toMatchObject({ gold_mean_permille: 1001, findings: ['over-1000'] });
    expect(at(100, 90, 100.5)).toMatchObject({ base_permille: -5, findings: ['over-1000'] });
  });

  test('a cornet above its sample is refused', () => {
    const samples = [
      { sample_mg: 100, cornet_mg: 90 },
      { sample_mg: 100, cornet_mg: 100.01 },
    ];
    expect(refused('assay', { samples })).toEqual(['samples[1].cornet_mg cornet-over-sample']);
  });

  test('no sample gives no figure', () => {
    expect(reckoned('assay', { samples: [] })).toMatchObject({ gold_permille: [], gold_mean_permille: why('over-nothing') });
  });
});

describe('reckon settle', () => {
  const settle = (umpire: number | undefined, rule: string, limit = 0.5) =>
    reckoned('settle', {
      site_permille: 884.6,
      other_permille: 885.3,
      limit_permille: limit,
      ...(umpire === undefined ? {} : { umpire_permille: umpire }),
      rule,
    });

  test('a difference up to and equal to the limit settles at the mean, whatever an umpire said', () => {
    for (const rule of ['nearer-mean', 'median', 'umpire-between'])
      expect(settle(900, rule, 0.7)).toEqual({ difference_permille: 0.7, umpire_needed: false, settled_permille: 884.95 });
    expect(settle(undefined, 'median', 0.69)).toEqual({
      difference_permille: 0.7,
      umpire_needed: true,
      settled_permille: why('no-umpire'),
    });
  });

  test('nearer-mean names the nearer party; an umpire exactly midway settles alone', () => {
    expect(settle(885.2, 'nearer-mean')).toMatchObject({ settled_permille: 885.25, nearer: 'other' });
    const midway = settle(884.95, 'nearer-mean');
    expect(midway.settled_permille).toBe(884.95);
    expect(midway).not.toHaveProperty('nearer');
  });

  test('the median is the middle one of three', () => {
    expect(settle(884.0, 'median')).toEqual({ difference_permille: 0.7, umpire_needed: true, settled_permille: 884.6 });
    expect(settle(884.7, 'median').settled_permille).toBe(884.7);
    expect(settle(890, 'median').settled_permille).toBe(885.3);
  });

  test('an umpire outside the parties is drawn to the nearer one; on a party it stands', () => {
    expect(settle(884.0, 'umpire-between').settled_permille).toBe(884.3);
    expect(settle(886.3, 'umpire-between').settled_permille).toBe(885.8);
    expect(settle(885.3, 'umpire-between').settled_permille).toBe(885.3);
    expect(settle(885.0, 'umpire-between')).not.toHaveProperty('nearer');
  });

  test('the rule is never assumed', () => {
    expect(refused('settle', { site_permille: 1001, other_permille: 885, limit_permille: -1 })).toEqual([
      'site_permille fineness-range',
      'limit_permille below-zero',
      'rule missing',
    ]);
  });
});

describe('reckon density', () => {
  const density = (air_g: number, water_g: number, other = 'silver') =>
    reckoned('density', { air_g, water_g, water_density: 1, air_density: 0, other });

  test('pure metals come out as themselves', () => {
    expect(density(1932, 1832)).toEqual({ density_g_cm3: 19.32, gold_permille: 1000, class: 'indicative', findings: [] });
    expect(density(1049, 949).gold_permille).toBe(0);
    expect(density(896, 796, 'copper').gold_permille).toBe(0);
  });

  test('outside the two metals there is a density and no gold', () => {
    expect(density(1933, 1833)).toMatchObject({ gold_permille: why('outside-the-two-metals'), findings: ['denser-than-gold'] });
    expect(density(1048, 948)).toMatchObject({ gold_permille: why('outside-the-two-metals'), findings: ['lighter-than-other'] });
    expect(density(1000, 900, 'copper').findings).toEqual([]);
  });

  test('not lighter in water there is neither', () => {
    for (const water of [100, 101])
      expect(density(100, water)).toEqual({
        density_g_cm3: why('lighter-in-water'),
        gold_permille: why('lighter-in-water'),
        class: 'indicative',
        findings: [],
      });
  });

  test('air counts 0.0012 where nothing is said', () => {
    const input = { air_g: 412.36, water_g: 388.61, water_density: 0.9982071, other: 'silver' };
    expect(reckoned('density', input)).toEqual(reckoned('density', { ...input, air_density: 0.0012 }));
  });
});
