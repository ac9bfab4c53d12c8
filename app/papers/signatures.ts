/** Room to sign beside the name of each who wrote a part of the record: one line a person. A signature says who wrote it, nothing more. */
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

/** Readings by what they share, in the order they come. */
function grouped<K>(readings: readonly Reading[], by: (reading: Reading) => K): ReadonlyMap<K, Reading[]> {
  const found = new Map<K, Reading[]>();
  for (const reading of readings) found.set(by(reading), [...(found.get(by(reading)) ?? []), reading]);
  return found;
}

/** "the firing, 14 March 2026, 09:20; the crushing, 12 times, 2 March 2026, 17:00 to 13 March 2026, 16:40". */
function wroteText(readings: readonly Reading[]): string {
  return [...grouped(readings, (r) => r.kind)]
    .map(([kind, of]) => {
      const [first, last] = [of[0], of.at(-1)].map((r) => momentText(r?.entry.written ?? ''));
      return of.length === 1 ? `${theKind(kind)}, ${first}` : words.wroteTimes(theKind(kind), of.length, first ?? '', last ?? '');
    })
    .join('; ');
}

export function signatures(book: Book, readings: readonly Reading[]): Content[] {
  const ordered = [...readings].sort((a, b) => compareMoments(a.entry.written, b.entry.written));
  const rows = [...grouped(ordered, ({ entry }) => entry.by)].map(([by, of]) => ({
    cells: [personName(book, by, of.at(-1)?.happened ?? ''), wroteText(of), ''],
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
