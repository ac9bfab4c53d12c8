/**
 * Waste drums: what went into each since it last left, from which day it stands here, and the day by which it must go where the site set one. A drum
 * that was handed over begins anew with the next waste put into it. The site sets the days; no rule of any country is known here.
 */
import { compareMoments, dayOf } from '../time.ts';
import { emptySum, joined, type Sum } from './charges.ts';
import type { Current, Reading } from './current.ts';
import { latest, type Registers } from './registers.ts';
import { weighedFrom } from './weights.ts';

/** One filling of a drum, from the first waste in it to the day it left. */
export interface Drum {
  /** The drum's vessel. */
  readonly vessel: string;
  readonly label: string;
  /** What went in, oldest first. */
  readonly fills: readonly Reading<'waste'>[];
  /** Waste in it as weighed: not its mercury. */
  readonly mass: Sum;
  /** Codes written down for it. */
  readonly codes: readonly string[];
  /** The day it was begun: as entered, or of the first waste in it. */
  readonly started: string;
  /** The earliest day by which it must go; null where the site set none. */
  readonly due: string | null;
  /** The transfer it left with; null while it is here. */
  readonly left: Reading<'transfer'> | null;
}

function drum(vessel: string, fills: readonly Reading<'waste'>[], left: Drum['left'], registers: Registers): Drum {
  const thing = registers.vessel.get(vessel);
  const days = (pick: (r: Reading<'waste'>) => string | undefined): string[] =>
    fills.flatMap((r) => pick(r) ?? []).sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
  const [first] = fills;
  return {
    vessel,
    label: thing ? latest(thing).body.label : vessel,
    fills,
    mass: fills.reduce<Sum>(
      (sum, r) => joined(sum, weighedFrom(r.body.weight, { entry: r.id, path: 'weight', at: r.happened }, registers)),
      emptySum,
    ),
    codes: [...new Set(fills.flatMap((r) => r.body.code ?? []))],
    started: days((r) => r.body.started)[0] ?? (first ? dayOf(first.happened) : ''),
    due: days((r) => r.body.due)[0] ?? null,
    left,
  };
}

/** Every filling of every drum, those still here first, then by the day they were begun. */
export function drumsOf(current: Current, registers: Registers): readonly Drum[] {
  const found: Drum[] = [];
  const open = new Map<string, Reading<'waste'>[]>();
  const sent = current.of('transfer').filter((r) => r.body.way === 'out' && r.body.what === 'waste');
  const all = [...current.of('waste'), ...sent].sort((a, b) => compareMoments(a.happened, b.happened));
  for (const reading of all) {
    if (reading.kind === 'waste') {
      const fill = reading as Reading<'waste'>;
      open.set(fill.body.drum, [...(open.get(fill.body.drum) ?? []), fill]);
      continue;
    }
    const left = reading as Reading<'transfer'>;
    const fills = open.get(left.body.vessel ?? '');
    if (left.body.vessel === undefined || !fills) continue;
    open.delete(left.body.vessel);
    found.push(drum(left.body.vessel, fills, left, registers));
  }
  const here = [...open].map(([vessel, fills]) => drum(vessel, fills, null, registers));
  const begun = (a: Drum, b: Drum): number => (a.started < b.started ? -1 : a.started > b.started ? 1 : 0);
  return [...here.sort(begun), ...found.sort(begun).reverse()];
}

/** Drums that stand here with a day by which they must go. */
export const drumsDue = (current: Current, registers: Registers): readonly (Drum & { readonly due: string })[] =>
  drumsOf(current, registers).flatMap((d) => (d.left === null && d.due !== null ? [{ ...d, due: d.due }] : []));
