/** The condenser's book of the run's retort as it stood with this run, and the runs since it was last brushed out judged together. */

import type { Content } from 'pdfmake/interfaces';
import type { Book } from '../../core/book/book.ts';
import type { Condenser } from '../../core/book/condenser.ts';
import type { Run } from '../../core/book/runs.ts';
import { dayText } from '../../words/dates.ts';
import { massUnit } from '../../words/figures.ts';
import { runSheet as words } from '../../words/papers.ts';
import { ugText } from '../amounts.ts';
import { ledger, type Row, section, sentence, together } from '../ledger.ts';

const places = 2;
const g = (ug: number, sign = false): string => ugText(ug, places, sign);

/** What is said of the runs since the last brushing out, up to the step of this run. */
function since(
  { steps }: Condenser,
  at: number,
): { readonly runs: number; readonly ug: number; readonly cannotTellUg: number; readonly brushed: string | null } {
  const from = steps.findLastIndex((step, i) => i < at && step.what === 'brushed');
  const own = steps.slice(from + 1, at + 1);
  return {
    runs: own.length,
    ug: own.reduce((sum, step) => sum + step.ug, 0),
    cannotTellUg: own.reduce((sum, step) => sum + step.cannotTellUg, 0),
    brushed: steps[from]?.at ?? null,
  };
}

export function condenserOf(book: Book, run: Run): Content[] {
  const condenser = book.condensers.get(run.retort);
  const at = condenser?.steps.findIndex((step) => step.by === run.id) ?? -1;
  const step = condenser?.steps[at];
  if (!condenser || !step)
    return [section(words.condenser), sentence(run.awaits.length > 0 ? words.condenserOpen : words.condenserNone)];
  const { runs, ug, cannotTellUg, brushed } = since(condenser, at);
  const rows: Row[] = [
    { cells: [words.before, g(condenser.steps[at - 1]?.heldUg ?? 0)] },
    { cells: [words.thisRun, g(step.ug, true)] },
    ...(step.cannotTellUg > 0 ? [{ cells: [words.cannotTell, g(step.cannotTellUg)] }] : []),
    ...(step.lostUg > 0 ? [{ cells: [run.last?.waterKnown ? words.lost : words.lostOrWater, g(-step.lostUg)] }] : []),
    ...(step.unexplainedUg < 0 ? [{ cells: [words.unexplained, g(-step.unexplainedUg, true)] }] : []),
    { cells: [words.after, g(step.heldUg)], sum: true, closing: true },
  ];
  return together([
    section(words.condenser),
    ...ledger(
      [
        { head: words.item, share: 75 },
        { head: words.grams, share: 25, amount: true },
      ],
      rows,
    ),
    sentence(
      [
        condenser.mostUg > 0 ? words.most(`${g(condenser.mostUg)}\u00a0${massUnit()}`) : words.neverBrushed,
        words.since(
          runs,
          `${g(ug, true)}\u00a0${massUnit()}`,
          brushed === null ? '' : dayText(brushed),
          cannotTellUg > 0 ? `${g(cannotTellUg)}\u00a0${massUnit()}` : '',
        ),
      ].join(' '),
    ),
  ]);
}
