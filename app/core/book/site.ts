/**
 * The site's standing on a day: what it says it holds and does with mercury. An entry that runs against it is kept and marked; the program judges
 * nothing but the site's own words.
 */
import type { Body } from '../kinds/index.ts';
import { compareMoments, dayOf } from '../time.ts';
import type { Current, Reading } from './current.ts';
import { type Flag, flag } from './flags.ts';

type Standing = Body<'standing'>;

/** The standing in force at that moment, or null where none was stated yet. */
export function standingAt(current: Current, moment: string): Reading<'standing'> | null {
  return current.of('standing').findLast((reading) => compareMoments(reading.happened, moment) <= 0) ?? null;
}

const covers = (day: string, item: { since?: string | undefined; until?: string | undefined }): boolean =>
  (item.since === undefined || item.since <= day) && (item.until === undefined || day <= item.until);

/** What is done on that day by the standing's own words; an authority past its expiry no longer counts. */
export const doneOn = (standing: Standing, day: string): readonly Standing['done'][number][] =>
  standing.done.filter(
    (item) =>
      covers(day, item) &&
      (item.authority === undefined || item.authority.expiry === 'none stated' || day <= item.authority.expiry),
  );

/** Kinds of work that handle mercury, so that some handling must be stated. */
const handling = new Set(['receipt', 'clean-up', 'charge', 'firing']);

/** Flags of all entries that run against the standing in force when they happened. */
export function standingFlags(current: Current): readonly Flag[] {
  const flags: Flag[] = [];
  for (const reading of current.byId.values()) {
    if (reading.struck || !handling.has(reading.kind)) continue;
    const standing = standingAt(current, reading.happened);
    // one stated later still tells of earlier days unless it dates itself
    const said = standing ?? current.of('standing')[0];
    if (!said) {
      flags.push(flag('no-standing', reading.id));
      continue;
    }
    const done = doneOn(said.body, dayOf(reading.happened)).map((item) => item.what);
    const bringsIn = reading.kind === 'receipt' && (reading.body as Body<'receipt'>).way !== 'already-here';
    if (done.includes('authority') || (done.includes('clearing') && !bringsIn)) continue;
    flags.push(flag('outside-standing', reading.id, { kind: reading.kind }));
  }
  return flags;
}
