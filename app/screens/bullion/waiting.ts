/** What waits in this room: sponges not melted, bars nobody assayed, settlements without their umpire, bars still here; and the one thing to do next. */
import { type Bar, barsOf } from '../../core/book/bars.ts';
import type { Book } from '../../core/book/book.ts';
import type { Charge, Firing } from '../../core/book/charges.ts';
import { type BarSettlement, settlementsOf } from '../../core/book/settlements.ts';
import type { Weighed } from '../../core/book/weights.ts';

export interface WaitingSponge {
  readonly charge: Charge;
  /** The firing it was last weighed at. */
  readonly firing: Firing;
  readonly weighed: Weighed;
}

export interface Waiting {
  readonly sponges: readonly WaitingSponge[];
  readonly unassayed: readonly Bar[];
  /** Settlements that count and are not settled yet. */
  readonly umpires: readonly BarSettlement[];
  /** Bars here that were assayed. */
  readonly assayed: readonly Bar[];
}

export type NextDeed = 'umpire' | 'melt' | 'assay' | 'away' | 'none';

/** Sponges of amalgam that stand in no melt and were not handed over, in the order they were charged. */
export function spongesWaiting(book: Book): readonly WaitingSponge[] {
  const melted = new Set(book.current.of('melt').flatMap((r) => r.body.sponges.map(({ charge }) => charge)));
  const gone = new Set(
    book.current
      .of('transfer')
      .filter((r) => r.body.way === 'out' && r.body.what === 'sponge')
      .flatMap((r) => r.body.charge ?? []),
  );
  return [...book.charges.all.values()].flatMap((charge) => {
    if (charge.holds !== 'amalgam' || melted.has(charge.id) || gone.has(charge.id)) return [];
    const firing = charge.firings.findLast((f) => f.sponges.has(charge.id));
    const weighed = firing?.sponges.get(charge.id);
    return firing && weighed ? [{ charge, firing, weighed }] : [];
  });
}

export function waitingOf(book: Book): Waiting {
  const here = [...barsOf(book).all.values()].filter((bar) => bar.fate === 'here');
  return {
    sponges: spongesWaiting(book),
    unassayed: here.filter((bar) => bar.gold === null),
    umpires: settlementsOf(book).all.filter((s) => s.counts && s.settled === null),
    assayed: here.filter((bar) => bar.gold !== null),
  };
}

/** A difference holds up two parties, a sponge gives off mercury where it lies, a bar only waits. */
export const nextDeed = ({ sponges, unassayed, umpires, assayed }: Waiting): NextDeed =>
  umpires.length > 0
    ? 'umpire'
    : sponges.length > 0
      ? 'melt'
      : unassayed.length > 0
        ? 'assay'
        : assayed.length > 0
          ? 'away'
          : 'none';
