/**
 * The list of a stock-take: every place that has to be answered at a moment, in the order it is walked, with what the book says of it and how it is
 * best answered. What the book says is for afterwards: whoever counts is not to be led by it.
 */

import { circuitParts } from '../kinds/mercury.ts';
import type { CountLine, CountWay } from '../kinds/stock-take.ts';
import { less, type Measured, nothing, scaled, uOf } from '../measured.ts';
import { compareMoments, dayOf } from '../time.ts';
import type { Book } from './book.ts';
import { mercuryIn } from './gold.ts';
import { countedMercury } from './movements/count.ts';
import { stocksAt } from './movements/gathering.ts';
import { circuitPlace, isStock, type PlaceKind, placeParts, vesselPlace } from './places.ts';
import { nameOf, stateAt } from './registers.ts';
import { sealAt } from './seals.ts';
import { weighedFrom } from './weights.ts';

/** The groups of the walk, in its order. */
export const countGroups = ['sealed', 'working', 'lots', 'in-hand', 'residues', 'drums', 'circuit'] as const;
export type CountGroup = (typeof countGroups)[number];

export interface CountPlace {
  readonly place: string;
  readonly group: CountGroup;
  /** How it is best answered. */
  readonly expected: CountWay;
  /** Every way it can be answered, the expected one first. */
  readonly ways: readonly CountWay[];
  /** The seal that stands on it by the book. */
  readonly seal: string | null;
  /** Mercury by the book at that moment. */
  readonly book: Measured;
  /** How it was estimated last, if ever. */
  readonly lastEstimate: { readonly method: string; readonly sharedU?: number; readonly ownU?: number } | null;
}

const groupOfKind: Readonly<Partial<Record<PlaceKind, CountGroup>>> = {
  circuit: 'circuit',
  lot: 'lots',
  charge: 'in-hand',
  sponge: 'in-hand',
  work: 'in-hand',
  condenser: 'in-hand',
  residue: 'residues',
};

const isDrum = (book: Book, vessel: string, at: string): boolean => {
  const thing = book.registers.vessel.get(vessel);
  return thing !== undefined && stateAt(thing, at).body.use === 'drum';
};

/** The group of a place, its seal apart. */
function groupAt(book: Book, place: string, at: string, seal: string | null): CountGroup {
  const { kind, of } = placeParts(place);
  if (kind !== 'vessel') return groupOfKind[kind] ?? 'in-hand';
  return isDrum(book, of, at) ? 'drums' : seal === null ? 'working' : 'sealed';
}

/**
 * How a place can be answered, the best way first. A scale does not show the mercury of a drum, of residues or of the circuit; what stands in a
 * retort is not opened for a count; only what bears a seal can be answered by it. A plate that was ever dressed holds mercury in itself, so looking at it
 * does not make it empty; neither is a sealed flask looked into.
 */
function waysOf(group: CountGroup, seal: string | null, place: string): readonly CountWay[] {
  const never: readonly CountWay[] = ['unanswered', 'not-found'];
  switch (group) {
    case 'sealed':
      return ['sealed', 'weighed', 'estimated', ...never];
    case 'working':
      return ['weighed', 'empty', 'estimated', ...never];
    case 'lots':
      return ['weighed', 'seen', 'estimated', ...never];
    case 'in-hand':
      return placeParts(place).kind === 'condenser' ? ['seen', 'empty', 'estimated', ...never] : ['seen', 'estimated', ...never];
    case 'residues':
      return ['seen', 'empty', 'estimated', ...never];
    case 'drums':
      return seal === null ? ['estimated', 'empty', ...never] : ['sealed', 'estimated', ...never];
    case 'circuit':
      return place === circuitPlace('plates') ? ['estimated', 'unanswered'] : ['estimated', 'empty', 'unanswered'];
  }
}

/** How this place can be answered at that moment. `without`: the stock-take that is being written anew. */
export function countWays(book: Book, place: string, at: string, without: string | null = null): readonly CountWay[] {
  const { kind, of } = placeParts(place);
  const seal = kind === 'vessel' ? sealAt(book, of, at, without) : null;
  return waysOf(groupAt(book, place, at, seal), seal, place);
}

/** Vessels in use at that moment, or not empty by the book; a dish only while something is in it. */
function vesselsAt(book: Book, at: string, holds: (place: string) => boolean): readonly string[] {
  const day = dayOf(at);
  return [...book.registers.vessel.values()]
    .filter((vessel) => {
      if (holds(vesselPlace(vessel.id))) return true;
      const { use, out } = stateAt(vessel, at).body;
      const first = vessel.states[0]?.from ?? at;
      return use !== 'dish' && (out === undefined || out >= day) && dayOf(first) <= day;
    })
    .map((vessel) => vesselPlace(vessel.id));
}

