/** What can be ticked for a melt, each with its mass as it was last weighed. Only what the book has in stock; bars that left stand apart. */
import { barsOf } from '../../core/book/bars.ts';
import type { Book } from '../../core/book/book.ts';
import { leftOverOf } from '../../core/book/melt-stock.ts';
import type { Weighed } from '../../core/book/weights.ts';
import { dayText } from '../../words/dates.ts';
import { entryName } from '../../words/daybook-naming.ts';
import { commonWords } from '../../words/papers-common.ts';
import { meltForm as words } from '../../words/screens-bullion-melt.ts';
import { labelAfter } from '../retort/clean-up-form.ts';
import { noRowWeight } from '../retort/typed.ts';
import { noWeighing, weighingEntry } from '../shared/weighing-entry.ts';
import type { StockKind, TakenRow } from './melt-plan.ts';
import { spongesWaiting } from './waiting.ts';

export interface StockRow {
  readonly what: StockKind;
  /** The charge, melt or bar. */
  readonly of: string;
  /** As the entry will name it. */
  readonly label: string;
  /** As the list names it. */
  readonly text: string;
  /** Null where the book has it in stock no more. */
  readonly weighed: Weighed | null;
}

const fromMelt = (book: Book, what: 'prills' | 'slag'): readonly StockRow[] =>
  leftOverOf(book, what).map(({ melt, weighed }) => {
    const label = words[what](commonWords.small(entryName(book, melt.id)));
    return { what, of: melt.id, label, text: label, weighed };
  });

/** Everything in stock that a pot may take, in the order of `stockKinds`. */
export function stockRows(book: Book): readonly StockRow[] {
  const sponges = spongesWaiting(book).map(({ charge, weighed }): StockRow => {
    const label = words.sponge(commonWords.small(entryName(book, charge.id)));
    return { what: 'sponge', of: charge.id, label, text: label, weighed };
  });
  return [...sponges, ...fromMelt(book, 'prills'), ...fromMelt(book, 'slag'), ...barsWith(book, 'here')];
}

/** Bars that stand so. */
export const barsWith = (book: Book, fate: 'here' | 'left'): readonly StockRow[] =>
  [...barsOf(book).all.values()]
    .filter((bar) => bar.fate === fate)
    .toReversed()
    .map((bar) => ({
      what: 'bar',
      of: bar.id,
      label: words.bar(bar.label),
      text: words.barLine(bar.label, dayText(bar.melt.happened)),
      weighed: bar.weighed,
    }));

/** A ticked row. A sponge or slag not weighed again stays so in the entry; prills and bars carry the weight they had. */
export const takenRow = ({ what, of, label, weighed }: StockRow): TakenRow => ({
  ...noRowWeight(),
  what,
  of,
  label,
  before: what === 'sponge' || !weighed ? noWeighing() : weighingEntry(weighed.as),
});

/** The stamped number after the last bar's. */
export const nextBarLabel = (book: Book): string => labelAfter([...barsOf(book).all.values()].at(-1)?.label ?? '');

/** What is ticked though it is in stock no more: a draft of old, or another desk melted it meanwhile. It stays in sight, so that it can be unticked. */
export const lostRows = (taken: readonly TakenRow[], known: readonly StockRow[]): readonly StockRow[] =>
  taken
    .filter((row) => !known.some((k) => k.what === row.what && k.of === row.of))
    .map(({ what, of, label }) => ({ what, of, label, text: label, weighed: null }));
