/** What makes most of the doubt of an account and what would cut it: shares of one variance, never a sum of errors as if each stood alone. */
import type { Content } from 'pdfmake/interfaces';
import type { Account } from '../../core/book/account.ts';
import type { Book } from '../../core/book/book.ts';
import { doubtsOf } from '../../core/book/doubts.ts';
import { cutText, doubtSource } from '../../words/doubts.ts';
import { percentText } from '../../words/figures.ts';
import { accountPaper as words } from '../../words/papers-account.ts';
import { commonWords } from '../../words/papers-common.ts';
import { aside, ledger, section, sentence } from '../ledger.ts';

/** Sources told, and a share below which none is. */
const mostTold = 8;
const leastShare = 0.01;

export function doubtedOf(book: Book, { unaccounted }: Account): Content[] {
  const told = doubtsOf(book, unaccounted).filter((d, i) => i < mostTold && d.share >= leastShare);
  if (told.length === 0) return [section(words.doubts), sentence(commonWords.capital(`${words.noZ}.`))];
  return [
    section(words.doubts),
    aside(words.doubtsNote),
    ...ledger(
      [
        { head: words.doubtOf, share: 46 },
        { head: words.doubtShare, share: 16, amount: true },
        { head: words.doubtCut, share: 38 },
      ],
      told.map((d) => ({ cells: [doubtSource(book, d), percentText(d.share, 1), commonWords.capital(cutText(d.cut))] })),
    ),
  ];
}
