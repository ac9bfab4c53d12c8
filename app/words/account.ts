/**
 * Words of the mercury account. What is not accounted for is never called evaporated, and the account never speaks of the air: a weight that no
 * scale here can show is enough to foul a room.
 */

import type { Level } from '../core/balance.ts';
import type { PlaceKind } from '../core/book/places.ts';
import type { NoUsual } from '../core/book/usual.ts';
import { dayText, momentText } from './dates.ts';
import { marked } from './notation.ts';

/** How an amount of mercury is known. */
export const basisTexts = {
  weighed: 'weighed',
  stated: 'stated by another',
  estimated: 'estimated',
  trued: 'from its own run',
  allotted: 'allotted from a run of several',
  sibling: 'as the lot it was split from',
  difference: 'by difference',
  counted: 'by a count',
  'invoice-against-weighed': 'invoice against weighed',
} as const;

/** What kind of place stock stands in. */
export const placeKindTexts: Readonly<Record<PlaceKind, string>> = {
  vessel: 'vessel',
  circuit: 'in circuit',
  lot: 'ball or lot',
  charge: 'in a retort',
  sponge: 'sponge',
  residue: 'residue',
  work: 'being cleaned',
  condenser: 'condenser and pipe',
  loss: 'lost',
  outside: 'outside this book',
  found: 'found',
};

const lossTexts: Readonly<Record<Level, string>> = {
  none: 'No loss can be told from the errors of the weighings and estimates. That is not the same as no loss.',
  warn: 'More is missing, or more was found, than the errors usually make: look for it, and weigh what was only estimated.',
  act: 'More is missing, or more was found, than the errors explain: find out why before mercury is used again.',
};

const excessTexts: Readonly<Record<Level, string>> = {
  none: 'It cannot be told apart from this site’s usual rate. Usual is not acceptable.',
  warn: 'It lies further from this site’s usual rate than the errors usually make. Usual is not acceptable.',
  act: 'It lies further from this site’s usual rate than the errors explain. Usual is not acceptable.',
};

const edge = (at: string): string => (at.length > 10 ? momentText(at) : dayText(at));

/** A period whose ends are told to the minute, as those of counts are. */
const betweenMoments = (from: string | null, to: string | null): string =>
  from === null
    ? `From the first entry to ${edge(to ?? '')}`
    : to === null
      ? `From ${edge(from)} to the last entry`
      : `From ${edge(from)} to ${edge(to)}`;

