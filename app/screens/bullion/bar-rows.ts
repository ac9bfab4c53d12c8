/** Bars as rows: number, mass, fineness and fine metal with their uncertainty, by what they are known, what they came from and where they stand. */
import { type Bar, barsOf } from '../../core/book/bars.ts';
import type { Book } from '../../core/book/book.ts';
import { dayText } from '../../words/dates.ts';
import { entryName, nameIn } from '../../words/daybook-naming.ts';
import { commonWords } from '../../words/papers-common.ts';
import { bullion as words } from '../../words/screens-bullion.ts';
import { type Shown, shownFine, shownFineness, shownMass } from './figures.ts';
import { barHref } from './hrefs.ts';

export interface BarRow {
  readonly id: string;
  readonly label: string;
  readonly href: string;
  readonly from: string;
  readonly by: string;
  readonly mass: Shown;
  readonly gold: Shown;
  readonly silver: Shown;
  readonly fineGold: Shown;
  readonly fineSilver: Shown;
  readonly standing: string;
  /** Something about it cannot be as found. */
  readonly odd: boolean;
}

/** "sponge of the charge of 3 March 2026, Pot retort; the bar 11". */
export function madeOfText(book: Book, { from, melt }: Bar): string {
  return [
    ...(from.charges.length > 0
      ? [words.ofSponges(from.charges.map((id) => commonWords.small(entryName(book, id))).join(', '))]
      : []),
    ...(from.bars.length > 0 ? [words.ofBars(from.bars.map((id) => nameIn(book, 'bar', id, melt.happened)).join(', '))] : []),
    ...(from.other.length > 0 ? [words.ofOther(from.other.join(', '))] : []),
  ].join('; ');
}

/** Gold and silver of one bar over the whole. */
export const impossible = (bar: Bar): boolean => bar.assays.some((a) => a.over1000) || (bar.base !== null && bar.base.n < 0n);

export function barRow(book: Book, bar: Bar): BarRow {
  return {
    id: bar.id,
    label: bar.label,
    href: barHref(bar.id),
    from: `${dayText(bar.melt.happened)}: ${madeOfText(book, bar)}`,
    by: bar.gold ? words.classes[bar.gold.class] : words.notAssayed,
    mass: shownMass(bar.weighed),
    gold: shownFineness(bar.gold),
    silver: shownFineness(bar.silver),
    fineGold: shownFine(bar.fineGold),
    fineSilver: shownFine(bar.fineSilver),
    standing: words.fates[bar.fate],
    odd: impossible(bar),
  };
}

/** All bars, the newest first. */
export const barRows = (book: Book): readonly BarRow[] =>
  [...barsOf(book).all.values()].toReversed().map((bar) => barRow(book, bar));
