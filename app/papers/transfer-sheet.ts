/**
 * The transfer sheet: what moved, between whom and under which papers, both sides' weights beside each other with their difference, and a list of
 * who decides what. It declares nothing and permits nothing: whether a thing may travel is for carrier, authority and receiver to say.
 */
import type { Content } from 'pdfmake/interfaces';
import type { Book } from '../core/book/book.ts';
import type { Reading } from '../core/book/current.ts';
import { vesselPlace } from '../core/book/places.ts';
import { bad, good, problem, type Result } from '../core/result.ts';
import { dayText } from '../words/dates.ts';
import { entryName, nameIn } from '../words/daybook-naming.ts';
import { notRecorded, runSheet } from '../words/papers.ts';
import { commonWords } from '../words/papers-common.ts';
import { transferPaper as words } from '../words/papers-transfer.ts';
import { placeText } from '../words/places.ts';
import { doubtsOf, notUnderstoodNaming } from './doubts.ts';
import { aside, facts, ledger, list, section, sentence, together } from './ledger.ts';
import { personName, thingName } from './names.ts';
import { type Definition, type Frame, paper } from './paper.ts';
import { changesOf } from './run-sheet/changes.ts';
import { happenedText } from './run-sheet/moments.ts';
import { readingsTable } from './run-sheet/readings.ts';
import { keptWith, witnessText } from './run-sheet/went-in.ts';
import { standingText } from './standing.ts';
import { mercuryIn, sideBySide } from './transfer-sheet/weights.ts';
import { weighingsOf } from './weighings.ts';

type Transfer = Reading<'transfer'>;

/** What of the book it takes along, by name. */
function thingText(book: Book, { body, happened }: Transfer): string {
  if (body.lot !== undefined) return placeText(book, `lot:${body.lot}`);
  if (body.charge !== undefined) return commonWords.small(entryName(book, body.charge));
  if (body.bar !== undefined) return nameIn(book, 'bar', body.bar, happened);
  if (body.plate !== undefined) return thingName(book, 'plate', body.plate, happened);
  return body.vessel === undefined ? words.noThing : placeText(book, vesselPlace(body.vessel));
}

function particulars(book: Book, reading: Transfer): Content[] {
  const { body, entry, happened } = reading;
  const kept = keptWith(entry);
  return together([
    section(words.moved),
    ...facts([
      [words.what, words.things[body.what]],
      [words.thing, thingText(book, reading)],
      [words.way, words.wayTexts[body.way]],
      [words.party, body.party],
      [words.day, happenedText(reading)],
      [words.purpose, body.purpose ?? notRecorded],
      [words.document, body.document ?? notRecorded],
      [words.theirDocument, body.theirs?.document ?? notRecorded],
      [words.carrier, body.carrier ?? notRecorded],
      [words.seal, body.seal ?? notRecorded],
      [words.by, personName(book, entry.by, happened)],
      [words.witness, witnessText(book, entry, happened)],
      ...(body.counts === undefined ? [] : [[words.counts, words.countsTexts[body.counts]] as const]),
      ...(body.note === undefined ? [] : [[words.note, body.note] as const]),
      ...(kept === '' ? [] : [[words.papersKept, kept] as const]),
    ]),
  ]);
}

const decisions = (): Content[] => [
  section(words.decides),
  sentence(words.decidesNote),
  ...ledger(
    [
      { head: words.question, share: 42 },
      { head: words.whom, share: 24 },
      { head: words.reference, share: 34 },
    ],
    words.questions.map(([question, whom]) => ({ cells: [question, whom, ''], tall: true })),
  ),
];

const hands = (): Content[] =>
  together([
    section(words.handed),
    aside(words.handedNote),
    ...ledger(
      [
        { head: words.role, share: 22 },
        { head: words.name2, share: 36 },
        { head: words.signature, share: 42 },
      ],
      words.roles.map((role) => ({ cells: [role, '', ''], tall: true })),
    ),
  ]);

/** The sheet of a transfer. Problems: `paper-no-such` where the book has no such transfer or it was struck, `paper-not-understood`. */
export function transferSheet(book: Book, id: string, frame: Frame): Result<Definition> {
  const reading = book.current.of('transfer').find((transfer) => transfer.id === id);
  if (!reading) return bad(problem('paper-no-such', 'id', { wanted: 'transfer', id }));
  const { body, happened } = reading;
  const unread = notUnderstoodNaming(book, [
    id,
    ...[body.vessel, body.lot, body.charge, body.plate].filter((x) => x !== undefined),
  ]);
  if (unread) return bad(problem('paper-not-understood', 'id', { kind: unread.kind, entry: unread.id }));
  const { reservations, remarks } = doubtsOf(book, [reading]);
  return good(
    paper(frame, {
      name: words.name,
      subject: words.subject(words.things[body.what], words.ways[body.way], body.party, dayText(happened)),
      number: words.number(id),
      standing: standingText(book, happened),
      reservations,
      body: [
        ...particulars(book, reading),
        ...sideBySide(book, reading),
        ...mercuryIn(book, reading),
        ...decisions(),
        ...hands(),
        section(commonWords.remarks),
        ...(remarks.length > 0 ? list(remarks) : [sentence(runSheet.noRemarks)]),
        ...changesOf(book, [reading], [], commonWords.noChanges),
        ...(body.weight || body.theirs ? readingsTable(book, weighingsOf(book, reading)) : []),
      ],
    }),
  );
}
