/**
 * The questions asked before, during and after, with the answers as recorded. A "no" stands out; a question nobody answered is named as not
 * recorded, never as a no. Answers let nobody through.
 */
import type { Content } from 'pdfmake/interfaces';
import type { Book } from '../../core/book/book.ts';
import { type Run, runAt } from '../../core/book/runs.ts';
import type { Checked } from '../../core/shapes.ts';
import { askedText, runQuestionsAt } from '../../words/asked-checks.ts';
import { runSheet as words } from '../../words/papers.ts';
import { type CheckPhase, checkPhases } from '../../words/run-checks.ts';
import { aside, ledger, part, type Row, section, small } from '../ledger.ts';
import { personName } from '../names.ts';
import { firingsOf } from './firings.ts';

interface Answered extends Checked {
  /** Which charge or firing of several answered; empty for the only one. */
  readonly whose: string;
}

const fields = [
  ['pipeClear', 'pipe-clear'],
  ['waterOn', 'water-on'],
  ['dry', 'dry'],
] as const;

/** All answers of a run: those of its charges, then those of its firings. */
export function answersOf(run: Run): Answered[] {
  const several = run.charges.length > 1;
  const ofCharges = run.charges.flatMap(({ reading: { body } }, i) => {
    const whose = several ? words.ofChargeN(i + 1) : '';
    const fixed = fields.flatMap(([field, check]) => {
      const answer = body[field];
      return answer === undefined ? [] : [{ check, answer, whose }];
    });
    return [...fixed, ...(body.checks ?? []).map((checked) => ({ ...checked, whose }))];
  });
  const firings = firingsOf(run);
  const ofFirings = firings.flatMap(({ reading: { body } }, i) =>
    (body.checks ?? []).map((checked) => ({ ...checked, whose: firings.length > 1 ? words.ofFiring(i + 1) : '' })),
  );
  return [...ofCharges, ...ofFirings];
}

/** The book an answer stands in, and when. */
interface Asked {
  readonly book: Book;
  readonly at: string;
}

const row =
  ({ book, at }: Asked) =>
  ({ check, answer, by, note, whose }: Answered): Row => ({
    cells: [
      `${askedText(book.current, check, at)}${whose === '' ? '' : ` (${whose})`}`,
      words.answers[answer],
      [by === undefined ? '' : personName(book, by, at), note ?? ''].filter((part) => part !== '').join(': '),
    ],
    strong: answer === 'no',
  });

const table = (rows: readonly Answered[], asked: Asked): Content[] =>
  rows.length === 0
    ? []
    : ledger(
        [
          { head: words.question, share: 58 },
          { head: words.answer, share: 14 },
          { head: words.note, share: 28 },
        ],
        rows.map(row(asked)),
      );

function phase(name: CheckPhase, answers: readonly Answered[], by: Asked): Content[] {
  const asked = runQuestionsAt(by.book.current, name, by.at);
  const given = answers.filter((a) => asked.some(({ check }) => check === a.check));
  const open = asked.filter(({ check }) => !given.some((a) => a.check === check)).map(({ asks }) => asks);
  return [part(words.phases[name]), ...table(given, by), ...(open.length > 0 ? [small(words.unanswered(open.join('; ')))] : [])];
}

export function checks(run: Run, book: Book): Content[] {
  const by: Asked = { book, at: runAt(run) };
  const answers = answersOf(run);
  const known = new Set(checkPhases.flatMap((p) => runQuestionsAt(book.current, p, by.at)).map(({ check }) => check));
  const own = answers.filter(({ check }) => !known.has(check));
  return [
    section(words.checks),
    aside(words.checksNote),
    ...checkPhases.flatMap((p) => phase(p, answers, by)),
    ...(own.length > 0 ? [part(words.otherChecks), ...table(own, by)] : []),
  ];
}
