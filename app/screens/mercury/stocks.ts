/**
 * The stocks by place as the book has them at a moment: every place that holds something, in groups, each with how its last amount is known and the
 * movements it is the sum of. Nothing is clipped: a stock below nothing is shown as it is and marked.
 */
import type { Book } from '../../core/book/book.ts';
import { goldInStrained } from '../../core/book/gold.ts';
import { type Movement, stocksAt } from '../../core/book/movements/gathering.ts';
import { isStock, placeParts } from '../../core/book/places.ts';
import { latest } from '../../core/book/registers.ts';
import { type Measured, scaled, total } from '../../core/measured.ts';
import { compareWithBound } from '../../core/time.ts';
import type { WorkingLine } from '../../parts/working-line.ts';
import { basisTexts } from '../../words/account.ts';
import { dayText } from '../../words/dates.ts';
import { gramText, withoutUnit } from '../../words/figures.ts';
import { placeText } from '../../words/places.ts';
import { type StockGroup, stockGroups, mercuryRoom as words } from '../../words/screens-mercury.ts';
import { movementsHref } from './address.ts';
import { type FigureRow, figureOf, figureText, isNothing } from './figures.ts';
import { traceHref } from './trace/href.ts';

/** Movements told one by one in a working; the page of the place has them all. */
const told = 12;

const isDrum = (book: Book, vessel: string): boolean => {
  const thing = book.registers.vessel.get(vessel);
  return thing !== undefined && latest(thing).body.use === 'drum';
};

/** The group a place stands in. */
export function groupOf(book: Book, place: string): StockGroup {
  const { kind, of } = placeParts(place);
  switch (kind) {
    case 'vessel':
      return isDrum(book, of) ? 'waste' : 'store';
    case 'circuit':
    case 'sponge':
    case 'condenser':
      return kind;
    case 'residue':
      return 'waste';
    default:
      return 'amalgam';
  }
}

/** What a movement adds to a place: with the other sign where it left it. */
export const toPlace = (m: Movement, place: string): Measured => (m.to === place ? m.mercury : scaled(m.mercury, -1));

const line = (book: Book, m: Movement, mercury: Measured): WorkingLine => ({
  sort: 'reading',
  text: `${words.moved(dayText(m.at), placeText(book, m.from), placeText(book, m.to))} (${basisTexts[m.basis]})`,
  figure: figureText(mercury),
  href: traceHref(m.entry),
});

/** A working of movements: those before the last ones in one sum that leads to the list, each of the last with its entry. */
export function linesOf(
  book: Book,
  movements: readonly Movement[],
  amount: (m: Movement) => Measured,
  { allHref = movementsHref(), sum = words.holds as string }: { allHref?: string; sum?: string } = {},
): readonly WorkingLine[] {
  const early = movements.slice(0, Math.max(0, movements.length - told));
  return [
    ...(early.length > 0
      ? [
          {
            sort: 'formula' as const,
            text: words.earlier(early.length),
            figure: figureText(total(early.map(amount))),
            href: allHref,
          },
        ]
      : []),
    ...movements.slice(early.length).map((m) => line(book, m, amount(m))),
    { sort: 'result' as const, text: sum, figure: figureText(total(movements.map(amount))) },
  ];
}

/** The movements of a place up to and with a moment or day, in order of happening. */
export const movementsOf = (book: Book, place: string, upTo: string | null): readonly Movement[] =>
  book.movements.all.filter(
    (m) => (m.from === place || m.to === place) && m.from !== m.to && (upTo === null || compareWithBound(m.at, upTo) <= 0),
  );

/** The last movement of every place up to a moment. */
function lastBy(book: Book, upTo: string | null): ReadonlyMap<string, Movement> {
  const last = new Map<string, Movement>();
  for (const m of book.movements.all) {
    if (upTo !== null && compareWithBound(m.at, upTo) > 0) continue;
    last.set(m.from, m);
    last.set(m.to, m);
  }
  return last;
}

function rowOf(book: Book, place: string, mercury: Measured, upTo: string | null, last: Movement | undefined): FigureRow {
  return {
    key: place,
    label: placeText(book, place),
    href: movementsHref(place),
    ...figureOf(mercury),
    note: last ? basisTexts[last.basis] : '',
    negative: Math.round(mercury.ug) < 0,
    lines: () => linesOf(book, movementsOf(book, place, upTo), (m) => toPlace(m, place), { allHref: movementsHref(place) }),
  };
}

/** The places that hold something at a moment, in order of first mention. */
export const held = (book: Book, upTo: string | null): readonly (readonly [string, Measured])[] =>
  [...stocksAt(book.movements.all, upTo)].filter(([place, mercury]) => isStock(place) && !isNothing(mercury));

export interface GroupOfStocks {
  readonly group: StockGroup;
  readonly rows: readonly FigureRow[];
  readonly sum: Measured;
}

/** The stocks in their groups; null for the moment: after everything that is on the book. */
export function stocksOf(book: Book, upTo: string | null): readonly GroupOfStocks[] {
  const all = held(book, upTo);
  const last = lastBy(book, upTo);
  return stockGroups.flatMap((group) => {
    const own = all.filter(([place]) => groupOf(book, place) === group);
    if (own.length === 0) return [];
    return [
      {
        group,
        rows: own.map(([place, mercury]) => rowOf(book, place, mercury, upTo, last.get(place))),
        sum: total(own.map(([, mercury]) => mercury)),
      },
    ];
  });
}

/** Gold that strained mercury carries, by vessel: bounds in micrograms. The mercury of the book is already without it. */
export function goldOf(book: Book): readonly { readonly place: string; readonly lowUg: number; readonly highUg: number }[] {
  const { from, to } = goldInStrained;
  return held(book, null).flatMap(([place, mercury]) => {
    const { kind, of } = placeParts(place);
    const vessel = kind === 'vessel' ? book.registers.vessel.get(of) : undefined;
    if (!vessel || latest(vessel).body.mercury !== 'strained' || !(mercury.ug > 0)) return [];
    // what the vessel holds in all: its mercury and the gold that was counted off
    const wholeUg = mercury.ug / (1 - (from + to) / 2);
    return [{ place, lowUg: wholeUg * from, highUg: wholeUg * to }];
  });
}

export const goldText = (ug: number): string => withoutUnit(gramText(Math.round(ug), { places: 1 }));
