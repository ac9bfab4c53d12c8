/**
 * The sheet of an open day: visitors by count and never by name, where they were, what was covered, what was asked and answered, and the air of places
 * of visitors against figures for the public only. It says of no place that visitors may go there. Source: safety.md 2.2, 7 (item 6).
 */
import type { Content } from 'pdfmake/interfaces';
import { airDays } from '../core/book/air-days.ts';
import type { Book } from '../core/book/book.ts';
import type { Reading } from '../core/book/current.ts';
import { bad, good, problem, type Result } from '../core/result.ts';
import { dayOf } from '../core/time.ts';
import { askedAt, askedText } from '../words/asked-checks.ts';
import { dayText } from '../words/dates.ts';
import { notRecorded, runSheet } from '../words/papers.ts';
import { commonWords } from '../words/papers-common.ts';
import { openDayPaper as words } from '../words/visitors.ts';
import { workCautions } from '../words/work-cautions.ts';
import { airDayPassage, rowsOf } from './air-record/day.ts';
import { metersTable, metersUsed } from './air-record/meters.ts';
import { doubtsOf, notUnderstoodNaming } from './doubts.ts';
import { aside, facts, ledger, list, section, sentence, small } from './ledger.ts';
import { personName } from './names.ts';
import { type Definition, type Frame, paper } from './paper.ts';
import { changesOf } from './run-sheet/changes.ts';
import { happenedText } from './run-sheet/moments.ts';
import { witnessText } from './run-sheet/went-in.ts';
import { signatures } from './signatures.ts';
import { standingText } from './standing.ts';

function particulars(book: Book, reading: Reading<'open-day'>): Content[] {
  const { body, entry, happened } = reading;
  return [
    section(words.facts),
    ...facts([
      [words.day, happenedText(reading)],
      [words.visitors, String(body.visitors)],
      [words.children, body.children === undefined ? notRecorded : String(body.children)],
      [words.areas, body.areas],
      [words.covered, body.covered ?? notRecorded],
      [words.guides, (body.guides ?? []).map((id) => personName(book, id, happened)).join(', ') || notRecorded],
      [words.by, personName(book, entry.by, happened)],
      [words.witness, witnessText(book, entry, happened)],
      ...(body.note === undefined ? [] : [[words.note, body.note] as const]),
    ]),
  ];
}

function asked(book: Book, { body, happened }: Reading<'open-day'>): Content[] {
  const answers = body.checks ?? [];
  const open = askedAt(book.current, 'visitors', happened).questions.filter((q) => !answers.some((a) => a.check === q.check));
  return [
    section(words.checks),
    aside(words.checksNote),
    ...(answers.length === 0
      ? []
      : ledger(
          [
            { head: words.question, share: 58 },
            { head: words.answer, share: 14 },
            { head: words.note, share: 28 },
          ],
          answers.map(({ check, answer, by, note }) => ({
            cells: [
              askedText(book.current, check, happened),
              words.answers[answer],
              [by === undefined ? '' : personName(book, by, happened), note ?? ''].filter((text) => text !== '').join(': '),
            ],
            strong: answer === 'no',
          })),
        )),
    ...(open.length > 0 ? [small(words.unanswered(open.map(({ asks }) => asks).join('; ')))] : []),
  ];
}

/** The sheet of an open day. Problems: `paper-no-such`, `paper-not-understood`. */
export function openDaySheet(book: Book, id: string, frame: Frame): Result<Definition> {
  const reading = book.current.of('open-day').find((r) => r.id === id);
  if (!reading) return bad(problem('paper-no-such', 'id', { wanted: 'open-day', id }));
  const { body, happened } = reading;
  const days = airDays(book).filter((d) => d.subject.sample === 'visitor-area' && d.day === dayOf(happened));
  const airReadings = days.flatMap((d) => rowsOf(d).map((r) => r.reading));
  const unread = notUnderstoodNaming(book, [id, ...airReadings.map((r) => r.id)]);
  if (unread) return bad(problem('paper-not-understood', 'id', { kind: unread.kind, entry: unread.id }));
  const readings = [reading, ...airReadings];
  const { reservations, remarks } = doubtsOf(book, readings);
  const meters = metersUsed(days);
  return good(
    paper(frame, {
      name: words.name,
      subject: words.subject(body.visitors, dayText(happened)),
      number: words.number(id),
      standing: standingText(book, happened),
      reservations,
      body: [
        ...particulars(book, reading),
        ...asked(book, reading),
        section(words.air),
        aside(words.airNote),
        ...(days.length === 0 ? [sentence(words.airNone)] : days.flatMap((day) => airDayPassage(book, day, frame, meters))),
        ...metersTable(book, days),
        section(words.cautions),
        ...list(workCautions.visitors),
        section(commonWords.remarks),
        ...(remarks.length > 0 ? list(remarks) : [sentence(runSheet.noRemarks)]),
        ...changesOf(book, readings, [], commonWords.noChanges),
        ...signatures(book, readings),
      ],
    }),
  );
}
