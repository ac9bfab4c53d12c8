/**
 * The air record of a place's day, or of a run: readings as shown, gaps by name, ranges, and verdicts against limits the site picked and nothing else.
 * Readings at a person are on their own paper (personal-air.ts), and how many days were left out is said. It judges nobody and calls no air fit to breathe. Source: safety.md 4, 7.
 */
import { airDays, airDaysOfRun } from '../core/book/air-days.ts';
import { type Book, runOf } from '../core/book/book.ts';
import { bad, good, problem, type Result } from '../core/result.ts';
import { dayText } from '../words/dates.ts';
import { entryName } from '../words/daybook-naming.ts';
import { runSheet } from '../words/papers.ts';
import { airPaper as words } from '../words/papers-air.ts';
import { commonWords } from '../words/papers-common.ts';
import { airDayPassage, rowsOf } from './air-record/day.ts';
import { metersTable, metersUsed } from './air-record/meters.ts';
import { doubtsOf, notUnderstoodNaming } from './doubts.ts';
import { list, section, sentence } from './ledger.ts';
import { type Definition, type Frame, paper } from './paper.ts';
import { changesOf } from './run-sheet/changes.ts';
import { signatures } from './signatures.ts';
import { standingText } from './standing.ts';

/**
 * The record of the day that a reading belongs to, or of the run that a charge belongs to. Problems: `paper-no-such`, `paper-personal-air` for a reading
 * at a person, `paper-not-understood`.
 */
export function airRecord(book: Book, id: string, frame: Frame): Result<Definition> {
  const run = runOf(book, id);
  const reading = book.current.of('air-reading').find((r) => r.id === id);
  if (!run && !reading) return bad(problem('paper-no-such', 'id', { wanted: 'air', id }));
  if (reading?.body.sample === 'personal') return bad(problem('paper-personal-air', 'id', { id }));
  const charges = run?.charges.map((c) => c.id) ?? [];
  const all = run ? airDaysOfRun(book, charges) : airDays(book).filter((d) => rowsOf(d).some((r) => r.id === id));
  const days = all.filter((d) => d.subject.sample !== 'personal');
  const readings = days.flatMap((d) => rowsOf(d).map((r) => r.reading));
  const meters = metersUsed(days);
  const unread = notUnderstoodNaming(book, [id, ...readings.map((r) => r.id), ...meters]);
  if (unread) return bad(problem('paper-not-understood', 'id', { kind: unread.kind, entry: unread.id }));
  const { reservations, remarks } = doubtsOf(book, readings);
  const heldBack = all.length - days.length;
  const first = days[0];
  return good(
    paper(frame, {
      name: words.name,
      subject: run
        ? words.ofRun(commonWords.small(entryName(book, run.id)))
        : `${first?.subject.of ?? ''}, ${dayText(first?.day ?? '')}`,
      number: words.number(id),
      standing: standingText(book, first?.from ?? frame.newest),
      reservations: [
        ...(days.length === 0 ? [words.noneOfRun] : []),
        ...(heldBack > 0 ? [words.heldBack(heldBack)] : []),
        ...reservations,
      ],
      body: [
        ...days.flatMap((day) => airDayPassage(book, day, frame, meters, charges)),
        ...metersTable(book, days),
        section(words.cautions),
        ...list(words.cautionList),
        section(commonWords.remarks),
        ...(remarks.length > 0 ? list(remarks) : [sentence(runSheet.noRemarks)]),
        ...changesOf(book, readings, [], commonWords.noChanges),
        ...(readings.length > 0 ? signatures(book, readings) : []),
      ],
    }),
  );
}
