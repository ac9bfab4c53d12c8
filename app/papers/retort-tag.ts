/**
 * The retort tag: one charge on a paper a quarter of a sheet large, to hang on the retort. It says above all that there is mercury in it, what and
 * how much went in, and when. It permits nothing. A long list of lots runs on to a second tag.
 */

import type { Content, TableCell } from 'pdfmake/interfaces';
import { type Book, runOf } from '../core/book/book.ts';
import { type Charge, firedAt } from '../core/book/charges.ts';
import { bad, good, problem, type Result } from '../core/result.ts';
import { dayText } from '../words/dates.ts';
import { massUnit } from '../words/figures.ts';
import { frameWords } from '../words/papers.ts';
import { tagPaper as words } from '../words/papers-tag.ts';
import { uText, withGrams } from './amounts.ts';
import { doubtsOf, notUnderstoodNaming, once } from './doubts.ts';
import { endMarkText, keyLines } from './end-mark.ts';
import { entryQr } from './entry-qr.ts';
import { ink } from './ledger.ts';
import { personName, thingName } from './names.ts';
import { type Definition, type Frame, fileInfo, leftOutOf } from './paper.ts';
import { printable } from './printable.ts';
import { happenedText } from './run-sheet/moments.ts';
import { standingText } from './standing.ts';

/** Points: a quarter of A4, upright. */
const tag = { width: 297.64, height: 419.53, side: 20 } as const;
const tagWidth = tag.width - 2 * tag.side;
/** More desks than this have their end marks at the end of the tag. */
const mostAtFoot = 3;
/** Letters of the site's name that fit beside the tag's own. */
const siteLetters = 36;

const siteText = (site: string): string => {
  const text = site.replace(/\s+/g, ' ').trim();
  return text.length > siteLetters ? `${text.slice(0, siteLetters - 1)}…` : text;
};

/** The code with its quiet zone. */
const qrWidth = 100;
/** For the names of what is told. */
const nameWidth = 36;

const line = (y: number, lineWidth: number): Content => ({
  canvas: [{ type: 'line', x1: 0, y1: y, x2: tagWidth, y2: y, lineWidth, lineColor: ink }],
});

/** Between the two halves of a line. */
const gap = 10;
const half = (tagWidth - gap) / 2;

/** Names and texts, two pairs to a line; `amounts` are set to the right of their half. */
function pairs(cells: readonly (readonly [string, string])[], left: number, amounts = false): Content {
  const cell = ([name, text]: readonly [string, string]): TableCell[] => [
    { text: name, ...(amounts ? {} : { fontSize: 7 }) },
    { text, bold: true, ...(amounts ? { alignment: 'right' as const } : {}) },
  ];
  const body: TableCell[][] = [];
  for (let i = 0; i < cells.length; i += 2)
    body.push([...cell(cells[i] ?? ['', '']), { text: '' }, ...cell(cells[i + 1] ?? ['', ''])]);
  const widths = [left, half - left];
  return {
    table: { widths: [...widths, gap, ...widths], body, dontBreakRows: true },
    layout: {
      hLineWidth: () => 0.4,
      vLineWidth: () => 0,
      paddingLeft: () => 0,
      paddingRight: () => 0,
      paddingTop: () => 1.2,
      paddingBottom: () => 1.2,
    },
    margin: [0, 1, 0, 3],
  };
}

/** The caution: a heavy frame that any light and any printer shows. */
const caution: Content = {
  table: {
    widths: [tagWidth - 18.4],
    body: [
      [
        {
          stack: [
            { text: words.holdsMercury, fontSize: 21, bold: true, alignment: 'center' },
            { text: words.holdsSays, fontSize: 7.5, alignment: 'center' },
            { text: words.first, fontSize: 7.5, bold: true, alignment: 'center' },
          ],
        },
      ],
    ],
  },
  layout: {
    hLineWidth: () => 2.4,
    vLineWidth: () => 2.4,
    paddingLeft: () => 6.8,
    paddingRight: () => 6.8,
    paddingTop: () => 3,
    paddingBottom: () => 5,
  },
  margin: [0, 2, 0, 4],
};

function lotLines(charge: Charge): Content[] {
  const lots = charge.rows.map((row): [string, string] => [
    row.label,
    row.charged ? withGrams(row.charged.grams) : words.notFound,
  ]);
  const others = charge.others.map((other): [string, string] => [other.label, withGrams(other.weighed.grams)]);
  const all = [...lots, ...others];
  if (all.length === 0) return [{ text: words.nothing }];
  return [{ text: words.lots, fontSize: 7, margin: [0, 1, 0, 0] }, pairs(all, half - 55, true)];
}

