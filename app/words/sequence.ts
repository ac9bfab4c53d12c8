/**
 * Runs of periods in words: what the test looks at, what a signal means and what it does not mean, and the drawing's parts as window and paper hand
 * them to the layout. A signal never says where mercury went, and its absence never says that none was lost.
 */
import type { CountedPeriod } from '../core/book/periods.ts';
import { type PeriodInRow, referenceK } from '../core/book/periods-in-row.ts';
import type { SequenceBasis, SequenceTest } from '../core/book/sequence.ts';
import type { NoUsual, RateBasis } from '../core/book/usual.ts';
import { decimalFromNumber } from '../core/decimal.ts';
import { type Measured, uOf } from '../core/measured.ts';
import { dayText } from './dates.ts';
import { decimalText, gramsOf, inMassUnits, massHead, percentText, withU } from './figures.ts';

const plain = (value: number, places = 2): string => decimalText(decimalFromNumber(value), places);

/** "5 %": as many places as it was chosen with. */
export const alarmText = (falseAlarm: number): string =>
  percentText(falseAlarm, falseAlarm * 100 === Math.round(falseAlarm * 100) ? 0 : 2);

const figure = (value: Measured): string => {
  const u = uOf(value);
  return withU(gramsOf(Math.round(value.ug)), u < 0.1 ? null : u / 1e6);
};

const unbroken = (text: string): string => text.replaceAll(' ', '\u00a0');

const rateUnits: Readonly<Record<RateBasis, string>> = { tonne: 'a tonne', run: 'a run', month: 'a month' };
const noUsual: Readonly<Record<NoUsual['why'], string>> = {
  'no-start': 'none: it is the first',
  'too-few-periods': 'none: too few before it',
  'nothing-to-count-by': 'none: no ore, run or time to count by',
};

/** A period by its two counts. */
export const countedText = ({ opening, closing }: Pick<CountedPeriod, 'opening' | 'closing'>): string =>
  `${opening ? dayText(opening.happened) : 'start of the book'} to ${dayText(closing.happened)}`;

/** The usual rate before a period; or why there is none. */
export const usualRateText = ({ usual }: Pick<PeriodInRow, 'usual'>): string =>
  'why' in usual ? noUsual[usual.why] : `${figure(usual.usual.rate)} ${rateUnits[usual.usual.basis]}`;

/** The periods it is from, each by the count at its end. */
export const usualFromText = ({ usual }: Pick<PeriodInRow, 'usual'>): string =>
  'why' in usual ? '' : usual.usual.periods.map(({ closing }) => dayText(closing.happened)).join(', ');

/** Both in one. */
export const usualText = (row: Pick<PeriodInRow, 'usual'>): string =>
  'why' in row.usual ? usualRateText(row) : `${usualRateText(row)}, from the periods that ended ${usualFromText(row)}`;

export interface SequenceCells {
  readonly period: string;
  readonly opening: string;
  readonly closing: string;
  readonly difference: string;
  readonly z: string;
  readonly cumulative: string;
  readonly perTonne: string;
  readonly usual: string;
  readonly usualFrom: string;
  readonly beyond: string;
  readonly y: string;
  readonly page: string;
}

/** A period of the row as cells; `i` counts from 0. */
export function sequenceCells(row: PeriodInRow, test: SequenceTest | null, i: number): SequenceCells {
  const { counted, difference, cumulative, perTonne, usual } = row;
  const u = uOf(difference);
  const page = test?.page[i];
  return {
    period: countedText(counted),
    opening: counted.opening ? unbroken(dayText(counted.opening.happened)) : '',
    closing: unbroken(dayText(counted.closing.happened)),
    difference: unbroken(figure(difference)),
    z: u > 0 ? plain(difference.ug / u) : 'not known',
    cumulative: unbroken(figure(cumulative)),
    perTonne: perTonne ? withU(decimalFromNumber(perTonne.g), perTonne.uG) : 'no ore',
    usual: usualRateText(row),
    usualFrom: usualFromText(row),
    beyond: 'why' in usual ? '' : figure(usual.excess),
    y: plain(test?.y[i] ?? 0),
    page: test && page !== undefined ? `${plain(page)}${page > test.threshold ? ` (${sequenceWords.over})` : ''}` : 'not tested',
  };
}

