/**
 * The readings a run's figures come from, each as it was written down: gross, tare, scale and calibration, so that anyone can reckon the figures
 * again from this paper alone.
 */
import type { Content } from 'pdfmake/interfaces';
import type { Book } from '../../core/book/book.ts';
import type { Charge } from '../../core/book/charges.ts';
import type { Lot } from '../../core/book/lots.ts';
import type { State } from '../../core/book/registers.ts';
import type { Run } from '../../core/book/runs.ts';
import { type Weighed, weighedFrom } from '../../core/book/weights.ts';
import type { Body } from '../../core/kinds/index.ts';
import type { Weight } from '../../core/shapes.ts';
import { dayText } from '../../words/dates.ts';
import { marked } from '../../words/notation.ts';
import { runSheet as words } from '../../words/papers.ts';
import { gramsText, uText } from '../amounts.ts';
import { aside, ledger, part, type Row, section } from '../ledger.ts';
import { thingName } from '../names.ts';
import { wholeLot } from './concerns.ts';
import { firingsOf } from './firings.ts';

export interface RunReading {
  readonly what: string;
  readonly at: string;
  readonly weighed: Weighed;
}

function asRead(book: Book, { weighed: { as }, at }: RunReading): string {
  if (as.how === 'volume') return words.volume(as.volume, String(as.temperatureC));
  if (as.how === 'stated')
    return [
      words.stated(as.mass),
      ...(as.by === undefined ? [] : [words.statedBy(as.by)]),
      ...(as.u === undefined ? [] : [words.statedU(as.u)]),
    ].join(', ');
  const tare = as.tare === undefined ? [] : [words.tare(as.tare)];
  const vessel = as.vessel === undefined ? [] : [words.ofVessel(thingName(book, 'vessel', as.vessel, at))];
  return [words.gross(as.gross), ...tare, ...vessel].join(', ');
}

/** The reading on a lot's label. A rest that was never weighed has none. */
function labelOf(book: Book, lot: Lot): RunReading[] {
  const whole = wholeLot(book, lot);
  const made = book.current.byId.get(whole.madeBy);
  if (made?.kind !== 'clean-up') return [];
  const lots = (made.body as Body<'clean-up'>).lots;
  const i = lots.findIndex(({ key }) => whole.id === `${made.id}/${key}`);
  const written = lots[i];
  if (!written) return [];
  const where = { entry: made.id, path: `lots[${i}].weight`, at: made.happened };
  return [{ what: words.labelOf(whole.label), at: made.happened, weighed: weighedFrom(written.weight, where, book.registers) }];
}

function ofCharge(book: Book, { id, reading, rows, others }: Charge): RunReading[] {
  const at = reading.happened;
  const read = (what: string, weight: Weight, path: string): RunReading => ({
    what,
    at,
    weighed: weighedFrom(weight, { entry: id, path, at }, book.registers),
  });
  return [
    ...rows.flatMap((row, i) => {
      const written = reading.body.rows[i];
      const label = row.lot ? labelOf(book, row.lot) : [];
      if (!written || written.take === 'not-found') return label;
      const charged = read(words.chargedOf(row.label), written.weight, `rows[${i}].weight`);
      const rest =
        written.take === 'part' && written.rest ? [read(words.restOf(row.label), written.rest, `rows[${i}].rest`)] : [];
      return [...label, charged, ...rest];
    }),
    ...others.map((other) => ({ what: other.label, at, weighed: other.weighed })),
  ];
}

/** Every weighing of the run, in the order of the work. */
export function readingsOf(book: Book, run: Run): RunReading[] {
  const firings = firingsOf(run);
  const number = (charge: string) => run.charges.findIndex(({ id }) => id === charge) + 1;
  return [
    ...run.charges.flatMap((charge) => ofCharge(book, charge)),
    ...firings.flatMap(({ reading, sponges, mercury, water }, i) => {
      const n = firings.length > 1 ? words.afterFiring(i + 1) : '';
      const at = reading.happened;
      return [
        ...[...sponges].map(([charge, weighed]) => ({
          what: words.spongeOf(`${n}${run.together ? words.whichCharge(number(charge)) : ''}`),
          at,
          weighed,
        })),
        ...(mercury ? [{ what: words.mercuryOf(n), at, weighed: mercury }] : []),
        ...(water ? [{ what: words.waterOf(n), at, weighed: water }] : []),
      ];
    }),
  ];
}

type Scale = State<'scale'>;

/** Each state of a scale that any of the readings was read under, once. */
export const scalesOf = (readings: readonly RunReading[]): Scale[] => [
  ...new Map(readings.flatMap(({ weighed: { scale } }) => (scale ? [[scale.entry, scale] as const] : []))).values(),
];

function calibration({ body: { certificate, accuracy } }: Scale): string {
  if (!certificate) return accuracy ? words.accuracy(accuracy.class, accuracy.e) : words.uncertified;
  const { number, U, k, at, on, due } = certificate;
  return [
    words.certificate(number === undefined ? '' : ` ${number}`, U, String(k ?? 2), at),
    ...(on === undefined ? [] : [words.certificateOn(dayText(on))]),
    ...(due === undefined ? [] : [words.certificateDue(dayText(due))]),
  ].join(', ');
}

function scaleTable(scales: readonly Scale[]): Content[] {
  if (scales.length === 0) return [];
  const rows = scales.map(
    (scale, i): Row => ({ cells: [`${i + 1}`, scale.body.label, marked(scale.body.d), calibration(scale)] }),
  );
  return [
    part(words.scales),
    ...ledger(
      [
        { head: words.scaleN, share: 7 },
        { head: words.scale, share: 28 },
        { head: words.step, share: 12 },
        { head: words.calibration, share: 53 },
      ],
      rows,
    ),
  ];
}

function scaleOf(scales: readonly Scale[], { weighed: { as, scale } }: RunReading): string {
  if (as.how !== 'scale') return words.noScaleNeeded;
  return scale ? String(scales.findIndex(({ entry }) => entry === scale.entry) + 1) : words.noScale;
}

export function readingsTable(book: Book, readings: readonly RunReading[]): Content[] {
  const scales = scalesOf(readings);
  return [
    section(words.readings),
    aside(words.readingsNote),
    ...ledger(
      [
        { head: words.reading, share: 29 },
        { head: words.asRead, share: 36 },
        { head: words.scaleN, share: 10 },
        { head: words.net, share: 13, amount: true },
        { head: words.uShort, share: 12, amount: true },
      ],
      readings.map((reading) => ({
        cells: [
          reading.what,
          asRead(book, reading),
          scaleOf(scales, reading),
          gramsText(reading.weighed.grams),
          uText(reading.weighed.net, reading.weighed.uKnown),
        ],
      })),
    ),
    ...scaleTable(scales),
  ];
}
