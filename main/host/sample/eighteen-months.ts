/**
 * The eighteen months of the sample: nine of working concentrate, nine of clearing old plates. Among its runs are one fired twice, one with a
 * leaking lute, one weighed wet, two charges caught together; among its entries a correction, and mercury found under a floor. All invented.
 */
import { settle } from './site.ts';
import { later, Story, type Told } from './story.ts';
import { type MadeLot, Work } from './work.ts';

/** A run whose figures close but for a usual gap. */
function ordinary(work: Work, day: string, lots: readonly MadeLot[], gapShare = 0.006) {
  const charge = work.charge(day, lots);
  const sponge = Number((charge.metal * 1.018).toFixed(2));
  work.fire(day, [{ id: charge.id, sponge }], Number((charge.grams * (1 - gapShare) - sponge).toFixed(2)), {
    openedC: work.story.dice.whole(24, 33),
  });
  return { id: charge.id, sponge, metal: charge.metal };
}

/** The whole story, in the order it was written down. */
export function eighteenMonths(): readonly Told[] {
  const story = new Story(1893);
  const site = settle(story);
  const work = new Work(story, site);
  work.open();
  const lots: MadeLot[][] = [];

  // nine months of concentrate: ten clean-ups, five charges and their runs
  const metals = [62, 71, 58, 66, 74, 60, 69, 57, 64, 61];
  for (const [month, metal] of metals.entries()) {
    const first = later('2025-01-13', month * 26);
    if (month % 3 === 0) work.draw(first, 900);
    const ores = [2.1, 1.8, 2.3].map((t) => Number((t * story.dice.between(0.9, 1.1)).toFixed(2)));
    for (const [i, ore] of ores.entries())
      work.crush(later(first, i * 5), ore, story.dice.whole(140, 210), i === 1 ? 'mortar' : 'plates');
    const ore = ores.reduce((s, x) => s + x, 0);
    const general = month === 9;
    lots.push(
      work.cleanUp(later(first, 17), general ? 'general' : 'routine', metal, month % 2 === 0 ? 3 : 2, 'outside-plate', ore),
    );
    if (month === 4) {
      story.tell('open-day', later(first, 20), '15:00', {
        visitors: 84,
        children: 19,
        areas: 'battery house and yard',
        covered: 'plates under water and boards',
        guides: [site.helper],
      });
    }
    if (month === 1) ordinaryRun(later(first, 19), [0, 1]);
    if (month === 3) refired(later(first, 19));
    if (month === 5) leaking(later(first, 19));
    if (month === 7) weighedWet(later(first, 19));
    if (month === 9) together(later(first, 19));
    if (month === 2 || month === 5 || month === 8) work.count(later(first, 21), '16:30');
  }

  function ordinaryRun(day: string, which: readonly number[]): void {
    const run = ordinary(
      work,
      day,
      which.flatMap((i) => lots[i] ?? []),
    );
    work.melt(later(day, 2), [run]);
  }

  function refired(day: string): void {
    const charge = work.charge(day, [...(lots[2] ?? []), ...(lots[3] ?? [])]);
    const under = Number((charge.metal * 1.018 + 38).toFixed(2));
    const first = Number((charge.grams * 0.995 - under).toFixed(2));
    work.fire(day, [{ id: charge.id, sponge: under }], first, { openedC: 31, note: 'gas ran low' });
    const sponge = Number((charge.metal * 1.017).toFixed(2));
    work.fire(later(day, 1), [{ id: charge.id, sponge }], Number((under - sponge - 1.1).toFixed(2)), { openedC: 28 });
    work.melt(later(day, 3), [{ id: charge.id, sponge, metal: charge.metal }]);
  }

  function leaking(day: string): void {
    const charge = work.charge(day, [...(lots[4] ?? []), ...(lots[5] ?? [])]);
    const sponge = Number((charge.metal * 1.019).toFixed(2));
    work.fire(day, [{ id: charge.id, sponge }], Number((charge.grams * 0.958 - sponge).toFixed(2)), {
      openedC: 30,
      lute: 'grey stain at the lid, smell noticed from 10:20',
    });
    story.tell('incident', day, '10:30', {
      what: 'Smell and a grey stain at the lute during the main run. Heat was cut at once, people stood back upwind, the run was finished after the lute was renewed.',
      where: 'retort house',
      people: [site.keeper],
      done: 'Lute renewed, area kept clear until the next morning, safety officer told.',
      assessment: 'yes',
    });
    work.melt(later(day, 2), [{ id: charge.id, sponge, metal: charge.metal }]);
  }

  function weighedWet(day: string): void {
    const charge = work.charge(day, [...(lots[6] ?? []), ...(lots[7] ?? [])]);
    const sponge = Number((charge.metal * 1.018).toFixed(2));
    const caught = Number((charge.grams * 0.995 - sponge).toFixed(2));
    const firing = work.fire(day, [{ id: charge.id, sponge }], caught, {
      openedC: 27,
      state: 'wet',
      shownG: Number((caught + 9.4).toFixed(2)),
    });
    story.tell('note', later(day, 1), '08:10', {
      text: 'The mercury was weighed straight from under the water. Dry it and weigh it again next time.',
      about: firing,
    });
    work.melt(later(day, 2), [{ id: charge.id, sponge, metal: charge.metal }]);
  }

  function together(day: string): void {
    const one = work.charge(day, lots[8] ?? []);
    const two = work.charge(later(day, 1), lots[9] ?? []);
    const sponges = [one, two].map((c) => ({ id: c.id, sponge: Number((c.metal * 1.018).toFixed(2)) }));
    const caught = one.grams + two.grams - (sponges[0]?.sponge ?? 0) - (sponges[1]?.sponge ?? 0) - 5.2;
    work.fire(later(day, 1), sponges, Number(caught.toFixed(2)), { openedC: 29 });
    work.melt(
      later(day, 3),
      [one, two].map((c, i) => ({ id: c.id, sponge: sponges[i]?.sponge ?? 0, metal: c.metal })),
    );
  }

  clearing(work, story);
  return [...story.told].sort((a, b) => (a.written < b.written ? -1 : a.written > b.written ? 1 : 0));
}

