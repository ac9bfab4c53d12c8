/**
 * The readings of a run held against one another, in words: what agrees, which reading is most at odds, and what could have been meant. Nothing here
 * says that a reading is wrong: the sheet and the scale say that, and a correction is a new entry.
 */

import type { LeftOut, Sum, Term, TermKind } from '../core/book/reconciling/readings.ts';
import type { NotReconciled, Reconciling, Swap } from '../core/book/reconciling.ts';
import { decimalFromNumber, minus } from '../core/decimal.ts';
import { uOf } from '../core/measured.ts';
import { massFigure, massHead, placesFor, withU } from './figures.ts';
import { marked } from './notation.ts';

const kinds: Readonly<Record<TermKind, (of: string) => string>> = {
  label: (of) => `${of}, label`,
  charged: (of) => `${of}, weighed at charging`,
  part: (of) => `${of}, the part taken`,
  rest: (of) => `${of}, the rest`,
  other: (of) => `${of}, put in besides`,
  sponge: (of) => `Sponge${of === '' ? '' : `, ${of}`}`,
  melt: (of) => `Sponge at the melt${of === '' ? '' : `, ${of}`}`,
  mercury: (of) => `Mercury caught${of === '' ? '' : `, ${of}`}`,
  water: (of) => `Water${of === '' ? '' : `, ${of}`}`,
  changed: (of) => `${of === '' ? 'Sponge' : of}: what may have changed between two weighings`,
  stayed: () => 'What may have stayed in the retort, or been lost there',
};

/** A reading by name; `nameOf` names a charge or firing, empty where there is only one. */
export const termText = ({ kind, of }: Pick<Term, 'kind' | 'of'>, nameOf: (id: string) => string): string =>
  kinds[kind](
    kind === 'sponge' || kind === 'melt' || kind === 'mercury' || kind === 'water' || kind === 'changed' ? nameOf(of) : of,
  );

/** As it was written down: "gross 251.4 g, tare 85.32 g". */
export function readText({ as }: Pick<Term, 'as'>): string {
  if (!as) return reconcileWords.noReading;
  if (as.how === 'volume') return marked(as.volume);
  if (as.how === 'stated') return marked(as.mass);
  return marked(as.tare === undefined ? as.gross : `${as.gross}, ${reconcileWords.tare} ${as.tare}`);
}

const sums: Readonly<Record<Sum['kind'], (of: string) => string>> = {
  lot: (of) => `${of}: label against its weight at charging`,
  split: (of) => `${of}: the whole against the part and the rest`,
  sponge: (of) => `Sponge against its weight at the melt${of === '' ? '' : `, ${of}`}`,
  run: () => 'What went into the retort against what came out, with the run’s own band for what stays or is lost',
};

export const sumText = ({ kind, of }: Pick<Sum, 'kind' | 'of'>, nameOf: (id: string) => string): string =>
  sums[kind](kind === 'sponge' ? nameOf(of) : of);

const left: Readonly<Record<LeftOut['why'], string>> = {
  'u-not-known': 'the uncertainty of a weighing in it is not known',
  'was-wet': 'the lot was wet when it was labelled and dries',
  'water-not-weighed': 'water was not weighed, so what is missing may be water',
};

export const leftOutText = ({ kind, of, why }: LeftOut, nameOf: (id: string) => string): string =>
  `${sumText({ kind, of }, nameOf)}: ${left[why]}.`;

export interface ReconcileCells {
  readonly name: string;
  readonly read: string;
  readonly raw: string;
  readonly adjusted: string;
  readonly adjustment: string;
  readonly statistic: string;
}

/** One reading as cells; the adjusted ones are empty where the readings do not agree. */
export function reconcileCells({ terms, result }: Reconciling, i: number, nameOf: (id: string) => string): ReconcileCells {
  const term = terms[i];
  if (!term) throw new Error('a reading that is asked for is there');
  const uG = uOf(term.net) / 1e6;
  const adjusted = result.adjusted?.[i];
  const adjustedUG = result.adjustedU?.[i];
  const places = placesFor(2 * (adjustedUG ?? uG));
  const statistic = result.statistics[i];
  return {
    name: termText(term, nameOf),
    read: readText(term),
    raw: withU(term.grams, uG),
    adjusted:
      adjusted === undefined || adjustedUG === undefined
        ? ''
        : withU(decimalFromNumber(Number(adjusted.toFixed(7))), adjustedUG > 1e-9 ? adjustedUG : null),
    adjustment:
      adjusted === undefined ? '' : massFigure(minus(decimalFromNumber(Number(adjusted.toFixed(7))), term.grams), places, true),
    statistic: statistic === null || statistic === undefined ? '' : marked(statistic.toFixed(2)),
  };
}

