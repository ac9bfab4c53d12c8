/** The days of the room Air as a reader may see them, and what stands open: meters out of date, runs without a reading. */
import { type AirDay, type AirSubject, airDays } from '../../core/book/air-days.ts';
import type { Book } from '../../core/book/book.ts';
import { maySee, rolesAt } from '../../core/book/may-see.ts';
import { latest } from '../../core/book/registers.ts';
import { airRoom } from '../../words/screens-air.ts';

/** Whether the one who writes may see what a person breathed. */
export const seesPersonal = (book: Book, writer: string | null, now: string): boolean =>
  maySee(rolesAt(book.registers, writer, now), 'personal-air');

/** Days, the newest first, and how many are held back. */
export function shownDays(book: Book, personal: boolean): { readonly days: readonly AirDay[]; readonly heldBack: number } {
  const all = airDays(book).toReversed();
  const days = personal ? all : all.filter((d) => d.subject.sample !== 'personal');
  return { days, heldBack: all.length - days.length };
}

/** A person's or place's name with what kind of reading it is. */
export function subjectText(book: Book, { sample, of }: AirSubject): string {
  const person = sample === 'personal' ? book.registers.person.get(of) : undefined;
  return `${person ? latest(person).body.name : of}, ${airRoom.samples[sample]}`;
}

const inUse = (book: Book) => [...book.registers.meter.values()].map((m) => latest(m).body).filter((m) => m.out === undefined);

/** Names of meters whose calibration was due before a day. */
export const metersOutOfDate = (book: Book, day: string): readonly string[] =>
  inUse(book).flatMap((m) => (m.calibrated?.due !== undefined && m.calibrated.due < day ? [m.label] : []));

export const hasMeter = (book: Book): boolean => inUse(book).length > 0;

/** Charges that were fired and that no reading names. */
export function runsWithoutReading(book: Book): readonly string[] {
  const read = new Set(book.current.of('air-reading').flatMap((r) => r.body.run ?? []));
  const fired = new Set(book.current.of('firing').flatMap((f) => f.body.heats.flatMap((heat) => heat.charge ?? [])));
  return [...fired].filter((charge) => !read.has(charge));
}
