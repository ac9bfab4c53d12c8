/** Yields of the clean-ups as rows: gross grams a tonne with their working, or in words why there is none. */
import type { Book } from '../../core/book/book.ts';
import { type CleanUpYield, cleanUpYields } from '../../core/book/yields.ts';
import { decimalFromNumber } from '../../core/decimal.ts';
import type { WorkingLine } from '../../parts/working-line.ts';
import { entryName } from '../../words/daybook-naming.ts';
import { decimalText, gramText, withoutUnit } from '../../words/figures.ts';
import { mercuryRoom as words } from '../../words/screens-mercury.ts';
import { entryHref } from '../shared/places.ts';

export interface YieldRow {
  readonly id: string;
  readonly name: string;
  readonly href: string;
  readonly bar: string;
  readonly ore: string;
  readonly perTonne: string;
  readonly note: string;
  readonly shared: boolean;
  readonly lines: readonly WorkingLine[];
}

const tonnes = (ug: number | null): string => (ug === null ? '' : decimalText(decimalFromNumber(ug / 1e12), 2));
const grams = (ug: number | null): string => (ug === null ? '' : withoutUnit(gramText(ug)));

function rowOf(book: Book, y: CleanUpYield): YieldRow {
  const href = entryHref(y.cleanUp);
  const melts = book.current
    .of('melt')
    .filter((r) => r.body.sponges.some((s) => book.charges.all.get(s.charge)?.rows.some((row) => row.lot?.madeBy === y.cleanUp)));
  const figure = y.gPerTonne === null ? '' : decimalText(decimalFromNumber(y.gPerTonne), 2);
  return {
    id: y.cleanUp,
    name: entryName(book, y.cleanUp),
    href,
    bar: grams(y.barUg),
    ore: tonnes(y.oreUg),
    perTonne: figure,
    note: y.why === null ? '' : words.yieldWhy[y.why],
    shared: y.shared,
    lines: [
      ...(y.barUg === null ? [] : [{ sort: 'reading' as const, text: words.bar, figure: grams(y.barUg) }]),
      ...melts.map((r) => ({ sort: 'note' as const, text: entryName(book, r.id), href: entryHref(r.id) })),
      ...(y.oreUg === null ? [] : [{ sort: 'reading' as const, text: words.ton, figure: tonnes(y.oreUg), href }]),
      ...(y.shared ? [{ sort: 'note' as const, text: words.sharedSays }] : []),
      figure === ''
        ? { sort: 'note' as const, text: y.why === null ? '' : words.yieldWhy[y.why] }
        : { sort: 'result' as const, text: words.yieldFormula, figure: `${figure}\u00a0g/t` },
    ],
  };
}

export const yieldRows = (book: Book): readonly YieldRow[] => cleanUpYields(book).map((y) => rowOf(book, y));
