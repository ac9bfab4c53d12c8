/**
 * The ways mercury is lost, each between the bounds that the weighings leave. A bound is never filled with a likely figure, and no path is called
 * vapour. What a condenser is thought to hold may be lost all the same; what nobody can place may lie in the tailings (practice.md W7, W9).
 */
import { type Measured, nothing, RunningTotal } from '../measured.ts';
import type { Book } from './book.ts';
import type { Movement } from './movements/gathering.ts';
import { inPeriod, type Period } from './period.ts';
import { type LossPath, lossPaths, lossPlace } from './places.ts';

export interface LossLine {
  readonly path: LossPath;
  /** What the movements post. */
  readonly posted: Measured;
  readonly lowUg: number;
  readonly highUg: number;
}

/** What went into each way of losing it and into condensers, less what came back out, in one pass. */
function netInto(movements: readonly Movement[]): { readonly lost: ReadonlyMap<string, Measured>; readonly heldUg: number } {
  const lost = new Map<string, RunningTotal>();
  let heldUg = 0;
  const add = (place: string, m: Movement, sign: 1 | -1) => {
    if (place.startsWith('condenser:')) heldUg += sign * m.mercury.ug;
    if (!place.startsWith('loss:')) return;
    const known = lost.get(place) ?? new RunningTotal();
    lost.set(place, known.add(m.mercury, sign));
  };
  for (const m of movements) {
    add(m.to, m, 1);
    add(m.from, m, -1);
  }
  return { lost, heldUg };
}

/** Ore went through in the period, so that tailings left the site. */
const crushed = (book: Book, period: Period): boolean =>
  book.current.of('crushing').some((r) => inPeriod(r.happened, period)) ||
  book.current.of('clean-up').some((r) => r.body.ore !== undefined && inPeriod(r.happened, period));

/** Every way of losing it in the period; `inside` are its movements, `released` is what was spilled and weighed. */
export function lossLines(book: Book, period: Period, inside: readonly Movement[], released: Measured): readonly LossLine[] {
  const own = book.movements.bounds.filter((b) => inPeriod(b.at, period));
  const { lost, heldUg } = netInto(inside);
  const lines = lossPaths.map((path): LossLine => {
    const posted = path === 'spill' ? released : (lost.get(lossPlace(path)) ?? nothing);
    const bounds = own.filter((b) => b.path === path);
    const low = bounds.reduce((s, b) => s + b.lowUg, 0);
    const high = bounds.reduce((s, b) => s + b.highUg, 0);
    // where a melt posts what its sponge held, its shrinkage is the most it can be; elsewhere bounds come on top
    return path === 'melt' && bounds.length > 0
      ? { path, posted, lowUg: low, highUg: Math.max(posted.ug, high) }
      : { path, posted, lowUg: posted.ug + low, highUg: posted.ug + high };
  });
  const unplaced = Math.max(0, lines.find((line) => line.path === 'unaccounted')?.posted.ug ?? 0);
  const heldBack = Math.max(0, heldUg);
  const milled = crushed(book, period);
  return lines.map((line) => {
    if (line.path === 'retort') return { ...line, highUg: line.highUg + heldBack };
    if (line.path === 'tailings' && milled) return { ...line, highUg: line.highUg + unplaced };
    if (line.path === 'unaccounted' && milled) return { ...line, lowUg: line.lowUg - unplaced };
    return line;
  });
}
