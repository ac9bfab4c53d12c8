/**
 * What became of the bars of the sample: each assayed by the site with proofs and duplicates, one indicated by its density only and one not yet assayed; one
 * settled with a buyer through an umpire, sent away and answered by an out-turn; where the others are kept. All invented.
 */
import { assayRead } from '../../../app/core/book/assays.ts';
import type { Reading } from '../../../app/core/book/current.ts';
import { divided, toText } from '../../../app/core/decimal.ts';
import { diceFrom } from './dice.ts';
import { later } from './story.ts';
import type { PouredBar, Work } from './work.ts';

/** What each bar truly holds, parts per thousand, in the order they were poured. */
export const holds = [
  { gold: 884.6, silver: 91.4 },
  { gold: 879.3, silver: 95.8 },
  { gold: 887.9, silver: 88.2 },
  { gold: 882.4, silver: 93.1 },
  { gold: 885.2, silver: 90.6 },
  { gold: 861.0, silver: 104.0 },
] as const;

/** What a cornet keeps of its silver beyond what the gold loses, and what cupelling takes of the silver, in milligrams. */
const gainMg = 0.072;
const silverLossMg = 0.46;
const refiner = 'Refiner';

export function bullion(work: Work): void {
  const { bars, story } = work;
  const by = story.by;
  story.by = work.site.assayer;
  const assays = bars.slice(0, 5).map((bar, i) => fireAssay(work, bar, i));
  const [first, , third, , fifth, sixth] = bars;
  if (third) silverTitrated(work, third);
  if (sixth) byDensity(work, sixth);
  if (first) settled(work, first, assays[0] ?? '');
  story.by = by;
  for (const [i, bar] of [bars[1], third, bars[3]].entries()) if (bar) kept(work, bar, i);
  if (first) handedOver(work, first);
  if (fifth) sent(work, fifth, '2026-05-29', 'despatch 2', 'B 17');
}

const mg = (value: number, places = 3): string => `${value.toFixed(places)} mg`;

/** Two samples with two proofs, as the balance showed them. */
function fireAssay({ story }: Work, bar: PouredBar, i: number): string {
  const { gold, silver } = holds[i] ?? holds[0];
  const dice = diceFrom(4100 + i);
  const replicates = [0, 1].map(() => {
    const sample = dice.between(249.6, 250.4);
    const cornet = (sample * gold) / 1000 + gainMg + dice.between(-0.025, 0.025);
    const bead = (sample * (gold + silver)) / 1000 - silverLossMg + dice.between(-0.04, 0.04);
    return { sample: mg(sample, 2), cornet: mg(cornet), bead: mg(bead, 2) };
  });
  const proofs = [0, 1].map(() => {
    const taken = dice.between(220.9, 221.8);
    const loss = silverLossMg + dice.between(-0.03, 0.03);
    return { taken: mg(taken, 2), found: mg(taken + gainMg + dice.between(-0.02, 0.02)), silverLoss: mg(loss, 2) };
  });
  return story.tell('assay', later(bar.day, 2), '10:30', {
    method: 'fire-assay',
    subject: 'bar',
    bar: bar.id,
    laboratory: 'the site',
    sampling: { method: 'dip', positions: 'molten, stirred, before pouring', u: '0.4' },
    limit: '0.5',
    balanceU: '0.01 mg',
    repeatability: '0.12',
    proofScatter: '0.10',
    replicates,
    proofs,
  });
}

function silverTitrated({ story }: Work, bar: PouredBar): void {
  const { silver } = holds[2];
  const dice = diceFrom(4200);
  const titrations = [0, 1].map(() => {
    const sample = dice.between(2480, 2520);
    // grams of silver to the equivalent: 107.8682
    const ml = (sample * (silver + dice.between(-0.3, 0.3))) / 1000 / (0.1002 * 107.8682);
    return { sample: mg(sample, 1), volumeMl: ml.toFixed(2), normality: '0.1002' };
  });
  story.tell('assay', later(bar.day, 3), '11:00', {
    method: 'titration',
    subject: 'bar',
    bar: bar.id,
    laboratory: 'the site',
    limit: '1.0',
    titrations,
  });
}

