/**
 * All readings of an entry beside each other: as first written, and every correction, struck ones too, with the reading each was written against.
 * Two corrections of one reading stand side by side; the one that counts is named.
 */
import type { Book } from '../../core/book/book.ts';
import type { Reading } from '../../core/book/current.ts';
import { type Body, bodyFrom } from '../../core/kinds/index.ts';
import { daybookWords } from '../../words/daybook.ts';
import { writerOf } from '../../words/daybook-naming.ts';
import { happenedRow } from './correction.ts';
import { allCorrections } from './links.ts';
import { type Compared, comparedRows, type Row, rowsOf } from './rows.ts';

export interface ReadingColumn {
  /** The entry it stands in. */
  readonly id: string;
  readonly title: string;
  readonly by: string;
  readonly written: string;
  /** Null for the entry as first written. */
  readonly why: string | null;
  readonly counts: boolean;
  readonly struck: boolean;
  /** Another correction names the same reading. */
  readonly sideBySide: boolean;
  /** Its body cannot be read as one of this kind. */
  readonly unreadable: boolean;
}

export interface Readings {
  readonly columns: readonly ReadingColumn[];
  /** The answers in which any of them differs. */
  readonly rows: readonly Compared[];
}

/** The readings of an entry that was corrected; null where it never was. */
export function readingsOf(book: Book, root: Reading): Readings | null {
  const corrections = allCorrections(book, root);
  if (corrections.length === 0) return null;
  const who = (by: string | null, at: string) => writerOf(book, by, at) ?? daybookWords.unnamed;
  const named = corrections.filter((c) => !c.struck).map((c) => c.body.corrects);
  const columns: ReadingColumn[] = [];
  const rows: (readonly Row[])[] = [];
  const against: number[] = [];
  const add = (column: Omit<ReadingColumn, 'counts'>, body: unknown, happened: string, before: number) => {
    columns.push({ ...column, counts: false });
    rows.push(column.unreadable ? [] : [happenedRow(happened), ...rowsOf(book, root.kind, body, happened)]);
    against.push(column.unreadable ? -1 : before);
  };
  add(
    {
      id: root.id,
      title: daybookWords.firstWritten,
      by: who(root.entry.by, root.entry.happened),
      written: root.entry.written,
      why: null,
      struck: false,
      sideBySide: false,
      unreadable: false,
    },
    root.entry.body,
    root.entry.happened,
    -1,
  );
  const moments = new Map([[root.id, root.entry.happened]]);
  for (const [i, correction] of corrections.entries()) {
    const body = correction.body as Body<'correction'>;
    const before = columns.findIndex((c) => c.id === body.corrects);
    const happened = body.happened ?? moments.get(body.corrects) ?? root.entry.happened;
    moments.set(correction.id, happened);
    add(
      {
        id: correction.id,
        title: daybookWords.correction(i + 1),
        by: who(correction.entry.by, correction.entry.happened),
        written: correction.entry.written,
        why: body.why,
        struck: correction.struck !== null,
        sideBySide: !correction.struck && named.filter((id) => id === body.corrects).length > 1,
        unreadable: !bodyFrom(root.kind, body.body).ok,
      },
      body.body,
      happened,
      before,
    );
  }
  const last = root.corrections.findLast((c) => bodyFrom(root.kind, c.body.body).ok);
  const counting = last?.id ?? root.id;
  return {
    columns: columns.map((column) => ({ ...column, counts: column.id === counting && !root.struck })),
    rows: comparedRows(rows, against),
  };
}