function stateText(charge: Charge): string {
  const last = charge.firings.at(-1);
  return last ? words.fired(dayText(firedAt(last))) : words.notFired;
}

/** The tag of a charge. Problems: `paper-no-such` where the book has no such charge, `paper-not-understood` as everywhere. */
export function retortTag(book: Book, id: string, frame: Frame): Result<Definition> {
  const charge = book.charges.all.get(id);
  if (!charge) return bad(problem('paper-no-such', 'id', { wanted: 'charge', id }));
  const made = once(charge.rows.flatMap(({ lot }) => (lot ? [lot.madeBy, lot.id] : [])));
  const unread = notUnderstoodNaming(book, [id, ...made]);
  if (unread) return bad(problem('paper-not-understood', 'id', { kind: unread.kind, entry: unread.id }));
  const { reading, total, retort, holds } = charge;
  const at = reading.happened;
  const readings = [
    reading,
    ...(runOf(book, id)?.charges ?? []).flatMap((c) => (c.id === id ? c.firings.map((f) => f.reading) : [])),
  ];
  const reservations = [...leftOutOf(frame), ...doubtsOf(book, readings).reservations];
  const subject = words.subject(thingName(book, 'retort', retort, at), dayText(at));
  const drawn = <C extends Content>(content: C): C => printable(content, frame.canPrint);
  const standing: Content = {
    text: standingText(book, at)
      .map(([name, text]) => `${name}: ${text}${text.endsWith('.') ? '' : '.'}`)
      .join(' '),
    fontSize: 6.5,
  };
  const marks = frame.desks.flatMap((d) =>
    [`${words.desk(d.desk, d.entries)} ${endMarkText(d.endMark)}`, ...keyLines(d)].map((text) => ({ text, fontSize: 5.4 })),
  );
  const atFoot = frame.desks.length <= mostAtFoot;
  return good({
    pageSize: { width: tag.width, height: tag.height },
    pageMargins: [tag.side, 34, tag.side, atFoot ? 24 + 16 * marks.length : 34],
    language: 'en-GB',
    info: fileInfo(frame, { name: words.name, subject }),
    displayTitle: true,
    defaultStyle: { font: 'SourceSans3', fontSize: 9, lineHeight: 1.04, color: ink },
    header: (n, of) =>
      drawn({
        margin: [tag.side, 14, tag.side, 0],
        stack: [
          {
            columns: [
              { text: siteText(frame.site), bold: true, width: tagWidth - 100 },
              { text: `${words.name} · ${frameWords.page(n, of)}`, alignment: 'right', width: 100 },
            ],
            fontSize: 7.5,
          },
          line(2, 0.9),
        ],
      }),
    footer: () =>
      drawn({
        margin: [tag.side, 0, tag.side, 0],
        fontSize: 5.4,
        stack: [
          line(0, 0.4),
          { text: words.isNot, margin: [0, 2, 0, 0] },
          ...(atFoot ? marks : [{ text: frameWords.endMarksBehind(frame.desks.length) }]),
        ],
      }),
    content: drawn([
      caution,
      ...(reservations.length > 0
        ? [
            { text: words.reservations, fontSize: 7.5, bold: true },
            ...reservations.map((text) => ({ text: `– ${text}`, fontSize: 7.5 })),
          ]
        : []),
      pairs(
        [
          [words.retort, thingName(book, 'retort', retort, at)],
          [words.charged, happenedText(reading)],
          [
            words.weight,
            `${withGrams(total.grams)}, ${uText(total.net, total.uKnown)}${total.uKnown ? `\u00a0${massUnit()}` : ''}`,
          ],
          [words.holds, words.holdsWords[holds]],
          [words.by, personName(book, reading.entry.by, at)],
          [words.state, stateText(charge)],
        ],
        nameWidth,
      ),
      ...lotLines(charge),
      {
        columns: [
          {
            width: tagWidth - qrWidth,
            stack: [
              { text: words.standing, fontSize: 7.5, bold: true },
              standing,
              { text: words.filed(id), fontSize: 7, italics: true, margin: [0, 3, 0, 0] },
              { text: words.code, fontSize: 7 },
            ],
          },
          { width: qrWidth, stack: [entryQr(id)], alignment: 'right' },
        ],
      },
      ...(atFoot ? [] : marks),
    ]),
  });
}
