/**
 * One firing along the clock, from what was written up and nothing else: which of its times stand, which do not, from when to when that reaches, and which
 * readings of the air and incidents fall into it. A time that was not written is never put in between.
 */

import { compareMoments, minutesOf } from '../time.ts';
import { type AirRow, airDaysOfRun } from './air-days.ts';
import type { Book } from './book.ts';
import type { Charge, Firing } from './charges.ts';
import type { Reading } from './current.ts';
import type { Run } from './runs.ts';

/** The times a firing may carry, in the order of the work. */
export const fireStages = ['lit', 'firstMercury', 'lastMercury', 'finishFrom', 'finishTo', 'opened'] as const;
export type FireStage = (typeof fireStages)[number];

/** A stretch between two times that were both written. */
export interface FireStretch {
  readonly what: 'heating' | 'coming' | 'finishing' | 'cooling';
  readonly from: string;
  readonly to: string;
}

export interface FireTimes {
  readonly firing: Firing;
  readonly charges: readonly Charge[];
  /** First and last moment that a drawing of it reaches; null where no time of the fire was written. */
  readonly span: { readonly from: string; readonly to: string } | null;
  readonly stamps: readonly { readonly stage: FireStage; readonly at: string }[];
  readonly missing: readonly FireStage[];
  readonly stretches: readonly FireStretch[];
  /** Readings of the air that name a charge of the run and were taken in this time, in order. */
  readonly air: readonly AirRow[];
  /** How many more of them were read at a person, and are not for whoever looks. */
  readonly heldBack: number;
  /** Incidents of this time. An incident names no run: only its time says that it belongs here. */
  readonly incidents: readonly Reading<'incident'>[];
}

/** What is written within so many minutes before the first or after the last time of the fire is still drawn with it. The project's own bound. */
export const nearMinutes = 180;

const stretches = [
  { what: 'heating', from: 'lit', to: 'firstMercury' },
  { what: 'coming', from: 'firstMercury', to: 'lastMercury' },
  { what: 'finishing', from: 'finishFrom', to: 'finishTo' },
  { what: 'cooling', from: 'finishTo', to: 'opened' },
] as const;

/** The moment an entry stands under, where its time is more than a day. */
export const clockedAt = (reading: Pick<Reading, 'happened' | 'entry'>): string | null =>
  reading.entry.timing === 'day' ? null : reading.happened;

/** Each firing of a run along the clock, in order. `personal`: with readings at a person, for those who may see them. */
export function fireTimes(book: Pick<Book, 'current'>, run: Run, personal = false): readonly FireTimes[] {
  const air = airDaysOfRun(
    book,
    run.charges.map((charge) => charge.id),
  )
    .flatMap((day) => [...day.rows, ...day.spots])
    .filter(({ body }) => run.charges.some((charge) => charge.id === body.run))
    .sort((a, b) => compareMoments(a.body.from, b.body.from));
  return run.openings.map(({ firing }) => timesOf(book, run, firing, air, personal));
}

function timesOf(
  { current }: Pick<Book, 'current'>,
  run: Run,
  firing: Firing,
  allAir: readonly AirRow[],
  personal: boolean,
): FireTimes {
  const { body } = firing.reading;
  const stamps = fireStages.flatMap((stage) => {
    const at = body[stage];
    return at === undefined ? [] : [{ stage, at }];
  });
  const charges = run.charges.filter((charge) => firing.charges.includes(charge.id));
  const found = {
    firing,
    charges,
    stamps,
    missing: fireStages.filter((stage) => body[stage] === undefined),
    stretches: stretches.flatMap(({ what, from, to }): FireStretch[] => {
      const [a, b] = [body[from], body[to]];
      return a !== undefined && b !== undefined && compareMoments(a, b) < 0 ? [{ what, from: a, to: b }] : [];
    }),
  };
  const own = [...stamps.map(({ at }) => at), ...(body.noted ?? []).map(({ at }) => at)].sort(compareMoments);
  const [first, last] = [own[0], own.at(-1)];
  if (first === undefined || last === undefined) return { ...found, span: null, air: [], heldBack: 0, incidents: [] };
  const after = (moment: string, than: string): number => (minutesOf(moment) ?? 0) - (minutesOf(than) ?? 0);
  const near = (moment: string): boolean => after(first, moment) <= nearMinutes && after(moment, last) <= nearMinutes;
  const taken = allAir.filter(({ body: read }) => near(read.from) && near(read.to ?? read.from));
  const air = taken.filter(({ body: read }) => personal || read.sample !== 'personal');
  const beside = [...charges.map((charge) => charge.reading), firing.reading].flatMap((reading) => clockedAt(reading) ?? []);
  const all = [...own, ...beside.filter(near), ...air.flatMap(({ body: read }) => [read.from, read.to ?? read.from])].sort(
    compareMoments,
  );
  const span = { from: all[0] ?? first, to: all.at(-1) ?? last };
  const within = (moment: string): boolean => compareMoments(span.from, moment) <= 0 && compareMoments(moment, span.to) <= 0;
  const incidents = current.of('incident').filter((r) => r.entry.timing !== 'day' && within(r.happened));
  return { ...found, span, air, heldBack: taken.length - air.length, incidents };
}
