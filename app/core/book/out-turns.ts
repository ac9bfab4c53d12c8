/**
 * Out-turns beside what the site knew of the same metal: their weights, fine metal, deductions and charges, ours, and the difference. Neither overwrites
 * the other, and no side is taken for the true one. Their fine metal is as they state it, or their weight at their fineness. Source: practice.md 1 (16 to 19).
 */
import { decimalFromText, sum, zero } from '../decimal.ts';
import type { Body } from '../kinds/index.ts';
import { gramsFromText } from '../mass.ts';
import { less, type Measured, measured, total } from '../measured.ts';
import { asRatio, minusRatio, type Ratio, ratioFromText, timesRatio, toDouble } from '../ratio.ts';
import { type Bar, barsOf, fineOf } from './bars.ts';
import type { Current, Reading } from './current.ts';
import type { FineMetal } from './fineness.ts';
import { type Flag, flag } from './flags.ts';
import type { Registers } from './registers.ts';
import { type Weighed, weighedFrom } from './weights.ts';

/** One metal, ours and theirs. */
export interface OutTurnMetal {
  /** By the bars' own assays; null where amalgam or sponge went, or a bar of it is not assayed. */
  readonly ours: FineMetal | null;
  /** As they state it, or their weight at their fineness; null where they said neither. */
  readonly theirs: FineMetal | null;
  readonly permille: Ratio | null;
  /** Ours less theirs; null where one of the two is missing. */
  readonly difference: { readonly grams: Ratio; readonly net: Measured; readonly uKnown: boolean } | null;
  /** What they pay for, exact grams. */
  readonly credited: Ratio | null;
  /** What they kept back, exact grams; nothing where none is written. */
  readonly deducted: Ratio;
}

export interface OutTurn {
  readonly reading: Reading<'out-turn'>;
  readonly transfers: readonly Reading<'transfer'>[];
  readonly bars: readonly Bar[];
  /** Weight of all that was sent, as weighed here; null where one was not weighed. */
  readonly sent: { readonly grams: Ratio; readonly net: Measured; readonly uKnown: boolean } | null;
  readonly received: Weighed | null;
  readonly melted: Weighed | null;
  /** Sent less received; null where one of them is missing. */
  readonly onTheWay: Measured | null;
  readonly gold: OutTurnMetal;
  readonly silver: OutTurnMetal;
  readonly charges: NonNullable<Body<'out-turn'>['charges']>;
}

export interface OutTurns {
  readonly all: readonly OutTurn[];
  /** Transfers of metal that went out and have no out-turn. */
  readonly awaited: readonly Reading<'transfer'>[];
  readonly flags: readonly Flag[];
}

interface Known {
  readonly current: Current;
  readonly registers: Registers;
}

const thousandth = ratioFromText('0.001');

const exact = (text: string): Ratio => {
  const got = gramsFromText(text, '');
  return asRatio(got.ok ? got.value : zero);
};
const ugOf = (r: Ratio): number => Math.round(toDouble(r) * 1e6);

function stated(found: Body<'out-turn'>['gold'], base: Weighed | null, source: string): FineMetal | null {
  if (!found) return null;
  const u = found.fineU === undefined ? null : toDouble(exact(found.fineU)) * 1e6;
  const own = (ug: number) => measured(ug, u === null || u === 0 ? [] : [[source, u]]);
  if (found.fine !== undefined) {
    const grams = exact(found.fine);
    return { grams, net: own(ugOf(grams)), uKnown: u !== null };
  }
  if (found.permille === undefined || !base) return null;
  const permille = asRatio(decimalFromText(found.permille) ?? zero);
  const grams = timesRatio(timesRatio(asRatio(base.grams), permille), thousandth);
  return { grams, net: own(ugOf(grams)), uKnown: u !== null };
}

function metal(
  name: 'gold' | 'silver',
  body: Body<'out-turn'>,
  ours: FineMetal | null,
  base: Weighed | null,
  id: string,
): OutTurnMetal {
  const found = body[name];
  const theirs = stated(found, base, `out-turn:${id}:${name}`);
  const kept = (body.deductions ?? []).filter((d) => d.metal === name).map((d) => gramsFromText(d.mass, ''));
  return {
    ours,
    theirs,
    permille: found?.permille === undefined ? null : asRatio(decimalFromText(found.permille) ?? zero),
    difference:
      ours && theirs
        ? { grams: minusRatio(ours.grams, theirs.grams), net: less(ours.net, theirs.net), uKnown: ours.uKnown && theirs.uKnown }
        : null,
    credited: found?.credited === undefined ? null : exact(found.credited),
    deducted: asRatio(sum(kept.flatMap((k) => (k.ok ? [k.value] : [])))),
  };
}

const known = new WeakMap<Current, OutTurns>();

/** Every out-turn that stands, in order of happening. */
export function outTurnsOf(book: Known): OutTurns {
  const before = known.get(book.current);
  if (before) return before;
  const { all: bars } = barsOf(book);
  const answered = new Map<string, string>();
  const flags: Flag[] = [];
  const all = book.current.of('out-turn').map((reading): OutTurn => {
    const { body, id } = reading;
    const transfers = body.transfers.flatMap((t) => {
      const found = book.current.byId.get(t);
      if (found?.kind !== 'transfer') return [];
      if (answered.has(t)) flags.push(flag('out-turn-twice', id, { party: (found as Reading<'transfer'>).body.party }));
      answered.set(t, id);
      return [found as Reading<'transfer'>];
    });
    const weigh = (weight: Parameters<typeof weighedFrom>[0], entry: Reading, path: string) =>
      weighedFrom(weight, { entry: entry.id, path, at: entry.happened }, book.registers);
    const sentBars = transfers.map(({ body: t }) => (t.bar === undefined ? undefined : bars.get(t.bar)));
    const sentWeights = transfers.map((t, i) => (t.body.weight ? weigh(t.body.weight, t, 'weight') : sentBars[i]?.weighed));
    const weighed = sentWeights.filter((w) => w !== undefined);
    const whole = sentBars.filter((b) => b !== undefined);
    const onlyBars = whole.length === transfers.length;
    const received = body.received ? weigh(body.received, reading, 'received') : null;
    const melted = body.melted ? weigh(body.melted, reading, 'melted') : null;
    const base = melted ?? received;
    const sent =
      weighed.length === transfers.length && weighed.length > 0
        ? {
            grams: asRatio(sum(weighed.map((w) => w.grams))),
            net: total(weighed.map((w) => w.net)),
            uKnown: weighed.every((w) => w.uKnown),
          }
        : null;
    return {
      reading,
      transfers,
      bars: whole,
      sent,
      received,
      melted,
      onTheWay: sent && received ? less(sent.net, received.net) : null,
      gold: metal('gold', body, onlyBars ? fineOf(whole, 'fineGold') : null, base, id),
      silver: metal('silver', body, onlyBars ? fineOf(whole, 'fineSilver') : null, base, id),
      charges: body.charges ?? [],
    };
  });
  const awaited = book.current
    .of('transfer')
    .filter(({ id, body }) => body.way === 'out' && ['amalgam', 'sponge', 'bar'].includes(body.what) && !answered.has(id));
  const made: OutTurns = { all, awaited, flags };
  known.set(book.current, made);
  return made;
}
