/**
 * The questions asked before, during and after, with the answers as recorded. A "no" stands out; a question nobody answered is named as not
 * recorded, never as a no. Answers let nobody through.
 */
import type { Content } from 'pdfmake/interfaces';
import type { Run } from '../../core/book/runs.ts';
import type { Checked } from '../../core/shapes.ts';
import { runSheet as words } from '../../words/papers.ts';
import { type CheckPhase, checkPhases, checkText, runChecks } from '../../words/run-checks.ts';
import { aside, ledger, part, type Row, section, small } from '../ledger.ts';
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

const row = ({ check, answer, note, whose }: Answered): Row => ({
  cells: [`${checkText(check)}${whose === '' ? '' : ` (${whose})`}`, words.answers[answer], note ?? ''],
  strong: answer === 'no',
});

const table = (rows: readonly Answered[]): Content[] =>
  rows.length === 0
    ? []
    : ledger(
        [
          { head: words.question, share: 58 },
          { head: words.answer, share: 14 },
          { head: words.note, share: 28 },
        ],
        rows.map(row),
      );

function phase(name: CheckPhase, answers: readonly Answered[]): Content[] {
  const asked = runChecks[name];
  const given = answers.filter((a) => asked.some(({ check }) => check === a.check));
  const open = asked.filter(({ check }) => !given.some((a) => a.check === check)).map(({ asks }) => asks);
  return [part(words.phases[name]), ...table(given), ...(open.length > 0 ? [small(words.unanswered(open.join('; ')))] : [])];
}

export function checks(run: Run): Content[] {
  const answers = answersOf(run);
  const known = new Set(checkPhases.flatMap((p) => runChecks[p]).map(({ check }) => check));
  const own = answers.filter(({ check }) => !known.has(check));
  return [
    section(words.checks),
    aside(words.checksNote),
    ...checkPhases.flatMap((p) => phase(p, answers)),
    ...(own.length > 0 ? [part(words.otherChecks), ...table(own)] : []),
  ];
}
