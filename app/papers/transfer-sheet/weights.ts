/** Our weight and the other side's beside each other, with the difference and whether the two explain it; and the mercury the account books. */
import type { Content } from 'pdfmake/interfaces';
import type { Book } from '../../core/book/book.ts';
import { lessSum, type Sum } from '../../core/book/charges.ts';
import type { Reading } from '../../core/book/current.ts';
import { weighedFrom } from '../../core/book/weights.ts';
import { decimalFromNumber } from '../../core/decimal.ts';
import { uOf } from '../../core/measured.ts';
import { basisTexts } from '../../words/account.ts';
import { dayText } from '../../words/dates.ts';
import { decimalText, percentText } from '../../words/figures.ts';
import { commonWords } from '../../words/papers-common.ts';
import { transferPaper as words } from '../../words/papers-transfer.ts';
import { placeText } from '../../words/places.ts';
import { gramsText, ugText, uText } from '../amounts.ts';
import { ledger, type Row, section, sentence } from '../ledger.ts';

type Transfer = Reading<'transfer'>;

const line = (text: string, { grams, net, uKnown }: Sum, signed: boolean, more: Partial<Row> = {}): Row => ({
  cells: [text, gramsText(grams, signed), uText(net, uKnown)],
  ...more,
});

function agreement(difference: Sum): string {
  if (!difference.uKnown) return words.cannotTell;
  return Math.abs(difference.net.ug) <= 2 * uOf(difference.net) ? words.agrees : words.differs;
}

export function sideBySide(book: Book, { id, body, happened }: Transfer): Content[] {
  const weigh = (weight: NonNullable<typeof body.weight>, path: string) =>
    weighedFrom(weight, { entry: id, path, at: happened }, book.registers);
  const ours = body.weight ? weigh(body.weight, 'weight') : null;
  const theirs = body.theirs ? weigh(body.theirs.weight, 'theirs.weight') : null;
  const difference = ours && theirs ? lessSum(theirs, ours) : null;
  const rows: Row[] = [
    ...(ours ? [line(words.ours, ours, false)] : []),
    ...(theirs && body.theirs ? [line(words.theirs(dayText(body.theirs.on)), theirs, false)] : []),
    ...(difference ? [line(words.difference, difference, true, { sum: true, closing: true })] : []),
  ];
  return [
    section(words.weights),
    ...(rows.length === 0
      ? []
      : ledger(
          [
            { head: words.item, share: 60 },
            { head: words.grams, share: 20, amount: true },
            { head: words.U, share: 20, amount: true },
          ],
          rows,
        )),
    ...(ours ? [] : [sentence(words.noOurs)]),
    ...(theirs ? [] : [sentence(words.noTheirs)]),
    ...(difference ? [sentence(agreement(difference))] : []),
  ];
}

export function mercuryIn(book: Book, { id, body }: Transfer): Content[] {
  const moved = book.movements.all.filter(({ entry }) => entry === id);
  const { share } = body;
  const places = (n: number) => decimalText(decimalFromNumber(n * 100), Math.min(4, decimalFromNumber(n * 100).places));
  const said = share
    ? [
        sentence(
          words.share(
            `${places(share.value)}\u00a0%`,
            share.u === undefined ? '' : words.shareU(percentText(share.u)),
            share.basis === undefined ? '' : words.shareBasis(share.basis),
          ),
        ),
      ]
    : [];
  if (moved.length === 0) return [section(words.mercury), sentence(words.noMercury), ...said];
  return [
    section(words.mercury),
    ...ledger(
      [
        { head: words.mercuryFrom, share: 26 },
        { head: words.mercuryTo, share: 26 },
        { head: words.known, share: 16 },
        { head: words.grams, share: 16, amount: true },
        { head: words.U, share: 16, amount: true },
      ],
      moved.map(({ from, to, basis, mercury }) => ({
        cells: [
          commonWords.capital(placeText(book, from)),
          commonWords.capital(placeText(book, to)),
          basisTexts[basis],
          ugText(mercury.ug, 2),
          uText(mercury, true),
        ],
      })),
    ),
    ...said,
  ];
}