/** A small bar that nobody has cut yet: an indication only. */
function byDensity({ story }: Work, bar: PouredBar): void {
  const [waterDensity, airDensity, density] = [0.9982, 0.0012, 16.9];
  const water = bar.grams - (bar.grams * (waterDensity - airDensity)) / (density - airDensity);
  story.tell('assay', later(bar.day, 1), '15:20', {
    method: 'density',
    subject: 'bar',
    bar: bar.id,
    laboratory: 'the site',
    air: `${bar.grams.toFixed(2)} g`,
    water: `${water.toFixed(2)} g`,
    waterDensity: '0.9982',
    other: 'silver',
    note: 'Not sampled yet.',
  });
}

/** Our figure as it is exchanged: rounded once, to two places. */
function exchanged({ story }: Work, assay: string): string {
  const body = story.bodyOf('assay', assay);
  const gold = assayRead({ id: assay, kind: 'assay', body } as Reading<'assay'>).gold;
  if (!gold) throw new Error(`${assay} has no gold`);
  const { n, d } = gold.permille;
  return toText(divided({ digits: n, places: 0 }, { digits: d, places: 0 }, 2));
}

function certified({ story }: Work, bar: PouredBar, days: number, laboratory: string, gold: string, certificate: string): string {
  return story.tell('assay', later(bar.day, days), '12:00', {
    method: 'outside',
    subject: 'bar',
    bar: bar.id,
    laboratory,
    certificate,
    result: { unit: 'permille', gold, goldU: '0.3', k: 2 },
  });
}

/** Ours and theirs lie further apart than the contract allows: the umpire's figure decides by the contract's rule. */
function settled(work: Work, bar: PouredBar, ours: string): void {
  const { story } = work;
  const theirs = certified(work, bar, 12, 'Second laboratory', '883.9', 'L2 0148');
  const umpire = certified(work, bar, 18, 'Umpire laboratory', '884.4', 'U 0031');
  story.tell('settlement', later(bar.day, 20), '14:30', {
    bar: bar.id,
    site: exchanged(work, ours),
    siteAssay: ours,
    other: '883.9',
    otherAssay: theirs,
    limit: '0.4',
    rule: 'nearer-mean',
    umpire: '884.4',
    umpireAssay: umpire,
    contract: 'refining contract 3, clause 6',
    party: refiner,
  });
}

function sent({ story, site }: Work, bar: PouredBar, day: string, document: string, seal: string): string {
  return story.tell('transfer', day, '11:00', {
    way: 'out',
    what: 'bar',
    party: refiner,
    bar: bar.id,
    weight: story.weigh(site.bench, bar.grams, 0),
    purpose: 'refining, for the board’s account',
    document,
    carrier: 'Security carrier',
    seal,
  });
}

/** Sent away, and what the other side found: their weights, fineness, deductions and charges. */
function handedOver(work: Work, bar: PouredBar): void {
  const transfer = sent(work, bar, later(bar.day, 25), 'despatch 1', 'B 09');
  const received = bar.grams - 0.04;
  const melted = received - 0.35;
  const fine = (melted * 884.5) / 1000;
  const silver = (melted * 91.1) / 1000;
  const grams = (value: number) => `${value.toFixed(2)} g`;
  work.story.tell('out-turn', later(bar.day, 46), '09:40', {
    transfers: [transfer],
    party: refiner,
    received: { how: 'stated', mass: grams(received), u: '0.01 g', by: 'their receipt' },
    melted: { how: 'stated', mass: grams(melted), u: '0.01 g', by: 'their out-turn' },
    gold: { permille: '884.5', fine: grams(fine), fineU: '0.03 g', credited: grams(fine * 0.9975) },
    silver: { permille: '91.1', fine: grams(silver), credited: grams(silver * 0.95) },
    deductions: [
      { what: 'refining loss, 0.25 in 100', metal: 'gold', mass: grams(fine * 0.0025) },
      { what: 'refining loss, 5 in 100', metal: 'silver', mass: grams(silver * 0.05) },
    ],
    charges: [{ what: 'melting and assay', amount: '48.00', currency: 'EUR' }],
    document: 'out-turn 0412',
  });
}

function kept({ story, site }: Work, bar: PouredBar, i: number): void {
  story.tell('bar-kept', later(bar.day, 4), '16:10', {
    bar: bar.id,
    place: 'strong box, upper tray',
    seal: `S ${201 + i}`,
    present: [site.helper],
  });
}
