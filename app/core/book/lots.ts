/**
 * Balls and lots: made by clean-ups, weighed again when charged, split into child lots, or not found. A lot goes into one charge; what is left
 * of a lot after a part was taken is a lot of its own, weighed or got by subtraction, and then carries the part's error with the other sign.
 */
import { type Decimal, minus } from '../decimal.ts';
import type { LotSource, LotState } from '../kinds/clean-up.ts';
import type { Body } from '../kinds/index.ts';
import { less, type Measured, uOf } from '../measured.ts';
import { compareMoments } from '../time.ts';
import type { Current, Reading } from './current.ts';
import { type Flag, flag } from './flags.ts';
import type { Registers } from './registers.ts';
import { weighedFrom } from './weights.ts';

/** Where a lot is now: `worked` went into a cleaning or squeezing, `left` was handed over. */
export type Fate = 'in-safe' | 'charged' | 'split' | 'worked' | 'left' | 'not-found';

export interface Lot {
  readonly id: string;
  readonly label: string;
  /** The clean-up or charge that made it. */
  readonly madeBy: string;
  readonly made: string;
  readonly state: LotState | null;
  readonly source: LotSource | null;
  readonly seal: string | null;
  /** By its label: exact grams and the value with its errors. */
  readonly grams: Decimal;
  readonly net: Measured;
  readonly uKnown: boolean;
  /** The lot it was split from. */
  readonly parent: string | null;
  readonly fate: Fate;
  /** The entry that took it: the charge it went into, was split for or was missed at, the cleaning, the transfer. */
  readonly charge: string | null;
}

/** A row of a charge: the lot, and what the scale said this time. */
export interface ChargedLot {
  readonly key: string;
  readonly take: Body<'charge'>['rows'][number]['take'];
  /** The lot named; for a part, the child lot that went in. Null for a lot not written up yet. */
  readonly lot: Lot | null;
  readonly label: string;
  /** As weighed at charging; null for a lot that was not found. */
  readonly charged: { readonly grams: Decimal; readonly net: Measured; readonly uKnown: boolean } | null;
  /** Weight at charging less label weight; null where one of them is missing or only a part was taken. */
  readonly drift: Measured | null;
}

export interface Lots {
  readonly all: ReadonlyMap<string, Lot>;
  /** Rows of each charge, in the order they were written. */
  readonly rows: ReadonlyMap<string, readonly ChargedLot[]>;
  readonly flags: readonly Flag[];
}

type Draft = { -readonly [K in keyof Lot]: Lot[K] };

/** A drift is worth a look above this share of the label weight and above twice its uncertainty (common practice, no source). */
const driftShare = 0.005;

function drifted(drift: Measured, label: Measured, uKnown: boolean): boolean {
  const size = Math.abs(drift.ug);
  return size > driftShare * label.ug && (!uKnown || size > 2 * uOf(drift));
}

/** All lots of the book, with what became of each. */
export function readLots(current: Current, registers: Registers): Lots {
  const all = new Map<string, Draft>();
  const rows = new Map<string, ChargedLot[]>();
  const flags: Flag[] = [];

  for (const { reading, field, made } of makers(current))
    for (const [i, lot] of made.entries()) {
      const got = weighedFrom(lot.weight, { entry: reading.id, path: `${field}[${i}].weight`, at: reading.happened }, registers);
      flags.push(...got.flags);
      all.set(`${reading.id}/${lot.key}`, {
        id: `${reading.id}/${lot.key}`,
        label: lot.label,
        madeBy: reading.id,
        made: reading.happened,
        state: lot.state ?? null,
        source: lot.source ?? null,
        seal: lot.seal ?? null,
        grams: got.grams,
        net: got.net,
        uKnown: got.uKnown,
        parent: null,
        fate: 'in-safe',
        charge: null,
      });
    }
  // a part taken from a child lot needs the charge that made the child read before it: charges are read once their lots are there
  const unmade = new Set(current.of('unmake').map((reading) => reading.body.charge));
  let waiting = current.of('charge').filter((reading) => !unmade.has(reading.id));
  for (;;) {
    const ready = waiting.filter((charge) => charge.body.rows.every((row) => row.take === 'unwritten' || all.has(row.lot)));
    const next = ready.length > 0 ? ready : waiting;
    for (const charge of next) rows.set(charge.id, readRows(charge, all, registers, flags));
    const done = new Set(next);
    waiting = waiting.filter((charge) => !done.has(charge));
    if (waiting.length === 0) break;
  }
  takenOtherwise(current, all, flags);
  return { all, rows, flags };
}

/** Fates after which a lot is no longer there to be taken. */
export const usedUp: ReadonlySet<Fate> = new Set(['charged', 'split', 'worked', 'left']);

type Made = Body<'clean-up'>['lots'];

