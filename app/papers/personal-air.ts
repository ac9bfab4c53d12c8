/**
 * What one person breathed: the days of readings at that person, each with its readings as shown, gaps, ranges and verdicts against limits for people at work.
 * It is printed when it is asked for by its own name and goes with no other paper; it says whom it is for, holds no result of a medical test and judges
 * nobody's health. Source: safety.md 4, 5.5; design.md 1.
 */
import { type AirDay, airDays } from '../core/book/air-days.ts';
import type { Book } from '../core/book/book.ts';
import { bad, good, problem, type Result } from '../core/result.ts';
import { dayText } from '../words/dates.ts';
import { runSheet } from '../words/papers.ts';
import { personalAirPaper as words } from '../words/papers-air.ts';
import { commonWords } from '../words/papers-common.ts';
import { airDayPassage, rowsOf } from './air-record/day.ts';
import { metersTable, metersUsed } from './air-record/meters.ts';
import { doubtsOf, notUnderstoodNaming } from './doubts.ts';
import { list, section, sentence } from './ledger.ts';
import { thingName } from './names.ts';
import { type Definition, type Frame, paper } from './paper.ts';
import { changesOf } from './run-sheet/changes.ts';
import { signatures } from './signatures.ts';
import { standingText } from './standing.ts';

/** The day that a reading at a person belongs to, or every day of a person. */
const daysAbout = (book: Book, id: string): readonly AirDay[] =>
  airDays(book).filter(
    (day) => day.subject.sample === 'personal' && (day.subject.of === id || rowsOf(day).some((row) => row.id === id)),
  );

/**
 * The record of a person, by the person's id, or of the day of one reading at a person. Problems: `paper-no-such` for anything else, a reading at a place
 * among it; `paper-not-understood`.
 */
export function personalAirRecord(book: Book, id: string, frame: Frame): Result<Definition> {
  const days = daysAbout(book, id);
  const [first] = days;
  if (!first) return bad(problem('paper-no-such', 'id', { wanted: 'personal-air', id }));
  const readings = days.flatMap((day) => rowsOf(day).map((row) => row.reading));
  const meters = metersUsed(days);
  const unread = notUnderstoodNaming(book, [id, first.subject.of, ...readings.map((r) => r.id), ...meters]);
  if (unread) return bad(problem('paper-not-understood', 'id', { kind: unread.kind, entry: unread.id }));
  const { reservations, remarks } = doubtsOf(book, readings);
  const person = thingName(book, 'person', first.subject.of, frame.newest);
  return good(
    paper(frame, {
      name: words.name,
      subject: days.length === 1 ? `${person}, ${dayText(first.day)}` : words.all(person, days.length),
      number: words.number(id),
      standing: standingText(book, days.at(-1)?.from ?? frame.newest),
      reservations: [words.whoFor, ...reservations],
      body: [
        ...days.flatMap((day) => airDayPassage(book, day, frame, meters)),
        ...metersTable(book, days),
        section(words.cautions),
        ...list(words.cautionList),
        section(commonWords.remarks),
        ...(remarks.length > 0 ? list(remarks) : [sentence(runSheet.noRemarks)]),
        ...changesOf(book, readings, [], commonWords.noChanges),
        ...signatures(book, readings),
      ],
    }),
  );
}
