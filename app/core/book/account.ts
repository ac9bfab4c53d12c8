/**
 * The mercury account of a period: what was there, what came and went, what is there now, and what is not accounted for, with the uncertainty of
 * the whole sum. Issues and returns lie inside the circuit and never enter. Nothing is clipped; a loss is never called vapour. The account says
 * nothing about the air: milligrams matter there that no scale here can show.
 */
import { massFromText } from '../mass.ts';
import { less, type Measured, measured, RunningTotal, total, uOf } from '../measured.ts';
import type { Book } from './book.ts';
import { type Missing, missingCounts } from './counted-ends.ts';
import { type FlagCode, reservations } from './flags.ts';
import { type LossLine, lossLines } from './loss-paths.ts';
import { bookStock, type Movement } from './movements/gathering.ts';
import { inPeriod, isBefore, type Period, upToEnd } from './period.ts';
import { foundPlace, isStock, lossPlace, outside, placeParts } from './places.ts';
import { runsByCharge } from './runs.ts';

export type { Period } from './period.ts';

export interface StockLine {
  readonly place: string;
  readonly mercury: Measured;
  /** How the last amount that came or went is known. */
  readonly basis: string;
}

export interface Account {
  readonly period: Period;
  readonly opening: Measured;
  /** What came in, with what opening a flask showed against its invoice. */
  readonly receipts: Measured;
  /** Of the receipts: flasks opened, invoice against weighed. The supplier's figure, no loss of this period. */
  readonly invoiced: Measured;
  readonly removals: Measured;
  readonly found: Measured;
  /** Weighed losses: spills not recovered. */
  readonly released: Measured;
  readonly closing: Measured;
  readonly unaccounted: Measured;
  readonly stocks: readonly StockLine[];
  /** Each way of losing it: what is posted, and between what bounds it lies. */
  readonly paths: readonly LossLine[];
  /** Ore put through, micrograms, with its own error; null where none is on the book. */
  readonly ore: Measured | null;
  /** Flags that print first: entries of the period or of stocks carried through it. */
  readonly reservations: readonly { readonly entry: string; readonly code: string }[];
  /** Which of its ends no count of the whole stands at: there the stock is what the book says. */
  readonly uncounted: readonly Missing[];
}

/** 1.644854 twice: the smallest loss found with 95 % power at a 5 % false alarm (IAEA Safeguards Glossary 2001; from memory, methods.md 1.3). */
export const detectableFactor = 3.289707254;

/** What was there before the book: entered as already here, found at the first count of a place, or brushed out before the first run. */
export function wasThere(book: Book): ReadonlySet<string> {
  const already = book.current.of('receipt').filter((r) => r.body.way === 'already-here');
  return new Set([...already, ...book.current.of('stock-take'), ...book.current.of('retort')].map((r) => r.id));
}

/** Flags of weights whose error counts as nothing in the sum because nobody knows it: the account says so first. */
const unsure: ReadonlySet<FlagCode> = new Set(['scale-not-named', 'certificate-missing']);

/** Firings, of whatever time, that showed what a lot or a charge standing at one end of the period held: what is awkward about them is awkward here. */
function truedBy(book: Book, place: string): readonly string[] {
  const { kind, of } = placeParts(place);
  const charge = kind === 'charge' ? of : kind === 'lot' ? book.lots.all.get(of)?.charge : null;
  const run = charge ? runsByCharge(book.runs).get(charge) : undefined;
  return run?.charges.flatMap((c) => c.firings.map((firing) => firing.id)) ?? [];
}

const sumOf = (): RunningTotal => new RunningTotal();

