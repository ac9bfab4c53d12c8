/**
 * The frame of every paper: the site and the paper's name at the head, the site's standing in words and the reservations before anything else,
 * and at the foot the end mark of every desk the paper covers, so that the paper can be held against the record later. It approves nothing and
 * says so. A pure function of what it is given: it asks no clock.
 */
import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces';
import { compareMoments, minutesOf } from '../core/time.ts';
import { momentText } from '../words/dates.ts';
import { frameWords } from '../words/papers.ts';
import { endMarkText, keyLines } from './end-mark.ts';
import { aside, ink, ledger, page, part, section, sentence, statements, textWidth } from './ledger.ts';
import { type CanPrint, printable, printableText } from './printable.ts';

/** What the paper machine draws. It is written to while it is drawn: make a fresh one for each print. */
export type Definition = TDocumentDefinitions;

/** One desk the paper covers, up to its end mark: the hash of its last entry, 64 characters. */
export interface CoveredDesk {
  readonly desk: string;
  readonly entries: number;
  readonly endMark: string;
  /** Fingerprint of the key it signs with, 64 characters, and how many entries its last signature covers. Left out: it has signed nothing. */
  readonly key?: string | undefined;
  readonly signed?: number | undefined;
  /** What of it does not count on the paper, in words: printed among the reservations. Left out: nothing. */
  readonly leftOut?: readonly string[] | undefined;
}

/** What surrounds a paper, whichever it is. */
export interface Frame {
  /** The daybook's name. */
  readonly site: string;
  readonly desks: readonly CoveredDesk[];
  /** When the newest entry it covers was written: a moment. It dates the file. */
  readonly newest: string;
  /** The program's version. */
  readonly version: string;
  readonly canPrint: CanPrint;
}

/** What a paper puts into the frame. */
export interface Leaf {
  readonly name: string;
  readonly subject: string;
  /** What it is filed under: the id of the run, bar, parcel. */
  readonly number: string;
  /** What the site states, by name. */
  readonly standing: readonly (readonly [name: string, text: string])[];
  /** True but awkward facts that touch it: printed first. */
  readonly reservations: readonly string[];
  readonly body: readonly Content[];
}

const siteWidth = textWidth - 150;
/** The widest letter of the heading's type, in points: even a name made of nothing else must find room, or no heading would be drawn. */
const widestLetter = 8.2;
const headLine = 11.4;
const headHeight = ({ site }: Frame): number =>
  56 + headLine * Math.max(0, Math.ceil((oneLine(site).length * widestLetter) / siteWidth) - 1);

const footSize = 6.6;
const footLine = 8.6;
/** More desks than this have their end marks in a table at the end of the paper. */
const mostInFoot = 4;
/** Headings of each level this far down a page go to the next one; a part may follow its section's heading. */
const tooLow: Readonly<Record<number, number>> = { 1: 0.82, 2: 0.9 };
const marginRule = '#a8503c';

/** The moment the newest of these entries was written. Empty only for no entries. */
export const newestOf = (entries: readonly { readonly written: string }[]): string =>
  entries.reduce((newest, { written }) => (newest === '' || compareMoments(written, newest) > 0 ? written : newest), '');

/** What of the desks does not count on the paper: before any other reservation. */
export const leftOutOf = ({ desks }: Frame): string[] => desks.flatMap((d) => d.leftOut ?? []);

const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();

const deskLines = ({ desks }: Frame): string[] =>
  desks.length > mostInFoot
    ? [frameWords.endMarksBehind(desks.length)]
    : desks.flatMap((d) => [`${frameWords.desk(d.desk, d.entries)} ${endMarkText(d.endMark)}`, ...keyLines(d)]);

const across = (y: number, lineWidth: number): Content => ({
  canvas: [{ type: 'line', x1: 0, y1: y, x2: textWidth, y2: y, lineWidth, lineColor: ink }],
});

const heading = (frame: Frame, leaf: Leaf, n: number, of: number): Content => ({
  margin: [page.left, 30, page.right, 0],
  stack: [
    {
      columns: [
        { text: oneLine(frame.site), bold: true, width: siteWidth },
        { text: `${leaf.name} · ${frameWords.page(n, of)}`, alignment: 'right', width: textWidth - siteWidth },
      ],
      fontSize: 8.5,
      margin: [0, 0, 0, 3],
    },
    across(0, 0.9),
    across(1.6, 0.4),
  ],
});

