/**
 * How much mercury a lot holds. Until it is retorted this is an estimate; then it is trued up from what stayed behind: charge − sponge · (1 − r) −
 * water, never from what was caught. Where several lots were fired together only their total is measured: the parts are allotted in proportion to
 * the estimates, they add up to the total exactly, and the errors of the allotment cancel in the sum. A gap to the mercury caught stays the retort's.
 */
import { added, exactly, less, type Measured, measured, measuredBy, nothing, scaled, total, whole } from '../measured.ts';
import type { ChargedLot, Lot, Lots } from './lots.ts';
import { type Run, sourceOf } from './runs.ts';
import type { Share } from './site-figures.ts';

/** Mercury in squeezed amalgam where the source has no history: 50 to 75 parts in a hundred (practice.md 2.3), taken as rectangular. */
export const priorShare = { middle: 0.625, u: 0.125 / Math.sqrt(3) } as const;
/** Standard uncertainty of a usual sponge ratio: half the band that is still ordinary. */
const ratioU = 0.02;

export type ShareBasis = 'estimated' | 'trued' | 'allotted' | 'sibling';

export interface LotMercury {
  readonly mercury: Measured;
  readonly basis: ShareBasis;
}

/** What a run's figures say of the mercury in its charge. Null while it is open. */
export interface RunMercury {
  /** Mercury that was in the charge. */
  readonly charged: Measured;
  /** Mercury still in the sponge after the last firing. */
  readonly inSponge: Measured;
  /** Mercury caught. */
  readonly caught: Measured;
  /** charged − in sponge − caught. */
  readonly gap: Measured;
  /** The gap may be water: it lies between nothing and this, and is posted as nothing. Null where the water is known or the charge was dry. */
  readonly waterOrMercuryUg: number | null;
}

/** Wet amalgam whose water nobody weighed. */
const wet = (run: Run): boolean =>
  run.last !== null &&
  !run.last.waterKnown &&
  run.charges.some((c) => c.reading.body.dry === 'no' || c.rows.some((row) => row.lot?.state === 'scraped-wet'));

/** How much of a run's gap may be water or mercury, nobody can tell which: all of it where wet amalgam's water was not weighed; null where none is open. */
export const waterOrMercuryUg = (run: Run): number | null => {
  const gapUg = run.last?.gap?.net.ug ?? 0;
  return run.awaits.length === 0 && wet(run) && gapUg > 0 ? gapUg : null;
};

/** Works out a run's mercury with the share left in sponge that was in force. An under-fired sponge carries what its ratio implies, not the default (cases 7). */
export function runMercury(run: Run, residual: Share): RunMercury | null {
  const { last } = run;
  if (!last?.sponge || !last.mercury || !last.figures || run.awaits.length > 0) return null;
  const holds = run.charges[0]?.holds ?? 'amalgam';
  const sponge = last.sponge.net;
  const heavy = last.figures.findings.includes('heavy-sponge') && run.usual !== null && !run.together;
  const inSponge = whole(
    holds === 'mercury'
      ? nothing
      : heavy
        ? added(
            less(sponge, scaled(run.charge.net, run.usual.ratio)),
            measuredBy(0, `usual ratio:${run.retort}`, run.charge.net.ug * ratioU),
          )
        : added(scaled(sponge, residual.middle), measuredBy(0, `residual:${run.id}`, sponge.ug * residual.u)),
  );
  const behind = less(sponge, inSponge);
  const water = last.water.net;
  // with figures there is a gap
  const gap = last.gap?.net ?? nothing;
  const open = waterOrMercuryUg(run);
  if (open !== null) {
    // the gap is water and mercury together: what was caught and what stayed is all that is known to have been mercury
    const charged = added(last.mercury.net, inSponge);
    return { charged, inSponge, caught: last.mercury.net, gap: nothing, waterOrMercuryUg: open };
  }
  return { charged: less(less(run.charge.net, behind), water), inSponge, caught: last.mercury.net, gap, waterOrMercuryUg: null };
}

/** Splits a total among lots in proportion to their estimates: parts re-sum exactly, errors of the split sum to nothing. */
export function allotted(value: Measured, estimates: readonly Measured[], errors: readonly number[], name: string): Measured[] {
  const sum = estimates.reduce((s, e) => s + e.ug, 0);
  if (estimates.length === 0 || !(sum > 0)) return estimates.map(() => exactly(0));
  const rough = estimates.map((e) => Math.floor((value.ug * e.ug) / sum));
  let rest = value.ug - rough.reduce((s, r) => s + r, 0);
  const parts = rough.map((r) => {
    const extra = rest >= 1 ? 1 : 0;
    rest -= extra;
    return r + extra;
  });
  const squares = errors.reduce((s, e) => s + e * e, 0);
  // given the total, the error of each estimate moves its own part up and all others down
  const pair = errors.length === 2 && squares > 0 ? Math.abs((errors[0] ?? 0) * (errors[1] ?? 0)) / Math.sqrt(squares) : null;
  return parts.map((ug, i) => {
    const own: [string, number][] =
      pair !== null
        ? [[name, i === 0 ? pair : -pair]]
        : squares === 0
          ? []
          : errors.map((e, j) => {
              const weight = ((errors[i] ?? 0) * (errors[i] ?? 0)) / squares;
              return [`${name}:${j}`, i === j ? e * (1 - weight) : -e * weight] as [string, number];
            });
    const shared = [...scaled(value, (estimates[i]?.ug ?? 0) / sum).parts];
    return measured(ug, [...shared, ...own]);
  });
}