export const accountWords = {
  title: 'Mercury account',
  period: (from: string | null, to: string | null): string =>
    (from?.length ?? 0) > 10 || (to?.length ?? 0) > 10
      ? betweenMoments(from, to)
      : from === null && to === null
        ? 'From the first entry to the last'
        : from === null
          ? `From the first entry to the end of ${dayText(to ?? '')}`
          : to === null
            ? `From the start of ${dayText(from)} to the last entry`
            : from === to
              ? `On ${dayText(from)}`
              : `From the start of ${dayText(from)} to the end of ${dayText(to)}`,
  rows: {
    opening: 'Opening stock',
    receipts: 'Received',
    invoiced: 'of that, flasks opened: invoice against weighed',
    found: 'Found, on no book before',
    removals: 'Handed over',
    released: 'Spilled and not gathered up, weighed',
    closing: 'Closing stock',
    unaccounted: 'Not accounted for',
  },
  sum: 'opening + received + found − handed over − spilled − closing = not accounted for',
  stocks: 'Closing stock by place',
  paths: 'Where the unaccounted went, as far as it can be told',
  between: (low: string, high: string) => (low === high ? low : `${low} to ${high}`),
  ore: (tonnes: string) => `Ore put through: ${tonnes} t`,
  perTonne: (grams: string) => `Not accounted for, per tonne of ore: ${grams}`,
  detectable: (grams: string) =>
    `The smallest loss this account would show with fair certainty: ${grams}. A smaller one may be there unseen.`,
  lost: (grams: string) => `Lost in all, with what was spilled and not gathered up: ${grams}`,
  z: (z: string) => `It lies ${z} standard uncertainties from nothing.`,
  isLoss: 'Is it a loss?',
  isUsual: 'Is it more than usual here?',
  /** The level of either question, in a few words. */
  levels: { none: 'cannot be told', warn: 'look for it', act: 'find out why' } satisfies Readonly<Record<Level, string>>,
  loss: lossTexts,
  excess: excessTexts,
  usual: (rate: string, per: 'tonne' | 'run' | 'month', periods: readonly (readonly [string, string])[]) =>
    `Usual here: ${rate} a ${per}${per === 'tonne' ? ' of ore' : ''}, from the counted periods ${periods.map(([from, to]) => `${dayText(from.slice(0, 10))} to ${dayText(to.slice(0, 10))}`).join('; ')}. Usual is not acceptable.`,
  beyondUsual: (expected: string, excess: string) => `As usual it would be ${expected}; beyond that lie ${excess}.`,
  noExcess: (why: string) => `Whether it is more than usual here is not computable: ${why}.`,
  doubts: 'What makes the uncertainty, the largest first, and what would cut it',
  /** What a counted period takes over from closed ones, line by line. */
  adjustments: 'Adjustments from closed periods',
  adjustmentsNote:
    'Put down in a closed period and found different since by later entries. The sum above is on today’s knowledge and holds none of them; with them it stands on the figures as they were closed.',
  adjustment: (to: string, version: number) => `To the closing of ${dayText(to)}, version ${version}`,
  onClosed: 'Not accounted for, on the figures as closed before',
  usualSays: 'Usual would not be acceptable either: the first question stands for itself.',
  moreReservations: (n: number) => `Show ${n} more`,
  asked: 'Asked: loss or disposal?',
  answerIt: 'Answer it',
  uncounted: {
    start:
      'No stock-take of the whole stands at the start: the opening stock is what the book says, and an earlier loss may lie in this period.',
    end: 'No stock-take of the whole stands at the end: the closing stock is what the book says, and a loss since the last count is not seen yet.',
  },
  notEvaporated:
    'Not accounted for means only that: mercury that no weighing or estimate here finds again. How it went, and whether it went, the account cannot tell.',
  get notTheAir() {
    return marked(
      'The account is no measure of the air. Two and a half milligrams, less than any scale here can show, bring a hundred cubic metres of air to 0.025 mg in each: read the air with a meter.',
    );
  },
  issuesInside: 'Issues and returns lie inside the site and stand in no sum.',
  noStanding: 'The site has stated no standing: what mercury it holds and what is done with it is not said.',
  reservations: 'Reservations, to be read first',
  entries: (named: readonly string[], of: number) =>
    named.length === of ? named.join(', ') : `${named.join(', ')} and ${of - named.length} more`,
  notUnderstood: (kind: string) =>
    `A newer program wrote an entry of the kind “${kind}”, which this one cannot read: its mercury is not in the account.`,
  endMarks: 'End marks',
  notComputable: (why: string) => `not computable: ${why}`,
} as const;

/** Why a figure of the account cannot be computed. */
export const accountReasons = {
  noOre: 'no ore is on the book for this period, so there is nothing to divide by',
  noUncertainty: 'no error of any weighing or estimate is known, so nothing can be held against it',
  noStart: 'the account begins with the book, so nothing came before it',
  tooFewPeriods: (earlier: number) =>
    `a usual rate needs two periods between stock-takes of the whole that ended before this one; there ${earlier === 1 ? 'is one' : 'are none'}`,
  nothingToCountBy: 'neither ore, runs nor time are there in this period and in two before it to count a rate by',
  noUsual: 'no usual rate of this site is given, so there is nothing to hold it against',
} as const;

/** Why no usual rate stands beside a period. */
export const noUsualText = ({ why, earlier }: NoUsual): string =>
  why === 'no-start'
    ? accountReasons.noStart
    : why === 'too-few-periods'
      ? accountReasons.tooFewPeriods(earlier)
      : accountReasons.nothingToCountBy;
