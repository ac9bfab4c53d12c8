/**
 * Runs that were fired with no check answered, nobody beside the writer, or no air reading on their days. Left out is not "no": it is said as not
 * recorded. Air readings are only missed where this book can hold them and the site has a meter.
 */
import { isKind } from '../../kinds/index.ts';
import { dayOf } from '../../time.ts';
import type { Book } from '../book.ts';
import { firedAt } from '../charges.ts';
import { type Run, runAt } from '../runs.ts';
import { type OutOfStep, ofEntry } from './item.ts';

const airReading = 'air-reading';
/** Questions of a check list that ask for a reading of the air. */
const asksForAir = /(^|-)air(-|$)|vapour|meter/;

const readingsOf = (run: Run) => [
  ...run.charges.map((c) => c.reading),
  ...[...new Set(run.charges.flatMap((c) => c.firings))].map((f) => f.reading),
];

function wasChecked(run: Run): boolean {
  const charged = run.charges.some(
    ({ reading: { body } }) => (body.checks ?? []).length > 0 || body.pipeClear !== undefined || body.waterOn !== undefined,
  );
  return charged || run.charges.some((c) => c.firings.some((f) => (f.reading.body.checks ?? []).length > 0));
}

const checksAskForAir = (run: Run): boolean =>
  run.charges.some((c) =>
    [...(c.reading.body.checks ?? []), ...c.firings.flatMap((f) => f.reading.body.checks ?? [])].some(({ check }) =>
      asksForAir.test(check),
    ),
  );

/** Days on which an air reading was written up; null where no book of this program can hold one. */
function daysRead(book: Book): ReadonlySet<string> | null {
  const entries = book.entries.filter((e) => e.kind === airReading);
  if (!isKind(airReading) && entries.length === 0) return null;
  return new Set(
    entries.flatMap((e) => {
      const reading = book.current.byId.get(e.id);
      return reading?.struck ? [] : [dayOf(reading?.happened ?? e.happened)];
    }),
  );
}

export function runsOutOfStep(book: Book): OutOfStep[] {
  const read = daysRead(book);
  const hasMeter = book.registers.meter.size > 0;
  return book.runs
    .filter((run) => run.openings.length > 0)
    .flatMap((run) => {
      const at = runAt(run);
      const found: OutOfStep[] = [];
      if (!wasChecked(run)) found.push(ofEntry('runs', 'run-no-checks', run.id, at));
      if (readingsOf(run).every(({ entry }) => (entry.witness ?? []).length === 0))
        found.push(ofEntry('runs', 'run-no-witness', run.id, at));
      const days = run.charges.flatMap((c) => [
        dayOf(c.reading.happened),
        ...c.firings.flatMap((f) => [dayOf(f.reading.happened), dayOf(firedAt(f))]),
      ]);
      if (read && (hasMeter || checksAskForAir(run)) && !days.some((day) => read.has(day)))
        found.push(ofEntry('runs', 'run-no-air-reading', run.id, at));
      return found;
    });
}