/** A cleaning or squeezing as far as lots go: what went in, what was made, and the mercury that left it otherwise, less what was added. */
export interface Work {
  readonly entry: string;
  readonly inputs: readonly string[];
  /** Dirty amalgam straight from the circuit, by weight. */
  readonly dirty: Measured | null;
  readonly made: readonly string[];
  /** Strained mercury and mercury in residues out, less mercury added. */
  readonly otherwise: Measured;
}

/** Mercury in every lot that was charged and fired, in each lot still waiting, and in lots that were split or worked. */
export function lotMercuries(
  lots: Lots,
  runs: readonly Run[],
  mercuries: ReadonlyMap<string, RunMercury>,
  works: readonly Work[],
  residualOf: (run: Run) => Share,
): ReadonlyMap<string, LotMercury> {
  const found = new Map<string, LotMercury>();
  const childrenOf = new Map<string, Lot[]>();
  for (const lot of lots.all.values())
    if (lot.parent !== null) {
      const children = childrenOf.get(lot.parent);
      if (children) children.push(lot);
      else childrenOf.set(lot.parent, [lot]);
    }
  // the last history of each source speaks for all its lots
  const lastUsual = new Map<string, number>();
  for (const run of runs)
    if (run.usual?.from === 'history' && run.charges[0])
      lastUsual.set(sourceOf(run.charges[0]), 1 - run.usual.ratio * (1 - residualOf(run).middle));
  const workOf = new Map(works.flatMap((work) => work.inputs.map((input) => [input, work] as const)));
  const shareOf = (lot: Lot): { middle: number; u: number } => {
    const middle = lot.source === null ? undefined : lastUsual.get(lot.source);
    return middle === undefined ? priorShare : { middle, u: ratioU };
  };
  const estimate = (lot: Lot, net: Measured = lot.net): { value: Measured; u: number } => {
    const { middle, u } = shareOf(lot);
    return { value: whole(scaled(net, middle)), u: Math.abs(net.ug) * u };
  };
  for (const run of runs) {
    const mercury = mercuries.get(run.id);
    if (!mercury) continue;
    const rows = run.charges
      .flatMap((c) => c.rows)
      .filter(
        (row): row is ChargedLot & { lot: Lot; charged: NonNullable<ChargedLot['charged']> } =>
          row.lot !== null && row.charged !== null,
      );
    const others = total(run.charges.flatMap((c) => c.others.filter((o) => o.what === 'mercury').map((o) => o.weighed.net)));
    const inLots = less(mercury.charged, others);
    const one = rows.length === 1;
    const guesses = one ? [] : rows.map((row) => estimate(row.lot, row.charged.net));
    const parts = one
      ? [inLots]
      : allotted(
          inLots,
          guesses.map((g) => g.value),
          guesses.map((g) => g.u),
          `allotment:${run.id}`,
        );
    for (const [i, row] of rows.entries())
      found.set(row.lot.id, { mercury: parts[i] ?? nothing, basis: one ? 'trued' : 'allotted' });
  }
  const settle = (lot: Lot): LotMercury => {
    const known = found.get(lot.id);
    if (known) return known;
    const { value, u } = estimate(lot);
    const guess: LotMercury = { mercury: added(value, measuredBy(0, `estimate:${lot.id}`, u)), basis: 'estimated' };
    // stands while its own parts are worked out, so that a ring of entries ends
    found.set(lot.id, guess);
    const settled = fromParts(lot) ?? fromSibling(lot) ?? guess;
    found.set(lot.id, settled);
    return settled;
  };
  const fromParts = (lot: Lot): LotMercury | null => {
    const children = childrenOf.get(lot.id);
    if (lot.fate === 'split' && children)
      return { mercury: total(children.map((child) => settle(child).mercury)), basis: 'estimated' };
    const work = lot.fate === 'worked' ? workOf.get(lot.id) : undefined;
    if (!work) return null;
    const inputs = work.inputs.flatMap((id) => lots.all.get(id) ?? []);
    const nets = [...inputs.map((input) => input.net), ...(work.dirty ? [work.dirty] : [])];
    const out = total([work.otherwise, ...work.made.flatMap((id) => lots.all.get(id) ?? []).map((made) => settle(made).mercury)]);
    const parts = allotted(
      out,
      nets,
      nets.map(() => 0),
      `work:${work.entry}`,
    );
    return { mercury: parts[inputs.indexOf(lot)] ?? nothing, basis: 'allotted' };
  };
  // a child not fired yet takes the share its fired sibling showed (cases 4)
  const fromSibling = (lot: Lot): LotMercury | null => {
    if (lot.parent === null) return null;
    const sibling = childrenOf.get(lot.parent)?.find((other) => other.id !== lot.id && found.get(other.id)?.basis === 'trued');
    const shown = sibling && found.get(sibling.id);
    if (!sibling || !shown || !(sibling.net.ug > 0)) return null;
    const value = whole(scaled(lot.net, shown.mercury.ug / sibling.net.ug));
    return { mercury: added(value, measuredBy(0, `estimate:${lot.id}`, lot.net.ug * ratioU)), basis: 'sibling' };
  };
  for (const lot of lots.all.values()) settle(lot);
  return found;
}
