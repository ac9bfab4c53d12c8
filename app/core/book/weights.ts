/**
 * A weight of the record as a value: net in exact grams, its contributions by error source, and how it was come by, so that every figure opens
 * to its readings. A weight whose uncertainty nobody knows says so; it is never taken as exact.
 */
import { compare, type Decimal, minus, toNumber, toText, zero } from '../decimal.ts';
import { type Mass, massFromText, wholeMicrograms } from '../mass.ts';
import { uncertifiedG } from '../maximum-permissible-error.ts';
import { exactly, type Measured, measuredBy } from '../measured.ts';
import type { Weight } from '../shapes.ts';
import { dayOf } from '../time.ts';
import { byVolume, millilitresFromText } from '../volume.ts';
import { belowMinimum, minimumG, type ScaleData, scatterG, spanG } from '../weighing.ts';
import { type Flag, flag } from './flags.ts';
import { type Registers, type State, stateAt } from './registers.ts';

/** A weight, worked out. */
export interface Weighed {
  /** The weight as written down, and where. */
  readonly as: Weight;
  readonly where: Standpoint;
  /** Net in grams, exact (a volume: at its density, to the microgram). */
  readonly grams: Decimal;
  /** Net in whole micrograms with its contributions. */
  readonly net: Measured;
  /** Whether every contribution is known. */
  readonly uKnown: boolean;
  /** The scale's state it was read under. */
  readonly scale: State<'scale'> | null;
  readonly flags: readonly Flag[];
}

/** Where a weight stands: its entry, the path of its field there, and when it was read. */
export interface Standpoint {
  readonly entry: string;
  readonly path: string;
  readonly at: string;
}

function mass(text: string): Mass {
  const got = massFromText(text, '');
  if (!got.ok) throw new Error('a mass in the record has passed its shape');
  return got.value;
}

const grams = (text: string | undefined): Decimal | undefined => (text === undefined ? undefined : mass(text).grams);

/** A state of a scale, read once: what every weighing on it asks for. */
interface ScaleRead {
  readonly data: ScaleData;
  readonly maximum: Decimal;
  readonly tolerance: Decimal | undefined;
  /** A little above the smallest net it can weigh: only below this the decimals need to be compared. */
  readonly aboutMinimumUg: number;
  /** Scatter of one reading and of the difference of two, micrograms. */
  readonly scatterUg: readonly [one: number, two: number];
}

const scalesRead = new WeakMap<State<'scale'>['body'], ScaleRead>();

/** What the reckoning of a weighing needs to know of a scale. */
export const scaleData = (body: State<'scale'>['body']): ScaleData => scaleRead(body).data;

function scaleRead(body: State<'scale'>['body']): ScaleRead {
  const known = scalesRead.get(body);
  if (known) return known;
  const data: ScaleData = {
    d: mass(body.d).grams,
    s: grams(body.s),
    linearity: grams(body.linearity),
    certificateU: grams(body.certificate?.U),
    certificateK: body.certificate ? decimalOr2(body.certificate.k) : undefined,
    certificateAt: grams(body.certificate?.at),
  };
  const { tolerance } = body;
  const share = tolerance === undefined ? undefined : { digits: BigInt(Math.round(tolerance * 1e9)), places: 9 };
  const read: ScaleRead = {
    data,
    maximum: mass(body.maximum).grams,
    tolerance: share,
    aboutMinimumUg: ((share && minimumG(data, share)) ?? 0) * 1_000_001,
    scatterUg: [scatterG({ gross: zero, scale: data }) * 1e6, scatterG({ gross: zero, tare: zero, scale: data }) * 1e6],
  };
  scalesRead.set(body, read);
  return read;
}

const epochs = new WeakMap<State<'scale'>, string>();

/** The error source of a scale in one calibration: one text for all it weighs, because sums compare sources half a million times. */
function epochOf(scale: State<'scale'>): string {
  const known = epochs.get(scale) ?? `scale:${scale.entry}`;
  epochs.set(scale, known);
  return known;
}

const decimalOr2 = (k: number | undefined): Decimal => ({ digits: BigInt(Math.round((k ?? 2) * 1e6)), places: 6 });

/** Most weights have nothing awkward about them. */
const noFlags: readonly Flag[] = [];

