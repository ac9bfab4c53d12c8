/**
 * Ore that stands behind metal: what a clean-up states, or the crushings since the last one of its type. Water over plates is no ore. A rate per tonne takes
 * the ore's own uncertainty with it; with no ore there is no rate. Source: methods.md 6; practice.md 2.10.
 */
import { massFromText } from '../mass.ts';
import { type Measured, measured, scaled, total, uOf } from '../measured.ts';
import { compareMoments } from '../time.ts';
import type { Book } from './book.ts';
import type { Reading } from './current.ts';

export interface Ore {
  readonly mass: Measured;
  readonly uKnown: boolean;
}

/** Ore of a field with its uncertainty as a share. */
export function oreOf(field: { mass: string; u?: number | undefined } | undefined, entry: string): Ore | null {
  const got = field ? massFromText(field.mass, '') : null;
  if (!field || !got?.ok) return null;
  const { ug } = got.value;
  return { mass: measured(ug, field.u === undefined ? [] : [[`ore:${entry}`, ug * field.u]]), uKnown: field.u !== undefined };
}

export function addedOre(ores: readonly Ore[]): Ore | null {
  return ores.length === 0 ? null : { mass: total(ores.map((o) => o.mass)), uKnown: ores.every((o) => o.uKnown) };
}

/** Entries that gather gold out of the circuit, told apart by type: a clean-up by its own, a cleaning of dirty amalgam. */
export const typeOf = (reading: Reading): string | null =>
  reading.kind === 'clean-up'
    ? (reading as Reading<'clean-up'>).body.type
    : reading.kind === 'cleaning' && (reading as Reading<'cleaning'>).body.dirty
      ? 'cleaning'
      : null;

/** A general or final clean-up ends a campaign. */
export const endsCampaign = (r: Reading): boolean =>
  r.kind === 'clean-up' && ['general', 'final'].includes((r as Reading<'clean-up'>).body.type);

/** What is of the whole campaign and of no month in it: a general clean-up, and scale and pan gold alone. Source: practice.md W10. */
export const ofCampaign = (r: Reading): boolean =>
  endsCampaign(r) ||
  (r.kind === 'clean-up' && (r as Reading<'clean-up'>).body.lots.every(({ source }) => source === 'scale' || source === 'pan'));

/**
 * Gatherings that are of a campaign with other clean-ups in it: the ore they state is that of the whole, and what they gave cannot be divided by it as if it
 * were theirs. One that is all there is of its campaign is no such.
 */
export function lateInCampaign(book: Book): ReadonlySet<string> {
  const late = new Set<string>();
  let campaign: Reading[] = [];
  const close = () => {
    if (campaign.some((r) => !ofCampaign(r))) for (const r of campaign) if (ofCampaign(r)) late.add(r.id);
    campaign = [];
  };
  for (const reading of gathering(book)) {
    campaign.push(reading);
    if (endsCampaign(reading)) close();
  }
  close();
  return late;
}

const gathered = new WeakMap<Book, readonly Reading[]>();

/** All of them, by happening. */
export function gathering(book: Book): readonly Reading[] {
  const before = gathered.get(book);
  if (before) return before;
  const found = [...book.current.of('clean-up'), ...book.current.of('cleaning')]
    .filter((r) => typeOf(r) !== null)
    .sort((a: Reading, b: Reading) => compareMoments(a.happened, b.happened));
  gathered.set(book, found);
  return found;
}

/** Crushings of ore after one moment (from the beginning where there is none) and up to another. */
export const crushedBetween = (book: Book, after: string | null, upTo: string): readonly Reading<'crushing'>[] =>
  book.current
    .of('crushing')
    .filter(
      (r) =>
        r.body.feed !== 'water-only' &&
        (after === null || compareMoments(r.happened, after) > 0) &&
        compareMoments(r.happened, upTo) <= 0,
    );

/** Crushings that a clean-up or cleaning stands for: those since the last one of its type. */
export function crushedFor(book: Book, reading: Reading): readonly Reading<'crushing'>[] {
  const type = typeOf(reading);
  const before = gathering(book).findLast(
    (r) => r.id !== reading.id && typeOf(r) === type && compareMoments(r.happened, reading.happened) < 0,
  );
  return crushedBetween(book, before?.happened ?? null, reading.happened);
}

/** Grams per tonne with one standard uncertainty; `u` null where a part of it is not known. */
export interface Rate {
  readonly gPerTonne: number;
  readonly u: number | null;
}

/** Grams per tonne of metal and ore, both in micrograms. */
export const perTonneOf = (metalUg: number, oreUg: number): number => metalUg / 1e6 / (oreUg / 1e12);

/** Pennyweights per long ton are grams per tonne by an exact factor (methods.md 4). */
export const dwtPerLongTon = (gPerTonne: number): number => (gPerTonne * 49) / 75;

/** Metal over ore: what both share cancels as it must. Null with no ore. */
export function rateOf(metal: Measured, uKnown: boolean, ore: Ore): Rate | null {
  if (!(ore.mass.ug > 0)) return null;
  const gPerTonne = perTonneOf(metal.ug, ore.mass.ug);
  const relative = total([
    scaled({ ug: 0, parts: metal.parts }, perTonneOf(1, ore.mass.ug)),
    scaled({ ug: 0, parts: ore.mass.parts }, -gPerTonne / ore.mass.ug),
  ]);
  return { gPerTonne, u: uKnown && ore.uKnown ? uOf(relative) : null };
}
