/**
 * Runs that were fired with no check answered, nobody beside the writer, or no air reading on their days. Left out is not "no": it is said as not
 * recorded. Air readings are only missed where the site has a meter or its check list asks for them. A figure that is immediately dangerous is told here too.
 */
import { dayOf } from '../../time.ts';
import type { Book } from '../book.ts';
import { firedAt } from '../charges.ts';
import { type Run, runAt } from '../runs.ts';
import { fromFlags, type OutOfStep, ofEntry } from './item.ts';

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

/** Days on which the air was read, and charges that a reading names. */
function airRead(book: Book): { readonly days: ReadonlySet<string>; readonly charges: ReadonlySet<string> } {
  const readings = book.current.of('air-reading').map((r) => r.body);
  return {
    days: new Set(readings.flatMap(({ from, to }) => [dayOf(from), dayOf(to ?? from)])),
    charges: new Set(readings.flatMap(({ run }) => (run === undefined ? [] : [run]))),
  };
}

export function runsOutOfStep(book: Book): OutOfStep[] {
  const read = airRead(book);
  const hasMeter = book.registers.meter.size > 0;
  const ofRuns = book.runs
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
      const wasRead = days.some((day) => read.days.has(day)) || run.charges.some((c) => read.charges.has(c.id));
      if ((hasMeter || checksAskForAir(run)) && !wasRead) found.push(ofEntry('runs', 'run-no-air-reading', run.id, at));
      return found;
    });
  return [...ofRuns, ...fromFlags(book, 'runs', ['air-idlh'])];
}