function byScale(weight: Extract<Weight, { how: 'scale' }>, where: Standpoint, registers: Registers): Weighed {
  const gross = mass(weight.gross);
  const tare = weight.tare === undefined ? undefined : mass(weight.tare);
  const net = tare === undefined ? gross.grams : minus(gross.grams, tare.grams);
  const ug = wholeMicrograms(net);
  let flags: Flag[] | null = null;
  const raise = (code: Parameters<typeof flag>[0], data: Flag['data'] = {}) => {
    flags ??= [];
    flags.push(flag(code, where.entry, { field: where.path, ...data }));
  };
  if (net.digits < 0n) raise('tare-over-gross', { gross: gross.text, tare: tare?.text ?? '' });
  const thing = weight.scale === undefined ? undefined : registers.scale.get(weight.scale);
  if (!thing) {
    raise(weight.scale === undefined ? 'scale-not-named' : 'reference-unknown', { id: weight.scale ?? '' });
    return { as: weight, where, grams: net, net: exactly(ug), uKnown: false, scale: null, flags: flags ?? noFlags };
  }
  const scale = stateAt(thing, where.at);
  const { data, maximum, tolerance, aboutMinimumUg, scatterUg } = scaleRead(scale.body);
  const weighing = { gross: gross.grams, tare: tare?.grams, scale: data };
  const source = `${where.entry}:${where.path}`;
  const ownUg = tare ? scatterUg[1] : scatterUg[0];
  let sharedUg = 0;
  let uKnown = true;
  const span = spanG(weighing);
  if (scale.body.certificate && span !== null) sharedUg = span * 1e6;
  else {
    raise('certificate-missing', { scale: scale.body.label });
    const accuracy = scale.body.accuracy;
    if (!accuracy) uKnown = false;
    // shared by all the scale weighs, with the sign of the net, so that it cancels between what goes in and what comes out
    else sharedUg = Math.sign(ug) * uncertifiedG(accuracy.class, toNumber(mass(accuracy.e).grams), Math.abs(ug) / 1e6) * 1e6;
  }
  if (compare(gross.grams, maximum) > 0)
    raise('scale-over-maximum', { scale: scale.body.label, maximum: scale.body.maximum, gross: gross.text });
  if (tolerance !== undefined && net.digits > 0n && ug < aboutMinimumUg && belowMinimum(weighing, tolerance) === true)
    raise('scale-below-minimum', { scale: scale.body.label, net: toText(net) });
  const due = scale.body.certificate?.due;
  if (due !== undefined && due < dayOf(where.at)) raise('scale-out-of-date', { scale: scale.body.label, due });
  return {
    as: weight,
    where,
    grams: net,
    net: measuredBy(ug, source, ownUg, epochOf(scale), sharedUg),
    uKnown,
    scale,
    flags: flags ?? noFlags,
  };
}

/** Weights of a book that were worked out already: lots, runs, movements and flags all ask for the same ones. */
const weighedBefore = new WeakMap<Registers, Map<Weight, Weighed>>();

/** Works a weight out; the same weight at the same place of the same book once. */
export function weighedFrom(weight: Weight, where: Standpoint, registers: Registers): Weighed {
  let known = weighedBefore.get(registers);
  if (!known) {
    known = new Map();
    weighedBefore.set(registers, known);
  }
  const before = known.get(weight);
  if (before && before.where.entry === where.entry && before.where.path === where.path && before.where.at === where.at)
    return before;
  const got = workedOut(weight, where, registers);
  known.set(weight, got);
  return got;
}

function workedOut(weight: Weight, where: Standpoint, registers: Registers): Weighed {
  if (weight.how === 'scale') return byScale(weight, where, registers);
  const source = `${where.entry}:${where.path}`;
  const unknown = flag('u-unknown', where.entry, { field: where.path });
  if (weight.how === 'volume') {
    const volume = millilitresFromText(weight.volume, where.path);
    if (!volume.ok) throw new Error('a volume in the record has passed its shape');
    const value = byVolume(
      {
        volumeMl: volume.value,
        volumeUMl: weight.volumeUMl,
        temperatureC: weight.temperatureC,
        temperatureUC: weight.temperatureUC,
      },
      { reading: source, temperature: `${source}:temperature`, density: 'density of mercury' },
    );
    const ug = Math.round(value.ug);
    const uKnown = weight.volumeUMl !== undefined && weight.temperatureUC !== undefined;
    return {
      as: weight,
      where,
      grams: { digits: BigInt(ug), places: 6 },
      net: { ug, parts: value.parts },
      uKnown,
      scale: null,
      flags: uKnown ? noFlags : [unknown],
    };
  }
  const stated = mass(weight.mass);
  const u = weight.u === undefined ? null : mass(weight.u);
  return {
    as: weight,
    where,
    grams: stated.grams,
    net: u ? measuredBy(stated.ug, source, u.ug) : exactly(stated.ug),
    uKnown: u !== null,
    scale: null,
    flags: u === null ? [unknown] : noFlags,
  };
}