/** Every place to be answered at that moment, in the order it is walked. `without`: the stock-take that is being written anew. */
export function countListOf(book: Book, at: string, without: string | null = null): readonly CountPlace[] {
  const movements = without === null ? book.movements.all : book.movements.all.filter((m) => m.entry !== without);
  const stocks = stocksAt(movements, at);
  const holds = (place: string): boolean => Math.round(stocks.get(place)?.ug ?? 0) !== 0;
  const others = [...stocks.keys()].filter(
    (place) => isStock(place) && !['vessel', 'circuit'].includes(placeParts(place).kind) && holds(place),
  );
  const places = [...vesselsAt(book, at, holds), ...others, ...circuitParts.map(circuitPlace)];
  const rows = places.map((place): CountPlace => {
    const { kind, of } = placeParts(place);
    const seal = kind === 'vessel' ? sealAt(book, of, at, without) : null;
    const group = groupAt(book, place, at, seal);
    const ways = waysOf(group, seal, place);
    return {
      place,
      group,
      expected: ways[0] ?? 'unanswered',
      ways,
      seal,
      book: stocks.get(place) ?? nothing,
      lastEstimate: lastEstimate(book, place, at, without),
    };
  });
  return countGroups.flatMap((group) => rows.filter((row) => row.group === group));
}

function lastEstimate(book: Book, place: string, at: string, without: string | null): CountPlace['lastEstimate'] {
  const counts = [...book.current.of('stock-take')]
    .filter((r) => r.id !== without && compareMoments(r.happened, at) <= 0)
    .sort((a, b) => compareMoments(b.happened, a.happened));
  for (const { body } of counts) {
    const line = body.lines.find((l) => l.place === place);
    if (line?.how !== 'estimated') continue;
    const { method, sharedU, ownU } = line.estimate;
    return { method, ...(sharedU === undefined ? {} : { sharedU }), ...(ownU === undefined ? {} : { ownU }) };
  }
  return null;
}

/** Names of all estimating methods ever used in a count or on a plate, the newest first. */
export function methodsUsed(book: Book): readonly string[] {
  const used = [
    ...book.current
      .of('stock-take')
      .flatMap((r) =>
        r.body.lines.flatMap((l) => (l.how === 'estimated' ? [{ at: r.happened, method: l.estimate.method }] : [])),
      ),
    ...book.current
      .of('plate-work')
      .flatMap((r) => [r.body.held, r.body.holds].flatMap((e) => (e ? [{ at: r.happened, method: e.method }] : []))),
  ].sort((a, b) => compareMoments(b.at, a.at));
  return [...new Set(used.map(({ method }) => method))];
}

/** What a line found, held against the book. */
export interface Compared {
  readonly book: Measured;
  /** Null where the line counts nothing: the book's amount is carried forward. */
  readonly counted: Measured | null;
  /** Counted less book; shared errors cancel. */
  readonly difference: Measured;
  /** The difference in its own standard uncertainties; null where it has none. */
  readonly z: number | null;
}

/** Holds a line of a count against the book at its moment. Nothing is kept by it. */
export function comparedWithBook(book: Book, line: CountLine, at: string, without: string | null = null): Compared {
  const movements = without === null ? book.movements.all : book.movements.all.filter((m) => m.entry !== without);
  const booked = stocksAt(movements, at).get(line.place) ?? nothing;
  const counted = countedMercury(line, booked, {
    lots: book.lots.all,
    lotMercuries: book.movements.lotMercuries,
    weigh: (weight) => weighedFrom(weight, { entry: 'count', path: line.place, at }, book.registers).net,
    inVessel: (net, vessel) => {
      const thing = book.registers.vessel.get(vessel);
      return mercuryIn(net, thing ? stateAt(thing, at).body.mercury : undefined);
    },
    source: 'estimate:count',
  });
  const difference = counted === null ? scaled(nothing, 1) : less(counted, booked);
  const u = uOf(difference);
  return { book: booked, counted, difference, z: u > 0 ? difference.ug / u : null };
}

/** What a place is called on its own label: of a vessel, a lot or a part of the circuit; empty where it has none. */
export function labelOfPlace(book: Book, place: string, at: string): string {
  const { kind, of } = placeParts(place);
  if (kind === 'lot') return book.lots.all.get(of)?.label ?? '';
  if (kind === 'circuit') return of;
  const thing =
    kind === 'vessel' ? book.registers.vessel.get(of) : kind === 'condenser' ? book.registers.retort.get(of) : undefined;
  return thing ? nameOf(stateAt(thing as Parameters<typeof stateAt>[0], at).body as { label?: string }) : '';
}