/** What the test says, in a sentence; never that a reading is wrong. */
export function agreementText(got: Reconciling | NotReconciled, nameOf: (id: string) => string): string {
  if ('none' in got) return got.none === 'nothing' ? reconcileWords.nothing : reconcileWords.unresolved;
  if (got.result.passes) return reconcileWords.agree(got.sums.length);
  const names = got.suspects.flatMap((i) => (got.terms[i] ? [termText(got.terms[i], nameOf)] : []));
  return names.length === 1 ? reconcileWords.oneOff(names[0] ?? '') : reconcileWords.someOff(names);
}

/** The question that a swap is. */
export const swapText = ({ terms }: Reconciling, swap: Swap, nameOf: (id: string) => string): string => {
  const term = terms[swap.term];
  return reconcileWords.swap(term ? termText(term, nameOf) : '', swap.part, swap.was, swap.wouldBe);
};

/** How far the readings are from agreeing: the global statistic and its critical value. */
export const globalText = ({ result }: Reconciling): string =>
  reconcileWords.global(result.global.toFixed(2), result.critical.toFixed(2), result.freedom);

export const reconcileWords = {
  title: 'Do the readings agree?',
  link: 'The readings held against one another',
  back: 'To the run',
  intro:
    'Some things of a run are read more than once: a lot at its label and at charging, a sponge at the firing and at the melt, all that went in and all that came out. Here they are held against one another. Nothing read is ever changed by it.',
  nothing: 'Nothing to check against: no figure of this run was read in two ways yet.',
  unresolved: 'The readings cannot be held against one another: their errors cannot be told apart.',
  agree: (n: number) =>
    n === 1
      ? 'The readings agree within their errors in the one sum that can be asked.'
      : `The readings agree within their errors in all ${n} sums that can be asked.`,
  oneOff: (name: string) => `The readings do not agree. Most at odds with the others: ${name}.`,
  someOff: (names: readonly string[]) =>
    names.length === 0
      ? 'The readings do not agree, and no one of them stands out.'
      : `The readings do not agree. Most at odds, and not to be told apart from here: ${names.join('; ')}.`,
  orElse: 'Or nothing was read wrong, and it is real:',
  stayedReal: 'mercury or water stayed in the retort, or was lost there. What the numbers of the run say comes first.',
  changedReal: (of: string) =>
    `${of === '' ? 'The sponge' : of} truly changed between the two weighings: it dried, or some of it went.`,
  openIt:
    'Look at the sheet and weigh again what is still there. If the sheet says otherwise, correct it by a correction; the reading stays on the record.',
  entry: 'Open the entry',
  correct: 'Correct this reading',
  ask: 'Could two figures have changed places?',
  askNote: 'A question for whoever has the sheet. Nothing was changed.',
  swap: (name: string, part: Swap['part'], was: string, wouldBe: string) =>
    `${name}${part === 'tare' ? ', tare' : ''}: was ${was} meant to be ${wouldBe}? Then all readings would agree.`,
  noSwap: 'No swap of two neighbouring figures in them would make all readings agree.',
  asked: 'What was held against what',
  leftOut: 'What could not be asked',
  readings: 'The readings',
  raw: 'As read',
  adjustedNote:
    'Adjusted figures are no readings: they say what all readings together say of each. Sheets and the account use what was read.',
  notAdjusted: 'No adjusted figures are given where the readings do not agree.',
  global: (value: string, critical: string, freedom: number) =>
    `Of all together: ${marked(value)}; up to ${marked(critical)} comes up by the errors alone in 95 of 100 (chi-square, ${freedom} ${freedom === 1 ? 'degree' : 'degrees'} of freedom).`,
  allowance:
    'A lot may change by half a per cent between two weighings and needs no look (common practice). What stays in the retort has the run’s own band.',
  method:
    'Weighted least squares with the errors the readings share; global test and maximum-power test (Mah and Tamhane 1982; Crowe 1992).',
  noReading: 'no reading: allowed for',
  tare: 'tare',
  columns: {
    name: 'What',
    read: 'As written down',
    raw: 'As read ± U (k = 2)',
    adjusted: 'Adjusted ± U (k = 2)',
    get adjustment(): string {
      return massHead('Adjustment');
    },
    statistic: 'At odds',
  },
} as const;
