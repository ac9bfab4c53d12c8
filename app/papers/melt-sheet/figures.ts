/** The melt as an account, in less out, and its shrinkage between bounds. What a missing sponge leaves unknown is left out, never put as nothing. */
import type { Content } from 'pdfmake/interfaces';
import type { Book } from '../../core/book/book.ts';
import { emptySum, joined, lessSum, type Sum } from '../../core/book/charges.ts';
import type { Reading } from '../../core/book/current.ts';
import { lossPlace } from '../../core/book/places.ts';
import { total, uOf } from '../../core/measured.ts';
import { meltBounds } from '../../core/melt.ts';
import { gramsOf, percentText, withU } from '../../words/figures.ts';
import { meltPaper as words } from '../../words/papers-melt.ts';
import { gramsText, uText, withGrams } from '../amounts.ts';
import { aside, facts, ledger, part, type Row, section, sentence, small, together } from '../ledger.ts';
import type { MeltWeighed } from './weighed.ts';

const line = (text: string, { grams, net, uKnown }: Sum, more: Partial<Row> = {}): Row => ({
  cells: [text, gramsText(grams), uText(net, uKnown)],
  ...more,
});

const sharePlaces = 2;

export function accountOfMelt({ sponges, added, bars, samples, prills, slag, figures }: MeltWeighed): Content[] {
  const weighed = sponges.flatMap(({ weighed: w, what }) => (w ? [{ what, w }] : []));
  const into = [...weighed.map(({ w }) => w), ...added.map(({ weighed: w }) => w)].reduce<Sum>(joined, emptySum);
  const out = [...bars, ...samples].map(({ weighed: w }) => w).reduce<Sum>(joined, emptySum);
  const shrinkage = lessSum(into, out);
  const rows: Row[] = [
    ...weighed.map(({ what, w }) => line(what, w)),
    ...added.map((piece) => line(words.added(piece.label), piece.weighed)),
    ...(figures ? [line(words.into, into, { sum: true })] : []),
    ...bars.map((piece) => line(words.bar(piece.label), piece.weighed)),
    ...samples.map((piece) => line(words.sample(piece.label), piece.weighed)),
    ...(figures
      ? [line(words.shrinkage, { ...shrinkage, grams: figures.shrinkage }, { sum: true, closing: prills === null })]
      : []),
    ...(prills ? [line(words.prills, prills)] : []),
    ...(prills && figures
      ? [line(words.net, { ...lessSum(shrinkage, prills), grams: figures.net }, { sum: true, closing: true })]
      : []),
  ];
  const shares: [string, string][] = figures
    ? [
        [words.shrinkageOf, figures.shrinkageOfIn === null ? words.nothing : percentText(figures.shrinkageOfIn, sharePlaces)],
        [words.netOf, figures.netOfIn === null ? words.nothing : percentText(figures.netOfIn, sharePlaces)],
      ]
    : [];
  return [
    ...together([
      section(words.figures),
      ...ledger(
        [
          { head: words.item, share: 60 },
          { head: words.grams, share: 20, amount: true },
          { head: words.U, share: 20, amount: true },
        ],
        rows,
      ),
    ]),
    ...(figures?.findings.includes('bars-over-charge') ? [sentence(words.overCharge)] : []),
    ...(shares.length > 0 ? [part(words.shares), ...facts(shares)] : []),
    ...(slag ? facts([[words.slag, `${withGrams(slag.grams)}, ${uText(slag.net, slag.uKnown)}`]]) : []),
    small(words.exact),
  ];
}

export function boundsOfMelt(book: Book, reading: Reading<'melt'>, { figures, prills }: MeltWeighed): Content[] {
  if (!figures) return [];
  const posted = book.movements.all.filter((m) => m.entry === reading.id && m.to === lossPlace('melt')).map((m) => m.mercury);
  const booked = total(posted);
  const said = sentence(posted.length > 0 ? words.booked(withU(gramsOf(booked.ug), uOf(booked) / 1e6)) : words.notBooked);
  const bounds = meltBounds(figures, prills?.grams);
  if (!bounds) return [section(words.maybe), sentence(words.notBounded), said];
  const most = gramsText(bounds.most);
  return together([
    section(words.maybe),
    aside(words.maybeNote),
    ...ledger(
      [
        { head: words.what, share: 64 },
        { head: words.least, share: 18, amount: true },
        { head: words.most, share: 18, amount: true },
      ],
      [
        { cells: [words.mercury, '0', most] },
        { cells: [words.dirt, '0', most] },
        { cells: [words.slagMetal, gramsText(bounds.leastInSlag), most] },
      ],
    ),
    said,
  ]);
}
