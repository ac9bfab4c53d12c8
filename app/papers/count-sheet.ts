/**
 * The count sheet: a blank form for a stock-take with a pencil, listing the same places in the same order as the page. What the book says is not on
 * it: whoever counts is not led by it.
 */
import type { Content } from 'pdfmake/interfaces';
import type { Period } from '../core/book/account.ts';
import type { Book } from '../core/book/book.ts';
import { type CountGroup, countGroups, countListOf } from '../core/book/count-list.ts';
import { bad, good, problem, type Result } from '../core/result.ts';
import { dayText } from '../words/dates.ts';
import { countPaper as words } from '../words/papers-count.ts';
import { placeNames } from '../words/places.ts';
import { aside, type Column, facts, ledger, list, section, sentence, together } from './ledger.ts';
import { periodWords, unreadUpTo } from './mercury-account.ts';
import { type Definition, type Frame, paper } from './paper.ts';
import { serialOf } from './serial.ts';
import { standingText } from './standing.ts';

const place: Column = { head: words.place, share: 24 };
const why: Column = { head: words.why, share: 21 };
const lost: Column = { head: words.notFound, share: 8 };
const seal: Column = { head: words.sealRead, share: 15 };
const broken: Column = { head: words.broken, share: 8 };
const gross: Column = { head: words.gross, share: 12 };
const tare: Column = { head: words.tare, share: 12 };
const untouched: Column = { head: words.untouched, share: 10 };
const estimate: Column = { head: words.estimate, share: 15 };
const method: Column = { head: words.method, share: 17 };

const columns: Readonly<Record<CountGroup, readonly Column[]>> = {
  sealed: [place, seal, broken, gross, tare, lost, why],
  working: [place, gross, tare, lost, why],
  lots: [place, untouched, gross, tare, lost, why],
  'in-hand': [place, untouched, estimate, method, lost, why],
  residues: [place, untouched, estimate, method, lost, why],
  drums: [place, seal, broken, estimate, method, lost, why],
  circuit: [place, estimate, method, why],
};
const ticked: ReadonlySet<Column> = new Set([broken, lost, untouched]);

function groupTable(group: CountGroup, names: readonly string[]): Content[] {
  const own = columns[group];
  return [
    section(words.groups[group]),
    ...ledger(
      own,
      names.map((name) => ({
        cells: own.map((column) => (column === place ? name : ticked.has(column) ? words.box : '')),
        tall: true,
      })),
    ),
  ];
}

const hands = (): Content[] =>
  together([
    section(words.signatures),
    aside(words.signaturesNote),
    ...ledger(
      [
        { head: words.role, share: 26 },
        { head: words.nameOf, share: 32 },
        { head: words.signature, share: 42 },
      ],
      words.roles.map((role) => ({ cells: [role, '', ''], tall: true })),
    ),
  ]);

/** The blank sheet of all places to be answered at the end of a day. Problems: `paper-not-understood` as for the account. */
export function countSheet(book: Book, period: Period, frame: Frame): Result<Definition> {
  const unread = unreadUpTo(book, period);
  if (unread) return bad(problem('paper-not-understood', 'id', { kind: unread.kind, entry: unread.id }));
  const { end, to } = periodWords(book, period);
  const at = end === '' ? frame.newest : end;
  const places = countListOf(book, at);
  const names = placeNames(
    book,
    places.map((p) => p.place),
  );
  const rows = countGroups.flatMap((group) => {
    const own = places.filter((p) => p.group === group).map((p) => names.get(p.place) ?? p.place);
    return own.length > 0 ? groupTable(group, own) : [];
  });
  return good(
    paper(frame, {
      name: words.name,
      subject: words.subject(to === '' ? dayText(at) : to),
      number: words.number(serialOf(frame)),
      standing: standingText(book, at),
      reservations: [],
      body: [
        section(words.how),
        ...list(words.howTo),
        ...facts([
          [words.when, ''],
          [words.who, ''],
          [words.scale, ''],
          [words.witness, ''],
        ]),
        ...(rows.length > 0 ? rows : [sentence(words.nothing)]),
        section(words.others),
        aside(words.othersNote),
        ...ledger(
          [
            { head: words.what, share: 46 },
            { head: words.gross, share: 14 },
            { head: words.tare, share: 14 },
            { head: words.into, share: 26 },
          ],
          [0, 1, 2].map(() => ({ cells: ['', '', '', ''], tall: true })),
        ),
        ...hands(),
      ],
    }),
  );
}
