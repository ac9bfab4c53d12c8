/** What wants a look: flags of entries of the last days, reservations first, and runs that did not come out as they should. */
import type { Book } from '../../core/book/book.ts';
import { type Flag, reservations } from '../../core/book/flags.ts';
import { type Run, runAt } from '../../core/book/runs.ts';
import type { FindingCode } from '../../core/run.ts';
import { compareMoments, dayNumber, dayOf } from '../../core/time.ts';

const ageDays = (moment: string, now: string): number => (dayNumber(dayOf(now)) ?? 0) - (dayNumber(dayOf(moment)) ?? 0);

/** Days for which flags are told here; older ones stay with their entries in the daybook. */
export const flagDays = 30;
/** Days for which a run is told here. */
export const runDays = 90;

/** Told in a place of their own on this page. */
const elsewhere: ReadonlySet<Flag['code']> = new Set(['firing-without-charge', 'no-standing']);

/** Flags of entries that happened or were written down lately, each thing said once for an entry, reservations first, then the newest. */
export function recentFlags(book: Book, now: string): readonly Flag[] {
  const found: { flag: Flag; grave: boolean; at: string }[] = [];
  for (const [id, flags] of book.flags) {
    const reading = book.current.byId.get(id);
    if (!reading || reading.struck) continue;
    const { written } = reading.entry;
    const at = compareMoments(reading.happened, written) > 0 ? reading.happened : written;
    if (ageDays(at, now) > flagDays) continue;
    const said = new Set<string>();
    for (const flag of flags) {
      const { field: _, ...data } = flag.data;
      const key = `${flag.code} ${JSON.stringify(data)}`;
      if (elsewhere.has(flag.code) || said.has(key)) continue;
      said.add(key);
      found.push({ flag, grave: reservations.has(flag.code), at });
    }
  }
  return found.sort((a, b) => Number(b.grave) - Number(a.grave) || compareMoments(b.at, a.at)).map((f) => f.flag);
}

const ordinary: ReadonlySet<FindingCode> = new Set(['closes', 'within-band', 'water-not-known']);

/** Runs of the last days whose figures say more than that they closed, the newest first. */
export const runsToLookAt = (book: Book, now: string): readonly Run[] =>
  book.runs
    .filter(
      (run) =>
        run.awaits.length === 0 &&
        ageDays(runAt(run), now) <= runDays &&
        (run.last?.figures?.findings.some((finding) => !ordinary.has(finding)) ?? false),
    )
    .toReversed();
