/** The firing along the clock as text to copy: the rows of its table, in the program's own notation. */

import type { Book } from '../../core/book/book.ts';
import { fireTimes } from '../../core/book/fire-times.ts';
import type { Run } from '../../core/book/runs.ts';
import { entryName } from '../../words/daybook-naming.ts';
import { firingDrawn as words } from '../../words/firing-drawn.ts';
import { drawnFiring } from '../../words/firing-timeline.ts';
import { writtenPlainly } from '../../words/notation.ts';
import { csvOf } from '../mercury/copied.ts';

/** Comma-separated rows of one firing of a run; what was not written is a row that says so. */
export const firingCsv = (book: Book, run: Run, firing: string, personal: boolean): string =>
  writtenPlainly(() => {
    const times = fireTimes(book, run, personal).find((one) => one.firing.id === firing);
    const rows = times ? drawnFiring(book, times).rows : [];
    return csvOf([
      words.csv,
      ...rows.map(({ when, until, what, said, entry }) => [
        when,
        until,
        what,
        said,
        entry === null ? '' : entryName(book, entry),
      ]),
    ]);
  });