/** The panels of the drawing, and its columns with their values in words. Amounts in the unit of masses, k = 2. */
export function drawnTrend(rows: readonly PeriodInRow[], test: SequenceTest | null) {
  const inUnit = (value: Measured) => ({ value: inMassUnits(value.ug / 1e6), half: inMassUnits((2 * uOf(value)) / 1e6) });
  return {
    panels: [
      {
        id: 'difference',
        name: sequenceWords.panels.difference,
        form: 'points' as const,
        values: rows.map((r) => inUnit(r.difference)),
      },
      {
        id: 'cumulative',
        name: sequenceWords.panels.cumulative,
        form: 'line' as const,
        values: rows.map((r) => inUnit(r.cumulative)),
      },
      ...(test
        ? [
            {
              id: 'page',
              name: sequenceWords.panels.page,
              form: 'bars' as const,
              values: test.page.map((value) => ({ value, half: 0 })),
              threshold: {
                value: test.threshold,
                name: sequenceWords.threshold(plain(test.threshold), alarmText(test.falseAlarm)),
              },
              ...(test.signalAt === null ? {} : { mark: { column: test.signalAt - 1, name: sequenceWords.signal } }),
            },
          ]
        : []),
    ],
    columns: rows.map((row, i) => {
      const cells = sequenceCells(row, test, i);
      return {
        id: row.counted.key,
        name: dayText(row.counted.closing.happened),
        text: sequenceWords.told(cells, test !== null && test.signalAt === i + 1),
      };
    }),
  };
}

/** What the test says in one sentence. */
export function verdictText(rows: readonly PeriodInRow[], test: SequenceTest | null): string {
  if (!test) return sequenceWords.noTest;
  if (test.signalAt === null) return sequenceWords.noSignal(rows.length);
  const day = dayText(rows[test.signalAt - 1]?.counted.closing.happened ?? '');
  const alone = test.z.slice(0, test.signalAt).some((z) => Math.abs(z) > 2);
  return `${sequenceWords.signalIn(day)} ${alone ? sequenceWords.alsoAlone : sequenceWords.noneAlone}`;
}

const bases: Readonly<Record<SequenceBasis, string>> = {
  'as-known-today': 'As known today',
  'as-closed': 'As closed',
};

