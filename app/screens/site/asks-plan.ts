/**
 * The sheet on which a site sets what it asks at a work: every question in a row, as it comes with the program, in the site's own words, left out with
 * a reason, or added. Names never change and are never used again: an old answer keeps its question.
 */
import type { CheckListNow, Question } from '../../core/book/check-lists.ts';
import type { Current, Reading } from '../../core/book/current.ts';
import { checkListAt } from '../../core/book/site-says.ts';
import type { Work } from '../../core/kinds/check-list.ts';
import { type FormPlan, textOr } from '../../daybook/form.svelte.ts';
import { shippedChecks } from '../../words/asked-checks.ts';

export interface AskRow {
  check: string;
  /** The question as it comes with the program; empty for one the site added. */
  shipped: string;
  asks: string;
  /** "out": not asked here. */
  out: string;
  why: string;
}

export interface AsksValues {
  rows: AskRow[];
  reviewed: string;
  note: string;
}

export const isAdded = (row: AskRow): boolean => row.shipped === '';
export const isOut = (row: AskRow): boolean => row.out !== '' && !isAdded(row);
export const isWorded = (row: AskRow): boolean => !isAdded(row) && !isOut(row) && row.asks.trim() !== row.shipped;

const own = ({ check, asks }: Question): AskRow => ({ check, shipped: '', asks, out: '', why: '' });

/** The rows of a list as the site has it; without one, the questions that come with the program. */
export function askRows(shipped: readonly Question[], site: Reading<'check-list'>['body'] | null): AskRow[] {
  const names = new Set(shipped.map((q) => q.check));
  const worded = new Map((site?.worded ?? []).map((q) => [q.check, q.asks]));
  const out = new Map((site?.leftOut ?? []).map((q) => [q.check, q.why]));
  return [
    ...shipped.map(({ check, asks }) => ({
      check,
      shipped: asks,
      asks: worded.get(check) ?? asks,
      out: out.has(check) ? 'out' : '',
      why: out.get(check) ?? '',
    })),
    ...(site?.added ?? []).filter((q) => !names.has(q.check)).map(own),
  ];
}

/** A row for a new question, under a name that no question of this work ever had. */
export function newRow(current: Current, work: Work, rows: readonly AskRow[]): AskRow {
  const used = new Set([
    ...rows.map((r) => r.check),
    ...current.of('check-list').flatMap((r) => [...(r.body.added ?? []), ...(r.body.worded ?? [])].map((q) => q.check)),
    ...[...current.byId.values()].flatMap((r) =>
      ((r.entry.body.checks ?? []) as { check?: unknown }[]).map((c) => String(c?.check)),
    ),
  ]);
  let n = 1;
  while (used.has(`${work}-own-${n}`)) n++;
  return own({ check: `${work}-own-${n}`, asks: '' });
}

/** Where the problems of a row stand in the entry. */
export function fieldOfRow(rows: readonly AskRow[], row: AskRow): string {
  const [list, of] = isAdded(row) ? ['added', isAdded] : isOut(row) ? ['leftOut', isOut] : ['worded', isWorded];
  return `body.${list}[${rows.filter((r) => (of as (r: AskRow) => boolean)(r)).findIndex((r) => r.check === row.check)}]`;
}

const some = <T>(list: readonly T[]): readonly T[] | undefined => (list.length > 0 ? list : undefined);

export const asksPlan = (current: () => Current, work: Work, now: () => string): FormPlan<AsksValues> => ({
  name: `check-list/${work}`,
  kind: 'check-list',
  start: () => {
    const site = checkListAt(current(), work, now())?.body ?? null;
    return { rows: askRows(shippedChecks[work], site), reviewed: '', note: '' };
  },
  body: ({ rows, reviewed, note }) => ({
    work,
    added: some(rows.filter(isAdded).map(({ check, asks }) => ({ check, asks: textOr(asks) }))),
    worded: some(rows.filter(isWorded).map(({ check, asks }) => ({ check, asks: textOr(asks) }))),
    leftOut: some(rows.filter(isOut).map(({ check, why }) => ({ check, why: textOr(why) }))),
    reviewed: textOr(reviewed),
    note: textOr(note),
  }),
});

/** How a list differs from the one that comes with the program, counted. */
export const changesIn = ({ questions, leftOut }: CheckListNow) => ({
  asked: questions.length,
  added: questions.filter((q) => q.origin === 'added').length,
  worded: questions.filter((q) => q.origin === 'worded').length,
  leftOut: leftOut.length,
});
