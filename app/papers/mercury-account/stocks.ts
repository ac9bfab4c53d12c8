/** Where the closing stock is, place by place with how it is known, and the ways of losing it, each between its bounds. */
import type { Content } from 'pdfmake/interfaces';
import type { Account } from '../../core/book/account.ts';
import type { Book } from '../../core/book/book.ts';
import type { Basis } from '../../core/book/movements/gathering.ts';
import { placeKinds, placeParts } from '../../core/book/places.ts';
import { uOf } from '../../core/measured.ts';
import { basisTexts } from '../../words/account.ts';
import { accountPaper as words } from '../../words/papers-account.ts';
import { commonWords } from '../../words/papers-common.ts';
import { pathTexts, placeNames } from '../../words/places.ts';
import { ugText, uText } from '../amounts.ts';
import { aside, ledger, section, sentence } from '../ledger.ts';

const places = 2;

/** Half a hundredth of a gram: less than this, and surely less, would show as nothing; it is what rounding in a computer leaves over. */
const unseenUg = 5000;
const isSeen = ({ mercury }: Account['stocks'][number]): boolean => Math.abs(mercury.ug) + 2 * uOf(mercury) >= unseenUg;

/** In order of kind: vessels first, then the circuit, and on to the retort. */
const rank = (place: string): number => placeKinds.indexOf(placeParts(place).kind as (typeof placeKinds)[number]);

export function stocksOf(book: Book, account: Account): Content[] {
  if (account.stocks.length === 0) return [section(words.stocks), sentence(words.noStocks)];
  const lines = account.stocks.filter(isSeen).sort((a, b) => rank(a.place) - rank(b.place));
  const names = placeNames(
    book,
    lines.map(({ place }) => place),
  );
  return [
    section(words.stocks),
    aside(words.stocksNote),
    ...ledger(
      [
        { head: words.place, share: 42 },
        { head: words.basis, share: 24 },
        { head: words.grams, share: 17, amount: true },
        { head: words.U, share: 17, amount: true },
      ],
      [
        ...lines.map(({ place, mercury, basis }) => ({
          cells: [
            commonWords.capital(names.get(place) ?? place),
            basisTexts[basis as Basis] ?? basis,
            ugText(mercury.ug, places),
            uText(mercury, true),
          ],
        })),
        { cells: [words.total, '', ugText(account.closing.ug, places), uText(account.closing, true)], sum: true, closing: true },
      ],
    ),
  ];
}

export const pathsOf = (account: Account): Content[] => [
  section(words.paths),
  aside(words.pathsNote),
  ...ledger(
    [
      { head: words.path, share: 46 },
      { head: words.posted, share: 18, amount: true },
      { head: words.low, share: 18, amount: true },
      { head: words.high, share: 18, amount: true },
    ],
    account.paths.map(({ path, posted, lowUg, highUg }) => ({
      cells: [
        commonWords.capital(pathTexts[path]),
        ugText(posted.ug, places),
        ugText(Math.round(lowUg), places),
        ugText(Math.round(highUg), places),
      ],
    })),
  ),
];
