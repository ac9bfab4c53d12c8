/**
 * Labels for lots in the safe and for vessels of mercury: in large type what it is and what it is called, then mass, date and caution, with the QR code
 * of its entry. Two to a row, each in a frame to cut along. They repeat what was entered, and permit nothing.
 */

import type { Content, TableCell } from 'pdfmake/interfaces';
import type { Book } from '../core/book/book.ts';
import { countListOf } from '../core/book/count-list.ts';
import type { Lot } from '../core/book/lots.ts';
import { stocksAt } from '../core/book/movements/gathering.ts';
import { placeParts, vesselPlace } from '../core/book/places.ts';
import { stateAt } from '../core/book/registers.ts';
import { sealAt } from '../core/book/seals.ts';
import type { Measured } from '../core/measured.ts';
import { bad, good, problem, type Result } from '../core/result.ts';
import { dayText } from '../words/dates.ts';
import { massUnit } from '../words/figures.ts';
import { mercuryNames, vesselUseNames } from '../words/labels.ts';
import { frameWords } from '../words/papers.ts';
import { labelsPaper as words } from '../words/papers-labels.ts';
import { lotSourceNames, lotStateNames } from '../words/retort.ts';
import { ugText, uText, withGrams } from './amounts.ts';
import { bookReservations, notUnderstoodNaming, once } from './doubts.ts';
import { endMarkText, keyLines } from './end-mark.ts';
import { entryQr } from './entry-qr.ts';
import { ink } from './ledger.ts';
import { type Definition, type Frame, fileInfo, leftOutOf } from './paper.ts';
import { printable } from './printable.ts';

const sheet = { width: 595.28, height: 841.89, side: 28 } as const;
const frameLine = 1.6;
const inset = 8;
const gap = 12;
const labelWidth = (sheet.width - 2 * sheet.side - gap) / 2;
const inner = labelWidth - 2 * inset - 2 * frameLine;
/** The code with its quiet zone, and a little more for longer ids. */
const qrWidth = 100;
/** More desks than this have their end marks after the labels. */
const mostAtFoot = 3;

interface Label {
  readonly what: string;
  readonly name: string;
  readonly entry: string;
  readonly caution: string;
  readonly facts: readonly (readonly [name: string, text: string])[];
}

const told = (name: string, text: string | null | undefined): [string, string][] => (text ? [[name, text]] : []);

const ofLot = (lot: Lot): Label => ({
  what: words.lot,
  name: lot.label,
  entry: lot.madeBy,
  caution: words.holdsMercury,
  facts: [
    [words.weighed, `${withGrams(lot.grams)}, ${uText(lot.net, lot.uKnown)}${lot.uKnown ? `\u00a0${massUnit()}` : ''}`],
    [words.made, dayText(lot.made)],
    ...told(words.state, lot.state && lotStateNames[lot.state]),
    ...told(words.source, lot.source && lotSourceNames[lot.source]),
    ...told(words.seal, lot.seal),
  ],
});

function ofVessel(book: Book, id: string, at: string, stocks: ReadonlyMap<string, Measured>): Label[] {
  const thing = book.registers.vessel.get(id);
  if (!thing) return [];
  const { label, use, mercury, place } = stateAt(thing, at).body;
  const ug = Math.round(stocks.get(vesselPlace(id))?.ug ?? 0);
  return [
    {
      what: vesselUseNames[use],
      name: label,
      entry: id,
      caution: ug > 0 ? words.holdsMercury : words.mayHold,
      facts: [
        [words.mercury, ug > 0 ? `${ugText(ug, 1)}\u00a0${massUnit()}` : words.none],
        [words.asOf(dayText(at)), ''],
        ...told(words.sort, mercury && mercuryNames[mercury]),
        ...told(words.seal, sealAt(book, id, at)),
        ...told(words.place, place),
      ],
    },
  ];
}

/** Long names in smaller type, so that a label stays a label. */
const nameSize = ({ length }: string): number => (length > 60 ? 10 : length > 18 ? 14 : 22);

const drawnLabel = (label: Label): TableCell => ({
  stack: [
    { text: label.what, fontSize: 10 },
    { text: label.name, fontSize: nameSize(label.name), bold: true, lineHeight: 1 },
    { text: label.caution, fontSize: 17, bold: true, margin: [0, 2, 0, 0] },
    { text: words.says, fontSize: 7.5 },
    {
      columns: [
        {
          width: inner - qrWidth,
          stack: label.facts.map(
            ([name, text]): Content => ({
              text: [
                { text: `${name}  `, fontSize: 7.5 },
                { text, bold: true },
              ],
              fontSize: 9.5,
              margin: [0, 1.5, 0, 0],
            }),
          ),
        },
        { width: qrWidth, stack: [entryQr(label.entry)], alignment: 'right' },
      ],
      // the gap between two labels would come down to here
      columnGap: 0,
      margin: [0, 3, 0, 0],
    },
    { text: words.code, fontSize: 6.5 },
  ],
});

