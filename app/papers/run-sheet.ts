/**
 * The run sheet: everything one retort run rests on, on paper. What is doubtful comes first, then the account, what it says, what was done and
 * by whom, and at the end every reading, so that the run can be reckoned again without the program. It judges nobody and permits nothing.
 */
import type { Content } from 'pdfmake/interfaces';
import { type Book, flagsOfRun, runOf } from '../core/book/book.ts';
import { emptySum, joined, type Sum } from '../core/book/charges.ts';
import type { Flag } from '../core/book/flags.ts';
import { type Run, runAt } from '../core/book/runs.ts';
import { bad, good, problem, type Result } from '../core/result.ts';
import { dayText } from '../words/dates.ts';
import { remarkText, runSheet as words } from '../words/papers.ts';
import { verdictText } from '../words/retort.ts';
import { bandSources } from '../words/retort-bands.ts';
import { withGrams } from './amounts.ts';
import { bookReservations, isReservation, once } from './doubts.ts';
import { list, section, sentence } from './ledger.ts';
import { thingName } from './names.ts';
import { type Definition, type Frame, paper } from './paper.ts';
import { changes } from './run-sheet/changes.ts';
import { checks } from './run-sheet/checks.ts';
import { notUnderstoodAbout } from './run-sheet/concerns.ts';
import { condenserOf } from './run-sheet/condenser.ts';
import { figuresOf } from './run-sheet/figures.ts';
import { findingsOf } from './run-sheet/findings.ts';
import { firings, firingsOf } from './run-sheet/firings.ts';
import { readingsOf, readingsTable, scalesOf } from './run-sheet/readings.ts';
import { firingsAlongTheClock } from './run-sheet/timeline.ts';
import { wentIn } from './run-sheet/went-in.ts';
import { signatures } from './signatures.ts';
import { standingText } from './standing.ts';

function runReservations(run: Run): string[] {
  const gone = run.charges.flatMap(({ rows }) => rows.filter(({ take, lot }) => take === 'not-found' && lot));
  const missing = run.charges.reduce<Sum>((sum, charge) => joined(sum, charge.missing), emptySum);
  return [
    ...(run.last?.gap && !run.last.gap.uKnown ? [words.uUnknown] : []),
    ...(run.awaits.length > 0 ? [words.open(run.awaits)] : []),
    ...(gone.length > 0 ? [words.missingLots(gone.length, withGrams(missing.grams))] : []),
  ];
}

function remarks(flags: readonly Flag[]): Content[] {
  const said = once(flags.filter((f) => !isReservation(f)).map(remarkText));
  return [section(words.remarks), ...(said.length > 0 ? list(said) : [sentence(words.noRemarks)])];
}

/**
 * The run sheet of the run that a charge belongs to. Problems: `paper-no-such-run` where the book has no such charge, or where it was struck;
 * `paper-not-understood` where a newer program wrote something about it.
 */
export function runSheet(book: Book, chargeId: string, frame: Frame): Result<Definition> {
  const run = runOf(book, chargeId);
  if (!run) return bad(problem('paper-no-such-run', 'id', { id: chargeId }));
  const unread = notUnderstoodAbout(book, run);
  if (unread) return bad(problem('paper-not-understood', 'id', { kind: unread.kind, entry: unread.id }));
  const at = runAt(run);
  const verdict = verdictText(run.awaits, run.openings.at(-1)?.figures?.findings ?? []);
  const flags = flagsOfRun(book, run);
  const readings = readingsOf(book, run);
  const scaleStates = scalesOf(readings).map(({ entry }) => entry);
  return good(
    paper(frame, {
      name: words.name,
      subject: words.subject(thingName(book, 'retort', run.retort, at), dayText(at), verdict),
      number: words.number(run.id),
      standing: standingText(book, at),
      reservations: once([...bookReservations(book), ...runReservations(run), ...flags.filter(isReservation).map(remarkText)]),
      body: [
        ...figuresOf(run, bandSources(book.registers, run)),
        ...findingsOf(run),
        ...wentIn(book, run),
        ...firings(book, run),
        ...firingsAlongTheClock(book, run, frame),
        ...checks(run, book),
        ...condenserOf(book, run),
        ...remarks(flags),
        ...changes(book, run, scaleStates),
        ...readingsTable(book, readings),
        ...signatures(
          book,
          [...run.charges, ...firingsOf(run)].map(({ reading }) => reading),
        ),
      ],
    }),
  );
}
