/**
 * Seals of vessels: which number stands on a vessel at a moment, and where a number stood before. A seal stands from the entry that names it until
 * mercury is drawn off or put in, a count finds it broken, or another takes its place. It says nothing of who could have opened the vessel.
 */
import { compareMoments } from '../time.ts';
import type { Current } from './current.ts';
import type { Movement } from './movements/gathering.ts';
import { vesselPlace } from './places.ts';
import type { Registers } from './registers.ts';

/** From this moment the vessel stands under this number, or open: null. `entry` is what says so. */
export interface SealEvent {
  readonly at: string;
  readonly seal: string | null;
  readonly entry: string;
}

interface Known {
  readonly current: Current;
  readonly registers: Registers;
  readonly movements: { readonly all: readonly Movement[] };
}

/** Numbers are the same whatever blanks and capitals they were written with. */
export const sameSeal = (a: string, b: string): boolean => plain(a) === plain(b);
const plain = (seal: string): string => seal.replace(/\s+/g, '').toLowerCase();

/** Everything that befell the seals of a vessel, oldest first. */
export function sealEvents(book: Known, vessel: string): readonly SealEvent[] {
  const place = vesselPlace(vessel);
  const events: SealEvent[] = [];
  let stated: string | undefined;
  for (const { from, entry, body } of book.registers.vessel.get(vessel)?.states ?? []) {
    // a restatement that never named a seal says nothing of one
    if (body.seal !== stated) events.push({ at: from, seal: body.seal ?? null, entry });
    stated = body.seal;
  }
  for (const { id, happened, body } of book.current.of('receipt'))
    if (body.vessel === vessel) events.push({ at: happened, seal: body.seal ?? null, entry: id });
  for (const m of book.movements.all) {
    if (m.from !== place && m.to !== place) continue;
    const kind = book.current.byId.get(m.entry)?.kind;
    if (kind !== 'receipt' && kind !== 'stock-take') events.push({ at: m.at, seal: null, entry: m.entry });
  }
  for (const { id, happened, body } of book.current.of('stock-take')) {
    const line = body.lines.find((l) => l.place === place);
    if (line?.how === 'sealed') events.push({ at: happened, seal: line.seal, entry: id });
    if (line?.how === 'weighed') events.push({ at: happened, seal: line.newSeal ?? null, entry: id });
    if (line?.how === 'not-found' || (line?.how === 'unanswered' && line.sealBroken === 'yes'))
      events.push({ at: happened, seal: null, entry: id });
  }
  return events.sort((a, b) => compareMoments(a.at, b.at));
}

/** The number that stands on a vessel at that moment; null: none. `without`: an entry that is being written anew. */
export function sealAt(book: Known, vessel: string, at: string, without: string | null = null): string | null {
  return sealEvents(book, vessel).findLast((e) => e.entry !== without && compareMoments(e.at, at) <= 0)?.seal ?? null;
}

/** The first vessel that bears or ever bore this number; undefined where none did. */
export function bearerOf(
  book: Known,
  seal: string,
  but: { readonly vessel: string | null; readonly entry: string | null },
): string | undefined {
  return [...book.registers.vessel.keys()].find(
    (vessel) =>
      vessel !== but.vessel &&
      sealEvents(book, vessel).some((e) => e.entry !== but.entry && e.seal !== null && sameSeal(e.seal, seal)),
  );
}
