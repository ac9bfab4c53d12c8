/**
 * A day and a time on the wall, and the moment they name. The offset from UTC is the machine's on that day; it is asked of a clock and never
 * guessed here. A day without a time stands at noon and says that it is a day only.
 */
import { clockOf, dayOf } from '../core/time.ts';

/** The machine's clock, as text. */
export interface Clock {
  /** Now, with the machine's offset: "2026-03-14T09:20+13:00". */
  readonly now: () => string;
  /** The machine's offset from UTC at that local day and time: "+13:00". */
  readonly offsetAt: (day: string, time: string) => string;
}

export const timings = ['exact', 'about', 'day'] as const;
export type Timing = (typeof timings)[number];

/** What stands in the fields of a moment. Empty text: nothing entered. */
export interface MomentEntry {
  day: string;
  time: string;
  timing: Timing;
}

/** The fields filled from a moment; an empty text leaves them empty. */
export const momentEntry = (moment: string, timing: Timing = 'exact'): MomentEntry =>
  moment === '' ? { day: '', time: '', timing } : { day: dayOf(moment), time: clockOf(moment), timing };

/** The moment the fields name, or empty text while something is missing. */
export function momentText(entry: MomentEntry, clock: Clock): string {
  const time = entry.timing === 'day' ? '12:00' : entry.time;
  return entry.day === '' || time === '' ? '' : `${entry.day}T${time}${clock.offsetAt(entry.day, time)}`;
}
