/** What a counted period takes over from closed ones, line by line, and its last figure as it stands with them. Nothing where nothing is taken over. */
import type { Content } from 'pdfmake/interfaces';
import type { Account } from '../../core/book/account.ts';
import type { Book } from '../../core/book/book.ts';
import { adjustmentsInto, everyClosing, onClosedBasisUg } from '../../core/book/closings.ts';
import { accountWords } from '../../words/account.ts';
import { accountPaper as words } from '../../words/papers-account.ts';
import { ugText } from '../amounts.ts';
import { aside, ledger, section } from '../ledger.ts';

export function carriedOf(book: Book, account: Account): Content[] {
  const carried = adjustmentsInto(book, account.period);
  if (carried.length === 0) return [];
  const closings = new Map(everyClosing(book).map((c) => [c.id, c]));
  return [
    section(words.adjustments),
    aside(accountWords.adjustmentsNote),
    ...ledger(
      [
        { head: words.closingHead, share: 80 },
        { head: words.grams, share: 20, amount: true },
      ],
      [
        ...carried.map(({ of, ug }) => ({
          cells: [accountWords.adjustment(closings.get(of)?.to ?? '', closings.get(of)?.body.version ?? 0), ugText(ug, 2, true)],
        })),
        {
          cells: [accountWords.onClosed, ugText(onClosedBasisUg(Math.round(account.unaccounted.ug), carried), 2)],
          sum: true,
          closing: true,
        },
      ],
    ),
  ];
}
