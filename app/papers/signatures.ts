/** Room to sign beside the name of each who wrote a part of the record. A signature says who wrote it, nothing more. */
import type { Content } from 'pdfmake/interfaces';
import type { Book } from '../core/book/book.ts';
import type { Reading } from '../core/book/current.ts';
import { compareMoments } from '../core/time.ts';
import { momentText } from '../words/dates.ts';
import { runSheet as words } from '../words/papers.ts';
import { theKind } from '../words/papers-common.ts';
import { aside, ledger, section, together } from './ledger.ts';
import { personName } from './names.ts';

/** So many signatures are kept on one page. */
const fewRows = 8;

export function signatures(book: Book, readings: readonly Reading[]): Content[] {
  const ordered = [...readings].sort((a, b) => compareMoments(a.entry.written, b.entry.written));
  const rows = ordered.map(({ kind, entry, happened }) => ({
    cells: [personName(book, entry.by, happened), `${theKind(kind)}, ${momentText(entry.written)}`, ''],
    tall: true,
  }));
  const block = [
    section(words.signatures),
    aside(words.signaturesNote),
    ...ledger(
      [
        { head: words.writer, share: 28 },
        { head: words.wrote, share: 36 },
        { head: words.signature, share: 36 },
      ],
      rows,
    ),
  ];
  return rows.length > fewRows ? block : together(block);
}
