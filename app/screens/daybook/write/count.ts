/**
 * The rows of a stock-take: every flask, bottle, jar and drum of the register that is in use or holds something by the book, and every part of the
 * circuit. What a scale shows of a drum, or of amalgam, is not its mercury, so those are estimated; balls and lots are weighed again at charging.
 */
import type { Book } from '../../../core/book/book.ts';
import { stocksAt } from '../../../core/book/movements/gathering.ts';
import { circuitPlace, placeParts, vesselPlace } from '../../../core/book/places.ts';
import { latest } from '../../../core/book/registers.ts';
import { circuitParts } from '../../../core/kinds/mercury.ts';
import type { CountWay } from '../../../core/kinds/stock-take.ts';
import { dayOf } from '../../../core/time.ts';
import { stockTakeFields } from '../../../words/daybook-fields-count.ts';
import { filled, type Typed, type UsualScale } from '../typed.ts';

export const countGroups = ['store', 'drums', 'circuit', 'other'] as const;
export type CountGroup = (typeof countGroups)[number];

const useOf = (book: Book, vessel: string) => {
  const thing = book.registers.vessel.get(vessel);
  return thing ? latest(thing).body.use : undefined;
};

/** The places that have to be answered at that moment, in the order they are asked. */
export function placesAsked(book: Book, now: string): readonly string[] {
  const stocks = stocksAt(book.movements.all, now);
  const holds = (place: string): boolean => Math.round(stocks.get(place)?.ug ?? 0) !== 0;
  const vessels = [...book.registers.vessel.values()].filter((vessel) => {
    const { out, use } = latest(vessel).body;
    if (holds(vesselPlace(vessel.id))) return true;
    return use !== 'dish' && (out === undefined || out >= dayOf(now));
  });
  const drums = vessels.filter((v) => useOf(book, v.id) === 'drum');
  const others = vessels.filter((v) => useOf(book, v.id) !== 'drum');
  return [...[...others, ...drums].map((v) => vesselPlace(v.id)), ...circuitParts.map(circuitPlace)];
}

/** Which part of the list a place stands in. */
export function countGroup(book: Book, place: string): CountGroup {
  const { kind, of } = placeParts(place);
  if (kind === 'circuit') return 'circuit';
  if (kind !== 'vessel') return 'other';
  return useOf(book, of) === 'drum' ? 'drums' : 'store';
}

/** How a place of such a group can be answered. */
export const waysOf: Readonly<Record<CountGroup, readonly CountWay[]>> = {
  store: ['sealed', 'weighed', 'empty', 'estimated', 'unanswered', 'not-found'],
  drums: ['sealed', 'estimated', 'empty', 'unanswered', 'not-found'],
  circuit: ['estimated', 'unanswered'],
  other: ['estimated', 'unanswered'],
};

const lines = stockTakeFields.find((f) => f.key === 'lines');
/** The questions of one row. */
export const rowFields = lines?.shape.is === 'list' ? lines.shape.fields : [];

/** A row for a place, not answered yet; a seal that is on the register stands in it to be compared. */
function rowFor(book: Book, place: string, usual: UsualScale): Typed {
  const { kind, of } = placeParts(place);
  const vessel = kind === 'vessel' ? book.registers.vessel.get(of) : undefined;
  const row = filled(rowFields, { place }, usual);
  return { ...row, seal: (vessel && latest(vessel).body.seal) ?? '' };
}

export const countRows = (book: Book, now: string, usual: UsualScale): Typed[] =>
  placesAsked(book, now).map((place) => rowFor(book, place, usual));

/** Rows for places that are to be answered and stand in no row yet. */
export const rowsMissing = (book: Book, now: string, rows: readonly Typed[], usual: UsualScale): Typed[] =>
  countRows(book, now, usual).filter((row) => !rows.some((r) => r.place === row.place));