/** Every entry that makes lots, with the field they stand in. */
function* makers(current: Current): Generator<{ reading: Reading; field: string; made: Made }> {
  for (const reading of current.of('clean-up')) yield { reading, field: 'lots', made: reading.body.lots };
  for (const reading of current.of('cleaning')) yield { reading, field: 'made', made: reading.body.made };
  for (const reading of current.of('squeeze')) yield { reading, field: 'made', made: reading.body.made };
  for (const reading of current.of('plate-work')) yield { reading, field: 'made', made: reading.body.made ?? [] };
}

/** Lots that went into a cleaning or a squeezing, or left the site. */
function takenOtherwise(current: Current, all: Map<string, Draft>, flags: Flag[]): void {
  const take = (id: string, fate: Fate, by: string) => {
    const lot = all.get(id);
    if (!lot) flags.push(flag('reference-unknown', by, { id }));
    else if (usedUp.has(lot.fate)) flags.push(flag('lot-charged-twice', by, { label: lot.label, other: lot.charge ?? '' }));
    else Object.assign(lot, { fate, charge: by });
  };
  for (const reading of [...current.of('cleaning'), ...current.of('squeeze')])
    for (const id of reading.body.lots ?? []) take(id, 'worked', reading.id);
  for (const reading of current.of('transfer')) {
    const { lot, way } = reading.body;
    if (lot !== undefined && way === 'out' && all.has(lot)) take(lot, 'left', reading.id);
  }
}

/** A lot weighed in before it was made, where the time of charging is said to be exact: unlike order of writing, this cannot be. */
const chargedTooSoon = (charge: Reading<'charge'>, lot: Draft): Flag[] =>
  (charge.entry.timing ?? 'exact') === 'exact' && compareMoments(charge.happened, lot.made) < 0
    ? [flag('charged-before-made', charge.id, { label: lot.label, made: lot.made, charged: charge.happened })]
    : [];

function readRows(charge: Reading<'charge'>, all: Map<string, Draft>, registers: Registers, flags: Flag[]): ChargedLot[] {
  return charge.body.rows.map((row, i): ChargedLot => {
    const where = { entry: charge.id, path: `rows[${i}].weight`, at: charge.happened };
    if (row.take === 'unwritten') {
      const got = weighedFrom(row.weight, where, registers);
      flags.push(...got.flags, flag('lot-unwritten', charge.id, { label: row.label }));
      return { key: row.key, take: row.take, lot: null, label: row.label, charged: got, drift: null };
    }
    const lot = all.get(row.lot);
    if (!lot) flags.push(flag('reference-unknown', charge.id, { id: row.lot }));
    else if (usedUp.has(lot.fate))
      flags.push(flag('lot-charged-twice', charge.id, { label: lot.label, other: lot.charge ?? '' }));
    if (row.take === 'not-found') {
      if (lot) {
        flags.push(flag('lot-not-found', charge.id, { label: lot.label }));
        if (lot.fate === 'in-safe') Object.assign(lot, { fate: 'not-found', charge: charge.id });
      }
      return { key: row.key, take: row.take, lot: lot ?? null, label: lot?.label ?? row.lot, charged: null, drift: null };
    }
    const got = weighedFrom(row.weight, where, registers);
    flags.push(...got.flags, ...(lot ? chargedTooSoon(charge, lot) : []));
    if (row.take === 'whole') {
      if (lot && !usedUp.has(lot.fate)) Object.assign(lot, { fate: 'charged', charge: charge.id });
      const drift = lot ? less(got.net, lot.net) : null;
      if (lot && drift && drifted(drift, lot.net, got.uKnown && lot.uKnown))
        flags.push(flag('lot-drift', charge.id, { label: lot.label, ug: drift.ug }));
      return { key: row.key, take: row.take, lot: lot ?? null, label: lot?.label ?? row.lot, charged: got, drift };
    }
    if (!lot) return { key: row.key, take: row.take, lot: null, label: row.lot, charged: got, drift: null };
    const child = (letter: string, weight: { grams: Decimal; net: Measured; uKnown: boolean }, fate: Fate): Draft => ({
      ...lot,
      id: `${charge.id}/${row.key}${letter}`,
      label: `${lot.label} ${letter}`,
      madeBy: charge.id,
      made: charge.happened,
      grams: weight.grams,
      net: weight.net,
      uKnown: weight.uKnown,
      parent: lot.id,
      fate,
      charge: fate === 'charged' ? charge.id : null,
    });
    const rest = row.rest
      ? weighedFrom(row.rest, { ...where, path: `rows[${i}].rest` }, registers)
      : { grams: minus(lot.grams, got.grams), net: less(lot.net, got.net), uKnown: lot.uKnown && got.uKnown, flags: [] };
    flags.push(...rest.flags);
    if (rest.grams.digits < 0n) flags.push(flag('part-over-lot', charge.id, { label: lot.label }));
    const taken = child('a', got, 'charged');
    const left = child('b', rest, 'in-safe');
    // a charge that names the rest may have been read already: what it did to it stays
    all.set(taken.id, taken);
    if (!all.has(left.id)) all.set(left.id, left);
    Object.assign(lot, { fate: 'split', charge: charge.id });
    return { key: row.key, take: row.take, lot: taken, label: taken.label, charged: got, drift: null };
  });
}
