/**
 * Whether this machine's clock is behind what it wrote before. An entry is kept all the same, with the time the clock says: its number keeps the
 * order, and no chain or balance hangs on a clock.
 */
import type { Notice } from '../../app/contract.ts';
import type { Entry } from '../../app/core/entry.ts';
import { compareMoments } from '../../app/core/time.ts';

/** The entry of a desk that was written latest by the clock, and its last by number. */
export interface Written {
  readonly latest: Entry;
  readonly last: Entry;
}

/** After one more entry of the same desk, with the next number. */
export const writtenAfter = (before: Written | null, entry: Entry): Written => ({
  last: entry,
  latest: before && compareMoments(entry.written, before.latest.written) < 0 ? before.latest : entry,
});

/** Of one desk among all entries. */
export const writtenBy = (desk: string, entries: readonly Entry[]): Written | null =>
  entries
    .filter((entry) => entry.desk === desk)
    .sort((a, b) => a.n - b.n)
    .reduce<Written | null>(writtenAfter, null);

/** Told until the clock has passed the latest line again. */
export const clockNotices = (written: Written | null): Notice[] =>
  written && written.last !== written.latest
    ? [{ code: 'clock-back', desk: written.latest.desk, line: written.latest.n, detail: written.latest.written }]
    : [];
