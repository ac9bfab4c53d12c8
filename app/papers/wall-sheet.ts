/**
 * The sheet that hangs on the wall: what is done at a spill, what is never done, first aid, the site's numbers and its stop rules. One page in large type,
 * black on white, read from where somebody stands. What the site did not enter stays an open line. It permits nothing. Source: safety.md 5.3, 5.6, 5.7.
 */
import type { Content, TableCell } from 'pdfmake/interfaces';
import type { Book } from '../core/book/book.ts';
import { numbersAt, numbersMissing, stopRulesAt } from '../core/book/site-says.ts';
import { good, type Result } from '../core/result.ts';
import { numberUseNames, stopThingNames } from '../words/daybook-names-site.ts';
import { frameWords } from '../words/papers.ts';
import { wallPaper as words } from '../words/papers-wall.ts';
import { spillWords as spill } from '../words/spill.ts';
import { bookReservations } from './doubts.ts';
import { endMarkText, keyLines } from './end-mark.ts';
import { ink } from './ledger.ts';
import { type Definition, type Frame, fileInfo, leftOutOf } from './paper.ts';
import { printable } from './printable.ts';
import { serialOf } from './serial.ts';
import { standingText } from './standing.ts';

const sheet = { width: 595.28, height: 841.89, side: 34, top: 26, bottom: 22 } as const;
const width = sheet.width - 2 * sheet.side;
/** Letters of numbers and stop rules that the page holds in its largest type; more than that, and the type is a little smaller. */
const room = 560;
/** Smallest type a wall sheet may shrink to, as a share of the largest. */
const least = 0.78;

type Line = readonly [name: string, text: string];

/** The site's numbers as entered, then a line to fill for each that is wanted and was not. */
function numbersOf(book: Book, at: string): { readonly lines: readonly Line[]; readonly missing: boolean } {
  const entered = numbersAt(book.current, at)?.body.numbers ?? [];
  const missing = numbersMissing(book.current, at);
  return {
    lines: [
      ...entered.map(
        (n): Line => [n.name === undefined ? numberUseNames[n.for] : `${numberUseNames[n.for]}, ${n.name}`, n.number],
      ),
      ...missing.map((use): Line => [numberUseNames[use], words.noNumber]),
    ],
    missing: missing.length > 0,
  };
}

const rulesOf = (book: Book, at: string): readonly string[] =>
  (stopRulesAt(book.current, at)?.body.rules ?? []).map((rule) =>
    words.says(stopThingNames[rule.of], rule.act === undefined ? rule.when : words.says(rule.when, rule.act)),
  );

/** Type of a size, on a sheet that has to shrink by `by`. */
const sized = (by: number) => (points: number) => Math.round(points * by * 10) / 10;

/** A heavy frame, seen in any light and from any printer. */
const boxed = (stack: Content[]): Content => ({
  table: { widths: [width - 19], body: [[{ stack }]] },
  layout: {
    hLineWidth: () => 3,
    vLineWidth: () => 3,
    paddingLeft: () => 8,
    paddingRight: () => 8,
    paddingTop: () => 3,
    paddingBottom: () => 5,
  },
  margin: [0, 3, 0, 5],
});

/** Texts under each other with a number or dash before them. */
const rows = (items: readonly string[], size: number, mark: (i: number) => string): Content => ({
  table: {
    widths: [18, width - 18],
    body: items.map((text, i): TableCell[] => [
      { text: mark(i), bold: true, fontSize: size },
      { text, fontSize: size },
    ]),
  },
  layout: {
    hLineWidth: () => 0,
    vLineWidth: () => 0,
    paddingLeft: () => 0,
    paddingRight: () => 0,
    paddingTop: () => 0.8,
    paddingBottom: () => 0.8,
  },
});

const telephone = (lines: readonly Line[], size: number): Content => ({
  table: {
    widths: [width * 0.5 - 4, width * 0.5 - 4],
    dontBreakRows: true,
    body: lines.map(([name, text]): TableCell[] => [
      { text: name, fontSize: size, margin: [0, 1, 0, 0] },
      { text, fontSize: size + 3, bold: true },
    ]),
  },
  layout: {
    hLineWidth: () => 0.8,
    vLineWidth: () => 0,
    paddingLeft: () => 2,
    paddingRight: () => 2,
    paddingTop: () => 1.5,
    paddingBottom: () => 1.5,
  },
  margin: [0, 1, 0, 2],
});

/** The sheet as of the newest entry. It always prints: what a newer program wrote is told on it. */
export function wallSheet(book: Book, frame: Frame): Result<Definition> {
  const at = frame.newest;
  const { lines, missing } = numbersOf(book, at);
  const rules = rulesOf(book, at);
  const letters = [...lines.flat(), ...rules].join('').length;
  const size = sized(Math.max(least, Math.min(1, 1 - (letters - room) / 3000)));
  const head = (text: string): Content => ({ text, fontSize: size(14), bold: true, margin: [0, 4, 0, 1] });
  const dash = () => '–';
  const told = [
    ...leftOutOf(frame),
    ...bookReservations(book),
    ...standingText(book, at).map(([name, text]) => words.says(name, text)),
    frameWords.isNot,
    ...frame.desks.map(
      (d) => `${[`${frameWords.desk(d.desk, d.entries)} ${endMarkText(d.endMark)}`, ...keyLines(d)].join(', ')}.`,
    ),
  ].map((text) => (/[.!?]$/.test(text) ? text : `${text}.`));
  const content: Content[] = [
    { text: frame.site.replace(/\s+/g, ' ').trim(), fontSize: 10, margin: [0, 0, 0, 0] },
    { text: words.title, fontSize: size(28), bold: true, lineHeight: 1 },
    { text: spill.defers, fontSize: size(11.5), bold: true },
    boxed([
      { text: `${spill.never}.`, fontSize: size(22), bold: true, lineHeight: 1 },
      { text: spill.neverSays, fontSize: size(12) },
    ]),
    rows(spill.stepList, size(12.2), (i) => `${i + 1}.`),
    { text: [{ text: `${spill.hot}. `, bold: true }, spill.hotSays], fontSize: size(12.2), margin: [0, 3, 0, 0] },
    head(spill.numbers),
    telephone(lines, size(12)),
    ...(missing ? [{ text: words.fillByHand, fontSize: 8.5, italics: true }] : []),
    head(spill.firstAid),
    { text: spill.firstAidDefers, fontSize: size(9.5), italics: true },
    rows(spill.firstAidList, size(11.2), dash),
    head(words.stop),
    rules.length > 0 ? rows(rules, size(11.2), dash) : { text: words.noStop, fontSize: size(11.2) },
    { text: words.always, fontSize: size(10), margin: [0, 2, 0, 0] },
    {
      text: `${words.printed(serialOf(frame))} ${spill.general} ${told.join(' ')}`,
      fontSize: 5.6,
      margin: [0, 5, 0, 0],
    },
  ];
  return good({
    pageSize: 'A4',
    pageMargins: [sheet.side, sheet.top, sheet.side, sheet.bottom],
    language: 'en-GB',
    info: fileInfo(frame, { name: words.name, subject: words.title }),
    displayTitle: true,
    defaultStyle: { font: 'SourceSans3', fontSize: 11, lineHeight: 1.02, color: ink },
    content: printable(content, frame.canPrint),
  });
}
