/**
 * Nine months of clearing: the consent has run out, nothing is fed any more, old plates and the floor are cleared, and the whole is counted at the end of
 * every month. From January on the well's drain weeps: what the water of an open day washes off the plates is no longer caught. All invented.
 */
import { wholeCount } from './count.ts';
import { benchScale } from './site.ts';
import { later } from './story.ts';
import type { MadeLot, Work } from './work.ts';

/** What the drain lets through in a month, in grams: less than any one count can show. */
export const throughTheDrain = [30, 33, 31, 34, 30, 32] as const;

type Run = ReturnType<Work['ordinary']>;

/** The nine months, in order. */
export function clearing(work: Work): void {
  endOfWorking(work);
  const floor = floorCleared(work);
  wholeCount(work, '2025-11-30', '16:00');
  wholeCount(work, '2025-12-31', '16:00');
  const scaled: MadeLot[][] = [];
  const scale = (day: string, metal: number) => scaled.push(scaledPlate(work, day, metal, scaled.length));
  let april: Run | null = null;
  const months: readonly { readonly opened: string; readonly counted: string; readonly before: () => void }[] = [
    { opened: '2026-01-24', counted: '2026-01-31', before: () => scale('2026-01-19', 31) },
    { opened: '2026-02-21', counted: '2026-02-28', before: () => wetRun(work, [...floor, ...(scaled[0] ?? [])]) },
    {
      opened: '2026-03-21',
      counted: '2026-03-31',
      before: () => {
        scale('2026-03-01', 27);
        underTheFloor(work);
      },
    },
    {
      opened: '2026-04-18',
      counted: '2026-04-30',
      before: () => {
        spilled(work);
        scale('2026-04-11', 22);
        april = work.ordinary('2026-04-20', scaled[1] ?? [], 0.005);
      },
    },
    { opened: '2026-05-16', counted: '2026-05-31', before: () => lastRun(work, april, scaled[2] ?? []) },
    { opened: '2026-06-20', counted: '2026-06-30', before: () => lastJune(work) },
  ];
  for (const [i, { opened, counted, before }] of months.entries()) {
    before();
    work.openDay(opened, work.story.dice.whole(30, 90), throughTheDrain[i] ?? 0);
    wholeCount(work, counted, '16:00');
  }
}

function endOfWorking({ story, site }: Work): void {
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
  story.tell('scale', '2025-11-18', '10:00', { of: site.bench, ...benchScale('C-131', '2025-11-18') });
  story.tell('scale-check', '2025-11-19', '08:20', {
    scale: site.bench,
    standard: '500 g',
    read: '499.99 g',
    passed: 'yes',
    limit: '0.05 g',
  });
}

/** What was dug out of the mortar box was washed over the plate before it was scraped; the balls stood under water. */
function floorCleared(work: Work): MadeLot[] {
  const { truth } = work;
  const lots = work.cleanUp('2025-11-24', 'final', 24, 1, 'mortar', { waterG: 6 });
  truth.plates += truth.mortar - 22;
  truth.mortar = 22;
  return lots;
}

function scaledPlate(work: Work, day: string, metal: number, i: number): MadeLot[] {
  const { story, site } = work;
  const plate = i === 0 ? site.plate : site.lowerPlate;
  story.tell('plate-work', later(day, -1), '10:00', {
    plate,
    what: 'scaled',
    note: 'cold, wet, scraped by hand under a water film',
  });
  return work.cleanUp(day, 'final', metal, 1, 'scale', { plate });
}

function wetRun(work: Work, lots: readonly MadeLot[]): void {
  work.melt('2026-02-11', [work.ordinary('2026-02-09', lots, 0.009)]);
}

function underTheFloor({ story, site, truth }: Work): void {
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
    share: { value: 0.0004, u: 0.0002, basis: 'three grab samples' },
    started: '2026-03-18',
    due: '2026-09-18',
  });
  story.tell('transfer', '2026-03-30', '10:30', {
    way: 'out',
    what: 'waste',
    party: 'Licensed treatment works',
    vessel: site.drum,
    weight: story.weigh(site.platform, 18450, 2150, 0),
    share: { value: 0.0004, u: 0.0002, basis: 'three grab samples' },
    purpose: 'treatment',
    counts: 'disposal',
    document: 'consignment note 0007',
    carrier: 'Licensed carrier',
    seal: 'T 0091',
    theirs: {
      weight: { how: 'stated', mass: '18.4 kg', u: '20 g', by: 'their weighbridge ticket' },
      on: '2026-03-30',
      document: 'receipt 311',
    },
  });
}

function spilled({ story, site, truth }: Work): void {
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
  story.tell('note', '2026-06-03', '08:12', {
    text: 'Fourteen grams of the spill were not recovered; the floor there is to be read with the meter.',
    about: spill,
  });
}

function lastRun(work: Work, april: Run | null, lots: readonly MadeLot[]): void {
  const may = work.ordinary('2026-05-25', lots, 0.007);
  work.melt('2026-05-27', april ? [april, may] : [may]);
}

function lastJune({ story, site, truth }: Work): void {
  story.tell('waste', '2026-06-01', '14:30', {
    drum: site.drum,
    what: 'cloths and sweepings of the clearing',
    weight: story.weigh(site.bench, 640.2, 0),
    share: { value: 0.003, u: 0.0015, basis: 'two grab samples' },
    started: '2026-06-01',
    due: '2026-12-01',
  });
  truth.drum += 640.2 * 0.003;
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
  story.tell('check-due', '2026-06-04', '09:00', {
    what: 'health-surveillance',
    person: site.keeper,
    done: 'yes',
    next: '2026-12-04',
  });
}
