/**
 * Texts of the mercury account on paper. What is not accounted for is called that and nothing else; no sentence here tells what became of it, and
 * none takes the balance for a measure of the air.
 */

import type { PlaceKind } from '../core/book/places.ts';
import type { RateBasis } from '../core/book/usual.ts';
import { massHead, massUnit } from './figures.ts';
import { marked } from './notation.ts';

export const accountPaper = {
  name: 'Mercury account',
  subject: (from: string, to: string) => `${from} to ${to}`,
  whole: 'The account of the whole book, from its first entry to its last',
  period: 'The account of a period, its first and last day inside',
  counted: (from: string | null, to: string) =>
    `The account of a counted period: ${from === null ? 'from the beginning of the book' : `after the count of ${from}`}, up to and with the count of ${to}`,

  answer: 'The answer',
  answerText: (level: string, text: string) => `${level}. ${text}`,
  nothing: 'Nothing on the book moved any mercury up to the end of this period.',

  account: 'The account',
  item: 'Item',
  get grams(): string {
    return massUnit();
  },
  get U(): string {
    return massHead('± U (k = 2)');
  },
  opening: 'Opening stock',
  receipts: 'Receipts',
  invoiced: 'of that, flasks opened: invoice against weighed',
  found: 'Found, on no book before',
  removals: 'less removals: handed over to others',
  released: 'less spilled and not gathered up, as weighed',
  closing: 'less closing stock',
  unaccounted: 'Not accounted for',
  get places(): string {
    const finest = massUnit() === 'g' ? 'a hundredth of a gram' : 'a ten-thousandth of a troy ounce';
    return `All amounts are shown to ${finest} so that they can be added up again; how sure each of them is stands beside it. Issues to the circuit and returns from it lie inside this account and do not enter it.`;
  },

  says: 'What it says',
  withU: 'Not accounted for, with its uncertainty (k = 2)',
  z: 'Against its standard uncertainty',
  zText: (z: string) => `|z| = ${z}`,
  noZ: 'nothing in it has a known uncertainty',
  lost: 'Lost in all, with what was spilled and not gathered up',
  detectable: 'Detectable loss',
  detectableText: (g: string) => `${g}: a smaller one can go unseen (5\u00a0% false alarm, 95\u00a0% found)`,
  ore: 'Ore put through',
  oreText: (t: string) => `${t}\u00a0t`,
  noOre: 'none on the book for this period',
  perTonne: 'Not accounted for, per tonne',
  perTonneText: (g: string) => `${g} a tonne`,
  levels: {
    none: 'At this |z|, up to 2, the figures do not show a loss. They do not show that there was none: one below the detectable loss can hide in them.',
    warn: 'At this |z|, above 2, the figures are hard to explain by the weighings alone. Look for an entry not written up, a unit, a swapped tare; weigh the largest places again.',
    act: 'At this |z|, above 3, the weighings do not explain the difference. Something is lost, gained, or not written down: stop, find out which, and tell the safety officer.',
  },
  more: 'The sign is below nothing: more is there or went out than the book brought in. Look for a receipt, a find or a return that was not written up.',
  noLevel: 'Without a known uncertainty nobody can say whether this is a loss or the scales.',
  usualRate: 'Usual here',
  usualText: (rate: string, per: RateBasis, periods: readonly string[]) =>
    `${rate} ${per === 'tonne' ? 'a tonne of ore' : per === 'run' ? 'a run' : 'a month'}, from ${periods.length} counted periods: ${periods.join('; ')}`,
  expected: 'As usual it would be',
  beyond: 'Beyond that',
  zUsual: 'Beyond it, against its standard uncertainty',
  usual: 'Two questions, always both: a loss that is usual here is a loss. Usual is not acceptable.',
  notVapour:
    'Not accounted for means just that. It may be in plates, floor, tailings, slag, a pipe, a wrong entry, somebody’s hands or the air; the account cannot tell which, and no part of it may be put down to any one of them without a weighing.',
  get notAir(): string {
    return `No balance measures the air: ${marked('2.5')}\u00a0mg of mercury, far below these weighings, brings 100\u00a0m³ of air to ${marked('0.025')}\u00a0mg/m³. An account that closes says nothing about what was breathed. Only a vapour reading tells.`;
  },

  stocks: 'Closing stock by place',
  place: 'Place',
  basis: 'Its last movement',
  total: 'Closing stock',
  noStocks: 'By the book there is no mercury in any place at the end of this period.',
  stocksNote:
    'What was last put in or taken out of a place tells how its amount is known. Places with less than 5 mg are left off.',

  paths: 'Ways it was lost',
  path: 'Way',
  get posted(): string {
    return massHead('Posted');
  },
  get low(): string {
    return massHead('At least');
  },
  get high(): string {
    return massHead('At most');
  },
  pathsNote:
    'Bounds, not findings: what the entries post, and between what it can lie. They may not be added up, and the line “difference found by a count” is what counts of single places left over.',

  adjustments: 'Adjustments from closed periods',
  closingHead: 'Closing',

  doubts: 'What makes the doubt, and what would cut it',
  doubtOf: 'Source',
  doubtShare: 'Of the variance',
  doubtCut: 'What would cut it',
  doubtsNote:
    'Shares of one variance. What weighings have in common, as one scale, was added with its sign before it was squared; smaller sources are left off.',

  movements: 'Movements of the period by kind',
  written: 'Written in',
  from: 'From',
  to: 'To',
  times: 'Times',
  noMovements: 'No mercury moved in this period.',
  movementsNote: 'Every movement with its day and entry is in the list of movements that the program writes out for checking.',
} as const;

/** The kind of a place, where many are summed. */
export const placeKindTexts: Readonly<Record<Exclude<PlaceKind, 'loss'>, string>> = {
  outside: 'outside this book',
  found: 'on no book before',
  vessel: 'vessels',
  circuit: 'circuit',
  lot: 'balls and lots',
  charge: 'retort charges',
  sponge: 'sponge',
  residue: 'residues',
  work: 'cleaning and squeezing',
  condenser: 'condenser and pipe',
};