/** The account of a period. */
export function accountOf(book: Book, period: Period): Account {
  const { all } = book.movements;
  const here = wasThere(book);
  const spill = lossPlace('spill');
  const inside: Movement[] = [];
  const before = new Map<string, RunningTotal>();
  const stocks = new Map<string, RunningTotal>();
  const lastBasis = new Map<string, string>();
  const flagged = new Set<string>();
  const [alreadyHere, receipts, invoiced, returnedOut, found] = [sumOf(), sumOf(), sumOf(), sumOf(), sumOf()];
  const [spilled, gathered] = [sumOf(), sumOf()];
  // one pass: of a hundred thousand entries every sum taken alone would cost as much as all of them together
  for (const m of all) {
    if (!upToEnd(m.at, period)) continue;
    const earlier = isBefore(m.at, period);
    if (earlier) bookStock(before, m);
    bookStock(stocks, m);
    if (isStock(m.to) && book.flags.has(m.entry)) flagged.add(m.entry);
    lastBasis.set(m.to, m.basis);
    if (!lastBasis.has(m.from)) lastBasis.set(m.from, m.basis);
    if (earlier) continue;
    inside.push(m);
    if (book.flags.has(m.entry)) flagged.add(m.entry);
    const invoice = m.basis === 'invoice-against-weighed';
    if (invoice) invoiced.add(m.mercury, m.from === outside ? 1 : -1);
    if (m.from === outside) (invoice || !here.has(m.entry) ? receipts : alreadyHere).add(m.mercury);
    if (m.to === outside) returnedOut.add(m.mercury);
    if (m.from === foundPlace) found.add(m.mercury);
    if (m.to === spill) spilled.add(m.mercury);
    if (m.from === spill) gathered.add(m.mercury);
  }
  const opening = total([...before.values(), alreadyHere]);
  const released = less(spilled, gathered);
  // errors that cancel leave crumbs far below a microgram: what holds nothing, known to the microgram, is no stock
  const closingStocks = [...stocks].filter(([, value]) => Math.round(value.ug) !== 0 || Math.round(uOf(value)) !== 0);
  const closing = total(closingStocks.map(([, value]) => value));
  const unaccounted = new RunningTotal().add(opening).add(receipts).add(found).add(returnedOut, -1).add(released, -1);
  unaccounted.add(closing, -1);
  for (const ends of [before, stocks])
    for (const [place, value] of ends) if (value.ug !== 0) for (const entry of truedBy(book, place)) flagged.add(entry);
  const flags = [...book.flags].flatMap(([entry, list]) =>
    flagged.has(entry) || inPeriod(book.current.byId.get(entry)?.happened ?? '', period)
      ? list.filter((f) => reservations.has(f.code) || unsure.has(f.code))
      : [],
  );
  return {
    period,
    opening,
    receipts,
    invoiced,
    removals: returnedOut,
    found,
    released,
    closing,
    unaccounted,
    stocks: closingStocks.map(([place, mercury]) => ({ place, mercury, basis: lastBasis.get(place) ?? 'stated' })),
    paths: lossLines(book, period, inside, released),
    ore: oreOf(book, period),
    reservations: flags.map((f) => ({ entry: f.entry, code: f.code })),
    uncounted: missingCounts(book, period),
  };
}

/** Ore of the period: crushings where there are any, else what the clean-ups state. Water over plates is no ore. */
export function oreOf(book: Book, period: Period): Measured | null {
  const crushed = book.current.of('crushing').filter((r) => inPeriod(r.happened, period) && r.body.feed !== 'water-only');
  const values = crushed.flatMap((r) => oreMeasured(r.body.ore, r.id) ?? []);
  const stated = book.current.of('clean-up').filter((r) => inPeriod(r.happened, period));
  const all = values.length > 0 ? values : stated.flatMap((r) => oreMeasured(r.body.ore, r.id) ?? []);
  return all.length === 0 ? null : total(all);
}

function oreMeasured(ore: { mass: string; u?: number | undefined } | undefined, entry: string): Measured | null {
  const mass = ore ? massFromText(ore.mass, '') : null;
  return ore && mass?.ok ? measured(mass.value.ug, [[`ore:${entry}`, mass.value.ug * (ore.u ?? 0)]]) : null;
}

/** The kind of a stock's place, for lists. */
export const stockKind = (line: StockLine): string => placeParts(line.place).kind;

/** z: how many standard uncertainties the unaccounted lies from nothing; null where the uncertainty is nothing. */
export const zOf = (value: Measured): number | null => {
  const u = uOf(value);
  return u > 0 ? value.ug / u : null;
};

/** none up to 2, warn up to 3, act above, either sign (methods.md 1.3). */
export const levelOf = (z: number): 'none' | 'warn' | 'act' => (Math.abs(z) > 3 ? 'act' : Math.abs(z) > 2 ? 'warn' : 'none');

/** Per tonne of ore, with its uncertainty; null without ore. */
export function perTonne(value: Measured, ore: Measured | null): { readonly g: number; readonly uG: number } | null {
  if (ore === null || !(ore.ug > 0)) return null;
  const tonnes = ore.ug / 1e12;
  const g = value.ug / 1e6 / tonnes;
  const relative = uOf(ore) / ore.ug;
  return { g, uG: Math.hypot(uOf(value) / 1e6 / tonnes, g * relative) };
}
