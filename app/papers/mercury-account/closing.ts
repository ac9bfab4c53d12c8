/**
 * What makes an account the statement of a closed period: its version, the two counts, the end marks it rests on, what it takes over from closings
 * before it, and room to sign. A signature says who closed it, nothing more.
 */
import type { Content } from 'pdfmake/interfaces';
import type { Book } from '../../core/book/book.ts';
import { everyClosing, onClosedBasisUg } from '../../core/book/closings.ts';
import { momentText } from '../../words/dates.ts';
import { gramText } from '../../words/figures.ts';
import { closingPaper as words } from '../../words/papers-closing.ts';
import { endMarkText } from '../end-mark.ts';
import { aside, ledger, section, statements, together } from '../ledger.ts';
import { personName } from '../names.ts';
import type { CoveredDesk } from '../paper.ts';

/** A closing as its paper is told of it, before it is kept. */
export interface ClosingOnPaper {
  readonly id: string;
  readonly version: number;
  /** The stock-takes it lies between; the first left out: from the beginning of the book. */
  readonly opening?: string | undefined;
  readonly closing: string;
  readonly replaces?: string | undefined;
  readonly note?: string | undefined;
  readonly by: string | null;
  readonly happened: string;
  /** What it takes over from closings before it, micrograms. */
  readonly carried: readonly { readonly of: string; readonly ug: number }[];
}

/** Under the head: which closing this is and what it rests on. `unaccountedUg` is the account's last line. */
export function closingOf(book: Book, closing: ClosingOnPaper, desks: readonly CoveredDesk[], unaccountedUg: number): Content[] {
  const at = (id: string): string => momentText(book.current.byId.get(id)?.happened ?? '');
  const closings = new Map(everyClosing(book).map((c) => [c.id, c]));
  const before = closing.replaces === undefined ? undefined : closings.get(closing.replaces);
  return [
    section(words.section),
    ...statements(
      [
        [words.version, words.versionText(closing.version)],
        ...(before
          ? [[words.replaces, words.replacesText(before.body.version, momentText(before.reading.happened))] as const]
          : []),
        [words.from, closing.opening === undefined ? words.beginning : words.after(at(closing.opening))],
        [words.to, words.upTo(at(closing.closing))],
        ...(closing.note === undefined ? [] : [[words.why, closing.note] as const]),
        ...desks.map(({ desk, entries, endMark }) => [words.desk(desk, entries), endMarkText(endMark)] as const),
        ...closing.carried.map(
          ({ of, ug }) =>
            [
              words.adjustment,
              words.adjustmentText(
                gramText(ug, { sign: true }),
                closings.get(of)?.body.version ?? 0,
                momentText(closings.get(of)?.to ?? ''),
              ),
            ] as const,
        ),
        ...(closing.carried.length === 0
          ? []
          : [[words.onClosed, gramText(onClosedBasisUg(Math.round(unaccountedUg), closing.carried))] as const]),
      ],
      30,
    ),
    aside(words.note),
  ];
}

/** The line to sign. */
export const closingSignature = (book: Book, closing: ClosingOnPaper): Content[] =>
  together([
    section(words.signature),
    aside(words.signatureNote),
    ...ledger(
      [
        { head: words.who, share: 28 },
        { head: words.what, share: 36 },
        { head: words.signed, share: 36 },
      ],
      [
        {
          cells: [
            personName(book, closing.by, closing.happened),
            words.whatText(closing.version, momentText(closing.happened)),
            '',
          ],
          tall: true,
        },
      ],
    ),
  ]);