/** Nine months of clearing: the consent has run out, nothing is fed any more, old plates and the floor are cleared. */
function clearing(work: Work, story: Story): void {
  const { site, truth } = work;
  const by = story.by;
  story.by = site.officer;
  story.tell('standing', '2025-11-03', '09:00', {
    held: [
      { what: 'stock', place: 'store' },
      { what: 'in-place', place: 'old plates and floor' },
    ],
    done: [
      { what: 'clearing', place: 'old plates, mortar box and floor' },
      { what: 'no-mercury-fed', place: 'battery, on open days' },
    ],
    note: 'Working ended. What is left is being cleared.',
  });
  story.by = by;
  story.tell('scale', '2025-11-18', '10:00', {
    of: site.bench,
    label: 'Bench scale',
    maximum: '6 kg',
    d: '0.01 g',
    s: '0.02 g',
    linearity: '0.02 g',
    tolerance: 0.001,
    certificate: { U: '0.03 g', k: 2, at: '2000 g', number: 'C-131', on: '2025-11-18', due: '2026-11-18' },
  });
  story.tell('scale-check', '2025-11-19', '08:20', {
    scale: site.bench,
    standard: '500 g',
    read: '499.99 g',
    passed: 'yes',
    limit: '0.05 g',
  });
  const floor = work.cleanUp('2025-11-24', 'final', 24, 1, 'mortar');
  // what was dug out of the mortar box was washed over the plate before it was scraped
  truth.plates += truth.mortar - 22;
  truth.mortar = 22;
  const scaled: MadeLot[] = [];
  for (const [i, metal] of [31, 27, 22].entries()) {
    const day = later('2026-01-19', i * 41);
    story.tell('plate-work', later(day, -1), '10:00', {
      plate: i === 0 ? site.plate : site.lowerPlate,
      what: 'scaled',
      note: 'cold, wet, scraped by hand under a water film',
    });
    scaled.push(...work.cleanUp(day, 'final', metal, 1, 'scale'));
  }
  const first = ordinary(work, '2026-02-09', [...floor, ...scaled.slice(0, 1)], 0.009);
  work.melt('2026-02-11', [first]);
  story.tell('found', '2026-03-17', '11:30', {
    where: 'under the boards below the old lower plate',
    what: 'mercury',
    weight: story.weigh(site.bench, 1842.6, 412.15),
    vessel: site.bottle,
    note: 'gathered by the licensed clearer, strained through cloth',
  });
  truth.bottle += 1842.6;
  story.tell('waste', '2026-03-18', '14:00', {
    drum: site.drum,
    what: 'sand and boards from under the lower plate',
    weight: story.weigh(site.platform, 18450, 2150, 0),
    share: { value: 0.004, u: 0.002, basis: 'three grab samples' },
    started: '2026-03-18',
    due: '2026-09-18',
  });
  story.tell('transfer', '2026-03-30', '10:30', {
    way: 'out',
    what: 'waste',
    party: 'Licensed treatment works',
    vessel: site.drum,
    weight: story.weigh(site.platform, 18450, 2150, 0),
    share: { value: 0.004, u: 0.002, basis: 'three grab samples' },
    purpose: 'treatment',
    counts: 'disposal',
    document: 'consignment note 0007',
    carrier: 'Licensed carrier',
    seal: 'T 0091',
    theirs: {
      weight: { how: 'stated', mass: '18.4 kg', u: '20 g', by: 'their weighbridge ticket' },
      on: '2026-04-01',
      document: 'receipt 311',
    },
  });
  const spill = story.tell('spill', '2026-04-02', '15:10', {
    where: 'bench of the amalgam room',
    vessel: site.bottle,
    lost: { how: 'stated', mass: '55 g', u: '5 g' },
    recovered: { weight: story.weigh(site.bench, 41.2, 0), vessel: site.bottle },
    insideIssue: 'no',
    cleaned: 'gathered with card and pipette, area kept clear, sealed',
    told: 'Safety officer',
  });
  truth.bottle -= 55 - 41.2;
  const second = ordinary(work, '2026-04-20', scaled.slice(1, 2), 0.005);
  const third = ordinary(work, '2026-05-25', scaled.slice(2), 0.007);
  work.melt('2026-05-27', [second, third]);
  story.tell('transfer', '2026-05-29', '11:00', {
    way: 'out',
    what: 'bar',
    party: 'Refiner',
    weight: story.weigh(site.bench, 402.18, 0),
    purpose: 'refining, for the board’s account',
    document: 'despatch 2',
    carrier: 'Security carrier',
    seal: 'B 17',
  });
  const wrong = story.tell('return', '2026-06-02', '10:00', {
    vessel: site.bottle,
    from: 'trap',
    weight: story.weigh(site.bench, 163.4, 412.15),
    how: 'drained from the well',
  });
  story.tell('correction', '2026-06-03', '08:05', {
    corrects: wrong,
    body: { vessel: site.bottle, from: 'trap', weight: story.weigh(site.bench, 136.4, 412.15), how: 'drained from the well' },
    why: 'Two figures were swapped when it was written up; the display was photographed.',
  });
  truth.bottle += 136.4;
  truth.trap -= 136.4;
  story.tell('note', '2026-06-03', '08:12', {
    text: 'Fourteen grams of the spill were not recovered; the floor there is to be read with the meter.',
    about: spill,
  });
  story.tell('check-due', '2026-06-04', '09:00', {
    what: 'health-surveillance',
    person: site.keeper,
    done: 'yes',
    next: '2026-12-04',
  });
  work.count('2026-06-30', '16:00');
}