const foot = (frame: Frame): Content => ({
  margin: [page.left, 4, page.right, 0],
  fontSize: footSize,
  stack: [
    across(0, 0.4),
    { text: frameWords.isNot, margin: [0, 3, 0, 1] },
    {
      text: frameWords.covers(
        frame.desks.reduce((sum, d) => sum + d.entries, 0),
        momentText(frame.newest),
        frame.version,
      ),
    },
    ...deskLines(frame).map((text): Content => ({ text })),
  ],
});

const footHeight = (frame: Frame): number => 34 + footLine * (3 + deskLines(frame).length);

/** The double rule along the bound edge. */
const binding: Content = {
  canvas: [50, 52.6].map((x) => ({
    type: 'line',
    x1: x,
    y1: 24,
    x2: x,
    y2: page.height - 24,
    lineWidth: 0.5,
    lineColor: marginRule,
  })),
};

const opening = (leaf: Leaf, reservations: readonly string[]): Content[] => [
  { text: leaf.name, style: 'title' },
  { text: oneLine(leaf.subject), style: 'subject' },
  aside(leaf.number),
  section(frameWords.standing),
  ...statements(leaf.standing),
  section(frameWords.reservations),
  ...(reservations.length > 0
    ? statements(
        reservations.map((text, i) => [`${i + 1}.`, text]),
        5,
      )
    : [sentence(frameWords.noReservations)]),
];

const closing = (frame: Frame): Content[] =>
  frame.desks.length <= mostInFoot
    ? []
    : [
        part(frameWords.endMarks),
        ...ledger(
          [
            { head: frameWords.deskHead, share: 26 },
            { head: frameWords.entriesHead, share: 10, amount: true },
            { head: frameWords.endMarkHead, share: 64 },
          ],
          frame.desks.map((d) => ({ cells: [d.desk, String(d.entries), [endMarkText(d.endMark), ...keyLines(d)].join('; ')] })),
        ),
      ];

/** What the file says of itself: dated by the newest entry, by no clock. */
export function fileInfo(frame: Frame, leaf: Pick<Leaf, 'name' | 'subject'>): NonNullable<Definition['info']> {
  const dated = new Date((minutesOf(frame.newest) ?? 0) * 60_000);
  return {
    title: printableText(`${leaf.name}: ${oneLine(leaf.subject)}`, frame.canPrint),
    subject: printableText(oneLine(frame.site), frame.canPrint),
    creator: 'Retort Daybook',
    producer: 'Retort Daybook',
    creationDate: dated,
    modDate: dated,
  };
}

/** The whole paper. The same frame and leaf give the same bytes, on every machine and day. */
export function paper(frame: Frame, leaf: Leaf): Definition {
  const drawn = <C extends Content>(content: C): C => printable(content, frame.canPrint);
  // set here: the paper machine asks for it later, when the notation the paper is written in no longer stands
  const footOfAll = drawn(foot(frame));
  return {
    pageSize: 'A4',
    pageMargins: [page.left, headHeight(frame), page.right, footHeight(frame)],
    language: 'en-GB',
    info: fileInfo(frame, leaf),
    displayTitle: true,
    defaultStyle: { font: 'SourceSans3', fontSize: 9, lineHeight: 1.06, color: ink },
    styles: {
      title: { fontSize: 21, bold: true, margin: [0, 2, 0, 0] },
      subject: { fontSize: 12.5, margin: [0, 0, 0, 1] },
      section: { fontSize: 11.5, bold: true, margin: [0, 9, 0, 2] },
      part: { fontSize: 9.5, bold: true, margin: [0, 5, 0, 1] },
      aside: { fontSize: 8, italics: true, margin: [0, 1, 0, 5] },
    },
    background: () => structuredClone(binding),
    header: (n, of) => drawn(heading(frame, leaf, n, of)),
    footer: () => structuredClone(footOfAll),
    pageBreakBefore: (node) => node.startPosition.verticalRatio > (tooLow[node.headlineLevel ?? 0] ?? 1),
    content: drawn([...opening(leaf, [...leftOutOf(frame), ...leaf.reservations]), ...leaf.body, ...closing(frame)]),
  };
}