export const sequenceWords = {
  title: 'Runs of periods',
  link: 'Runs of periods: small losses that add up',
  back: 'To the room Mercury',
  intro:
    'Each period lies between two stock-takes of the whole. A loss too small for one period to show adds up over several; here they are looked at together, with the errors they share.',
  few: (n: number) =>
    n === 0
      ? 'There is no period between two stock-takes of the whole yet. Count everything, and count everything again later: then the first one is there.'
      : 'One period alone is no run. Its own account tells what it shows; the next stock-take of the whole makes the second.',
  toCount: 'To the stock-take',
  how: 'How it is tested',
  basis: 'What each period is taken as',
  bases,
  basisHints: {
    'as-known-today': 'every correction counts in the period it belongs to',
    'as-closed': 'each as its closing knew it; what came later counts in the period it came in',
  } satisfies Readonly<Record<SequenceBasis, string>>,
  never: 'The two are never mixed: that would count a correction twice. Over all periods together they come to the same.',
  alarmHint:
    'That is the chance, over exactly these periods, of a signal though nothing was lost. It is set before the figures are looked at.',
  toFigures: 'Set the figures of the site',
  chosen: (alarm: string, n: number, basis: SequenceBasis) =>
    `Tested: ${n} periods, ${bases[basis].toLowerCase()}, false alarm ${alarm}, Page’s test for losses with k = ${referenceK}.`,
  says: 'What it says',
  signalIn: (day: string) => `Signal in the period to ${day}: several differences point the same way, to a loss.`,
  noneAlone: 'No single period up to there shows it.',
  alsoAlone: 'At least one of these periods shows a difference by itself as well.',
  noSignal: (n: number) =>
    `No signal over these ${n} periods. That is not the same as no loss: one smaller than this test can tell may be there.`,
  noTest:
    'Not tested: the errors of these periods are not known, or one follows from the others, so nothing can be held against them.',
  means: 'What a signal means, and what it does not',
  meansList: [
    'It means that differences like these, all one way, come up by the errors of weighing and estimating alone in no more than the chosen share of such runs.',
    'It does not say which period it went in: the sum has crossed its threshold there, and may have begun to grow before.',
    'It does not say where mercury went, or that anybody took it. An estimate that always errs the same way, a tare never checked, a scale that drifts, an entry not written up do the same.',
    'It is held against nothing, not against what is usual here. What is usual stands in the table beside it; usual is not acceptable.',
    'It is no measure of the air. Read the air with a meter.',
  ],
  next: 'What to weigh next',
  open: 'Open it',
  nextFirst: 'Look at the largest errors of the running total first: what cuts them makes the next period tell more.',
  chart: 'Difference, running total and test, period by period',
  panels: {
    get difference(): string {
      return `${massHead('Not accounted for')} (± U, k = 2)`;
    },
    get cumulative(): string {
      return `${massHead('Running total')} (± U, k = 2)`;
    },
    page: 'Page’s sum, in standard deviations',
  },
  threshold: (value: string, alarm: string) => `threshold ${value} (false alarm ${alarm})`,
  signal: 'signal',
  over: 'above',
  told: (cells: SequenceCells, signal: boolean) =>
    `${cells.period}: not accounted for ${cells.difference}, z ${cells.z}; running total ${cells.cumulative}; Page’s sum ${cells.page}${signal ? ', signal' : ''}.`,
  say: 'Point at a period, or go through them with Tab or the arrow keys, to read it; open it for its account.',
  legend: [
    'Upright strokes and the shaded band: ± U (k = 2).',
    'Hatched bar: above the threshold. Diamond: the first one, the signal.',
  ],
  table: 'Counted periods',
  usualTable: 'Beside what is usual here',
  usualNote: 'Usual is not acceptable',
  columns: {
    opening: 'Count at its start',
    closing: 'Count at its end',
    difference: 'Not accounted for ± U (k = 2)',
    z: 'z',
    cumulative: 'Running total ± U',
    perTonne: 'A tonne',
    usual: 'Usual before it',
    usualFrom: 'From the periods that ended',
    beyond: 'Beyond usual ± U',
    y: 'Made independent',
    page: 'Page’s sum',
  },
  method:
    'Neighbouring periods share a count: what the one has too much, the next has too little. They are made independent by the errors they share (Cholesky) and then added up: Page, Biometrika 41 (1954).',
  copySvg: 'Copy the drawing (SVG)',
  copyCsv: 'Copy the table (CSV)',
  csvHead: [
    'opening count',
    'closing count',
    'not accounted for g',
    'u g (k = 1)',
    'z',
    'running total g',
    'running total u g (k = 1)',
    'per tonne g',
    'usual before it',
    'beyond usual g',
    'independent y',
    'page sum',
    'threshold',
    'false alarm',
    'basis',
  ],
  alarmFrom: (alarm: string, from: 'closing' | 'site' | 'start') =>
    from === 'closing'
      ? `False alarm ${alarm}, chosen with the last closing.`
      : from === 'site'
        ? `False alarm ${alarm}, as this site set it.`
        : `False alarm ${alarm}, the starting value of this program.`,
} as const;
