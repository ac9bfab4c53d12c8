/**
 * How long the site keeps which records, held against what is in the book: the oldest and the newest record of each kind and the day up to which the
 * site keeps it. It tells days and deletes nothing; no rule of any country is known here. Source: safety.md 6.6.
 */
import type { KeptRecord } from '../kinds/site-says.ts';
import { compareMoments, dayOf } from '../time.ts';
import type { Current, Reading } from './current.ts';
import { keptUntil, retentionAt } from './site-says.ts';

export interface KeptSpan {
  /** The day of the record. */
  readonly day: string;
  /** The day up to which the site keeps it; null: no such day is known. */
  readonly until: string | null;
}

export interface Keeping {
  readonly records: KeptRecord;
  readonly which: string;
  readonly years: number;
  readonly source: string;
  /** How many records are here; null where the book cannot tell which they are. */
  readonly count: number | null;
  readonly first: KeptSpan | null;
  readonly last: KeptSpan | null;
}

const personal = ({ body }: Reading<'air-reading'>): boolean => body.sample === 'personal';

/** The records of a kind, by when they happened; null where the site alone knows which it means. */
function recordsOf(current: Current, records: KeptRecord): readonly { readonly happened: string }[] | null {
  switch (records) {
    case 'air':
      return current.of('air-reading').filter((r) => !personal(r));
    case 'personal-air':
      return current.of('air-reading').filter(personal);
    case 'health-dates':
      return current.of('check-due').filter((r) => r.body.what === 'health-surveillance');
    case 'waste':
      return [...current.of('waste'), ...current.of('transfer')];
    case 'incidents':
      return [...current.of('incident'), ...current.of('spill')];
    case 'runs':
      return [...current.of('charge'), ...current.of('firing')];
    case 'extraction':
      return current.of('check-due').filter((r) => r.body.what === 'extraction-test');
    case 'other':
      return null;
  }
}

/** Every period the site has set by that moment, with the oldest and newest record it is about. */
export const keepingAt = (current: Current, at: string): readonly Keeping[] =>
  (retentionAt(current, at)?.body.periods ?? []).map(({ records, which = '', years, source }) => {
    const found = recordsOf(current, records);
    const days = (found ?? []).map((r) => r.happened).sort(compareMoments);
    const span = (moment: string | undefined): KeptSpan | null =>
      moment === undefined ? null : { day: dayOf(moment), until: keptUntil(moment, years) };
    return { records, which, years, source, count: found?.length ?? null, first: span(days[0]), last: span(days.at(-1)) };
  });