const framed = (label: Label): Content => ({
  table: { widths: [inner], body: [[drawnLabel(label)]], dontBreakRows: true },
  layout: {
    hLineWidth: () => frameLine,
    vLineWidth: () => frameLine,
    paddingLeft: () => inset,
    paddingRight: () => inset,
    paddingTop: () => 5,
    paddingBottom: () => 5,
  },
});

const inTwos = (labels: readonly Label[]): Content[] =>
  labels.flatMap((label, i): Content[] => {
    if (i % 2 === 1) return [];
    const next = labels[i + 1];
    return [
      {
        columns: [
          { width: labelWidth, stack: [framed(label)] },
          { width: labelWidth, stack: next ? [framed(next)] : [] },
        ],
        columnGap: gap,
        unbreakable: true,
        margin: [0, 0, 0, 10],
      },
    ];
  });

interface Chosen {
  readonly subject: string;
  readonly lots: readonly Lot[];
  readonly vessels: readonly string[];
}

function chosenOf(book: Book, id: string, at: string): Chosen | null {
  const lots = [...book.lots.all.values()].filter((lot) => lot.fate === 'in-safe');
  const vessels = () =>
    countListOf(book, at).flatMap(({ place }) => {
      const { kind, of } = placeParts(place);
      return kind === 'vessel' ? [of] : [];
    });
  if (id === '') return { subject: words.all, lots, vessels: vessels() };
  if (id === 'lots') return { subject: words.lots, lots, vessels: [] };
  if (id === 'vessels') return { subject: words.vessels, lots: [], vessels: vessels() };
  const lot = lots.find((one) => one.id === id);
  if (lot) return { subject: lot.label, lots: [lot], vessels: [] };
  const thing = book.registers.vessel.get(id);
  return thing ? { subject: stateAt(thing, at).body.label, lots: [], vessels: [id] } : null;
}

/**
 * Labels of one lot in the safe or one vessel (`id`), of all `lots`, all `vessels`, or both (empty). Problems: `paper-no-such`, `paper-not-understood`
 * where a newer program wrote of one of them.
 */
export function labels(book: Book, id: string, frame: Frame): Result<Definition> {
  const at = frame.newest;
  const chosen = chosenOf(book, id, at);
  if (!chosen) return bad(problem('paper-no-such', 'id', { wanted: 'label', id }));
  const about = once([...chosen.lots.flatMap((lot) => [lot.id, lot.madeBy]), ...chosen.vessels]);
  const unread = notUnderstoodNaming(book, about);
  if (unread) return bad(problem('paper-not-understood', 'id', { kind: unread.kind, entry: unread.id }));
  const stocks: ReadonlyMap<string, Measured> = chosen.vessels.length > 0 ? stocksAt(book.movements.all, at) : new Map();
  const all = [...chosen.lots.map(ofLot), ...chosen.vessels.flatMap((vessel) => ofVessel(book, vessel, at, stocks))];
  const reservations = [...leftOutOf(frame), ...bookReservations(book)];
  const marks = frame.desks.flatMap((d) =>
    [`${frameWords.desk(d.desk, d.entries)} ${endMarkText(d.endMark)}`, ...keyLines(d)].map((text) => ({ text })),
  );
  const atFoot = frame.desks.length <= mostAtFoot;
  const drawn = <C extends Content>(content: C): C => printable(content, frame.canPrint);
  return good({
    pageSize: 'A4',
    pageMargins: [sheet.side, 52, sheet.side, atFoot ? 34 + 9 * marks.length : 40],
    language: 'en-GB',
    info: fileInfo(frame, { name: words.name, subject: chosen.subject }),
    displayTitle: true,
    defaultStyle: { font: 'SourceSans3', fontSize: 9, lineHeight: 1.04, color: ink },
    header: (n, of) =>
      drawn({
        margin: [sheet.side, 22, sheet.side, 0],
        fontSize: 8,
        columns: [
          { text: frame.site.replace(/\s+/g, ' ').trim().slice(0, 60), bold: true },
          { text: `${words.name} · ${frameWords.page(n, of)}`, alignment: 'right', width: 120 },
        ],
      }),
    footer: () =>
      drawn({
        margin: [sheet.side, 2, sheet.side, 0],
        fontSize: 6.2,
        stack: [{ text: frameWords.isNot }, ...(atFoot ? marks : [{ text: frameWords.endMarksBehind(frame.desks.length) }])],
      }),
    content: drawn([
      { text: words.cut, fontSize: 8, margin: [0, 0, 0, 6] },
      ...reservations.map((text) => ({ text: `– ${text}`, fontSize: 8 })),
      ...(all.length > 0 ? inTwos(all) : [{ text: words.nothing }]),
      ...(atFoot ? [] : marks.map((mark) => ({ ...mark, fontSize: 6.2 }))),
    ]),
  });
}
