/** Histories of the room as panels to draw, rows to read and text to copy. All figures are the core's; a share is shown in per cent. */

import type { Book } from '../../core/book/book.ts';
import { bullionHistory, type HistoryKind, type HistoryPoint, type SourceHistory } from '../../core/book/bullion-history.ts';
import { decimalFromNumber, toText } from '../../core/decimal.ts';
import { dayNumber, dayOf } from '../../core/time.ts';
import type { HistoryMark, HistoryPanel } from '../../drawings/history-layout.ts';
import { dayText } from '../../words/dates.ts';
import { entryName, nameIn } from '../../words/daybook-naming.ts';
import { decimalText, placesFor } from '../../words/figures.ts';
import { lotSourceNames } from '../../words/retort.ts';
import { historyWords as words } from '../../words/screens-bullion-history.ts';
import { csvOf } from '../mercury/copied.ts';
import { chargeHref, entryHref } from '../shared/places.ts';
import { barHref } from './hrefs.ts';

export const historyHref = '#/bullion/history';
export const historyKinds = ['fineness', 'sponge', 'shrinkage'] as const satisfies readonly HistoryKind[];

/** So many of a source are drawn and listed: more would be one grey band. */
export const mostShown = 40;

export interface HistoryRow {
  readonly source: string;
  readonly name: string;
  readonly href: string;
  readonly day: string;
  readonly value: string;
  readonly U: string;
  readonly usual: string;
  readonly spread: string;
  readonly stands: string;
  readonly told: string;
}

export interface DrawnHistory {
  readonly panels: readonly HistoryPanel[];
  readonly rows: readonly (readonly HistoryRow[])[];
  readonly times: readonly { readonly at: number; readonly name: string }[];
  /** Values of the longest source where some are left out; 0 where none is. */
  readonly leftOutOf: number;
}

const unitOf = (kind: HistoryKind) =>
  kind === 'fineness' ? { times: 1, name: words.permille } : { times: 100, name: words.percent };
const markOf = ({ usual, outside }: HistoryPoint): HistoryMark => (usual === null ? 'early' : outside ? 'outside' : 'usual');

const sourceName = (book: Book, { source, retort, points }: SourceHistory): string => {
  const name =
    source === 'several'
      ? words.severalSources
      : Object.hasOwn(lotSourceNames, source)
        ? lotSourceNames[source as keyof typeof lotSourceNames]
        : words.unknownSource;
  return retort === null ? name : words.ofRetort(name, nameIn(book, 'retort', retort, points.at(-1)?.at ?? ''));
};

function nameOf(book: Book, kind: HistoryKind, { id, at }: HistoryPoint): { name: string; href: string } {
  if (kind === 'fineness') return { name: nameIn(book, 'bar', id, at), href: barHref(id) };
  return { name: entryName(book, id), href: kind === 'sponge' ? chargeHref(id) : entryHref(id) };
}

function rowOf(book: Book, kind: HistoryKind, source: string, point: HistoryPoint): HistoryRow {
  const unit = unitOf(kind);
  const U = point.u === null ? 0 : 2 * point.u * unit.times;
  const places = U > 0 ? placesFor(U) : 2;
  const text = (value: number, to = places) => decimalText(decimalFromNumber(value * unit.times), to);
  const { name, href } = nameOf(book, kind, point);
  const [day, value] = [dayText(point.at), text(point.value)];
  const own = U > 0 ? `${value} ± ${decimalText(decimalFromNumber(U), places)}` : value;
  const told = words.told(name, day, own, unit.name);
  const stands = words.marks[markOf(point)];
  const [median, half] = point.usual ? [text(point.usual.median, 2), text(point.usual.half, 2)] : ['', ''];
  return {
    source,
    name,
    href,
    day,
    value,
    U: U > 0 ? decimalText(decimalFromNumber(U), places) : '',
    usual: median,
    spread: half,
    stands,
    told: point.usual ? words.toldUsual(told, median, half, point.usual.earlier, stands) : words.toldEarly(told),
  };
}

/** Months, or years, between the first and the last day: at most some ten, each with its name. */
export function monthsBetween(first: string, last: string): readonly { readonly at: number; readonly name: string }[] {
  const monthOf = (day: string) => Number(day.slice(0, 4)) * 12 + Number(day.slice(5, 7)) - 1;
  const [from, to] = [monthOf(first), monthOf(last)];
  const step = [1, 2, 3, 6, 12, 24, 60, 120].find((months) => (to - from) / months <= 10) ?? 240;
  const found: { at: number; name: string }[] = [];
  for (let month = Math.ceil(from / step) * step; month <= to; month += step) {
    const day = `${String(Math.floor(month / 12)).padStart(4, '0')}-${String((month % 12) + 1).padStart(2, '0')}-01`;
    const at = dayNumber(day);
    if (at !== null && day >= first) found.push({ at, name: dayText(day).replace(/^1 /, '') });
  }
  if (found.length > 1) return found;
  return [first, last].flatMap((day) => ({ at: dayNumber(day) ?? 0, name: dayText(day) }));
}

/** One kind of history; nothing in it where no source gave a value. */
export function drawnHistory(book: Book, kind: HistoryKind): DrawnHistory {
  const sources = bullionHistory(book, kind);
  const { times } = unitOf(kind);
  const shown = sources.map((one) => ({ ...one, points: one.points.slice(-mostShown) }));
  const days = shown.flatMap(({ points }) => points.map(({ at }) => dayOf(at))).sort();
  const most = Math.max(0, ...sources.map(({ points }) => points.length));
  return {
    panels: shown.map(
      (one): HistoryPanel => ({
        id: `${one.source} ${one.retort ?? ''}`,
        name: sourceName(book, one),
        values: one.points.map(({ at, value, u, usual, outside }) => ({
          at: dayNumber(dayOf(at)) ?? 0,
          value: value * times,
          half: u === null ? 0 : 2 * u * times,
          usual: usual && { median: usual.median * times, half: usual.half * times },
          outside,
        })),
      }),
    ),
    rows: shown.map((one) => one.points.map((point) => rowOf(book, kind, sourceName(book, one), point))),
    times: days.length === 0 ? [] : monthsBetween(days[0] ?? '', days.at(-1) ?? ''),
    leftOutOf: most > mostShown ? most : 0,
  };
}

/** Every value, unrounded, as comma-separated text: parts per thousand, or shares of one. */
export function historyCsv(book: Book, kind: HistoryKind): string {
  const plain = (value: number | null | undefined) =>
    value === null || value === undefined ? '' : toText(decimalFromNumber(value));
  return csvOf([
    words.csvHead,
    ...bullionHistory(book, kind).flatMap(({ source, retort, points }) =>
      points.map((p) => [
        source,
        retort ?? '',
        p.id,
        p.at,
        plain(p.value),
        plain(p.u),
        plain(p.usual?.median),
        plain(p.usual?.half),
        plain(p.usual?.earlier),
        words.marks[markOf(p)],
      ]),
    ),
  ]);
}
