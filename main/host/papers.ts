/** Every paper by its name, and what each is asked with. To add one: a file in app/papers, and a line here and in app/contract.ts. */
import type { PaperName } from '../../app/contract.ts';
import type { Period } from '../../app/core/book/account.ts';
import type { Book } from '../../app/core/book/book.ts';
import { periodBetween } from '../../app/core/book/closings.ts';
import { periodFrom } from '../../app/core/book/period.ts';
import { afterItsCount } from '../../app/core/book/periods.ts';
import { bad, good, type Problem, problem, type Result } from '../../app/core/result.ts';
import { airRecord } from '../../app/papers/air-record.ts';
import { barRecord } from '../../app/papers/bar-record.ts';
import { blankForms } from '../../app/papers/blank-forms.ts';
import { countSheet } from '../../app/papers/count-sheet.ts';
import { incidentSheet } from '../../app/papers/incident-sheet.ts';
import { labels } from '../../app/papers/labels.ts';
import { meltSheet } from '../../app/papers/melt-sheet.ts';
import type { ClosingOnPaper } from '../../app/papers/mercury-account/closing.ts';
import { mercuryAccount } from '../../app/papers/mercury-account.ts';
import { mercuryRegister } from '../../app/papers/mercury-register.ts';
import { openDaySheet } from '../../app/papers/open-day-sheet.ts';
import type { Definition, Frame } from '../../app/papers/paper.ts';
import { parcelReturn } from '../../app/papers/parcel-return.ts';
import { personalAirRecord } from '../../app/papers/personal-air.ts';
import { retortTag } from '../../app/papers/retort-tag.ts';
import { runSheet } from '../../app/papers/run-sheet.ts';
import { transferSheet } from '../../app/papers/transfer-sheet.ts';
import { wallSheet } from '../../app/papers/wall-sheet.ts';

/** What a paper was asked with, after it was found to be what that paper takes. */
export interface Asked {
  /** Empty where it is about no single thing. */
  readonly id: string;
  readonly period: Period;
  /** The mercury account as the statement of a closed period. */
  readonly closing?: ClosingOnPaper | undefined;
}

interface PaperKind {
  /** Whether it is about one thing, may be, or cannot be. */
  readonly id: 'needed' | 'optional' | 'none';
  /** Whether it is over a period, or asked for the end of a day alone. */
  readonly period: boolean | 'end';
  readonly make: (book: Book, asked: Asked, frame: Frame) => Result<Definition>;
}

const aboutOne = (make: (book: Book, id: string, frame: Frame) => Result<Definition>): PaperKind => ({
  id: 'needed',
  period: false,
  make: (book, { id }, frame) => make(book, id, frame),
});

const papers: Readonly<Record<PaperName, PaperKind>> = {
  'mercury-account': {
    id: 'none',
    period: true,
    make: (book, { period, closing }, frame) =>
      mercuryAccount(book, (closing && periodBetween(book, closing)) ?? afterItsCount(book, period), frame, closing),
  },
  'mercury-register': {
    id: 'optional',
    period: true,
    make: (book, { id, period }, frame) => mercuryRegister(book, id === '' ? undefined : id, period, frame),
  },
  'run-sheet': aboutOne(runSheet),
  'retort-tag': aboutOne(retortTag),
  'melt-sheet': aboutOne(meltSheet),
  'bar-record': aboutOne(barRecord),
  'parcel-return': aboutOne(parcelReturn),
  'transfer-sheet': aboutOne(transferSheet),
  'incident-sheet': aboutOne(incidentSheet),
  'air-record': aboutOne(airRecord),
  'personal-air-record': aboutOne(personalAirRecord),
  'open-day-sheet': aboutOne(openDaySheet),
  'wall-sheet': { id: 'none', period: false, make: (book, _asked, frame) => wallSheet(book, frame) },
  'blank-forms': { id: 'optional', period: false, make: (book, { id }, frame) => blankForms(book, id, frame) },
  labels: { id: 'optional', period: false, make: (book, { id }, frame) => labels(book, id, frame) },
  'count-sheet': { id: 'none', period: 'end', make: (book, { period }, frame) => countSheet(book, period, frame) },
};

/**
 * Reads what a paper was asked with. Problems: `paper-no-id`, `paper-takes-no-id`, `paper-takes-no-period`, and those of the period. What a paper
 * does not take is refused, because a paper that left it out in silence would look as if it had heeded it.
 */
export function orderFrom(
  name: PaperName,
  id: string | undefined,
  ends: { readonly from?: string | undefined; readonly to?: string | undefined },
): Result<Asked> {
  const paper = papers[name];
  const problems: Problem[] = [];
  if (paper.id === 'needed' && (id === undefined || id === '')) problems.push(problem('paper-no-id', 'id', { paper: name }));
  if (paper.id === 'none' && id !== undefined) problems.push(problem('paper-takes-no-id', 'id', { paper: name }));
  for (const end of ['from', 'to'] as const)
    if ((paper.period === false || (paper.period === 'end' && end === 'from')) && ends[end] !== undefined)
      problems.push(problem('paper-takes-no-period', end, { paper: name }));
  if (problems.length > 0) return bad(...problems);
  const period = periodFrom(ends);
  return period.ok ? good({ id: id ?? '', period: period.value }) : period;
}

/** The paper as it is to be drawn. */
export const drawnUp = (name: PaperName, book: Book, asked: Asked, frame: Frame): Result<Definition> =>
  papers[name].make(book, asked, frame);
