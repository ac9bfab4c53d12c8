/** The vessel retorted mercury usually goes to: the one the last firing named, else the only one there is. A guess that is shown and can be changed. */
import type { Book } from '../../core/book/book.ts';
import { latest } from '../../core/book/registers.ts';

export function usualVessel(book: Book): string {
  const last = book.current.of('firing').findLast((firing) => firing.body.mercury)?.body.mercury?.vessel;
  if (last !== undefined && book.registers.vessel.has(last)) return last;
  const here = [...book.registers.vessel.values()].filter((vessel) => latest(vessel).body.out === undefined);
  return here.length === 1 ? (here[0]?.id ?? '') : '';
}
