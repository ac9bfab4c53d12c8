/**
 * Page's test on a standardised sequence of periods, for losses: S = max(0, S + y − k), a signal when S is above the threshold. The threshold holds the
 * chance of a false alarm over exactly the number of periods looked at. Page, Biometrika 41 (1954) 100 to 115 (from memory); the chance is
 * integrated over the chain of S with Gauss-Legendre nodes and agrees with the table of methods.md 1.4.
 */
import { normalBelow, normalDensity } from './normal.ts';

/** S after each period. */
export function pageSums(y: readonly number[], k: number): number[] {
  let s = 0;
  return y.map((value) => {
    s = Math.max(0, s + value - k);
    return s;
  });
}

/** Nodes and weights of Gauss-Legendre quadrature on 0 to `to`. */
function nodes(count: number, to: number): readonly (readonly [node: number, weight: number])[] {
  return Array.from({ length: count }, (_, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let step = 0; step < 100; step += 1) {
      let [before, now] = [1, x];
      for (let n = 2; n <= count; n += 1) [before, now] = [now, ((2 * n - 1) * x * now - (n - 1) * before) / n];
      slope = (count * (before - x * now)) / (1 - x * x);
      const next = x - now / slope;
      if (Math.abs(next - x) < 1e-15) break;
      x = next;
    }
    return [((x + 1) / 2) * to, to / ((1 - x * x) * slope * slope)];
  });
}

/** Chance that S passes the threshold within so many periods when nothing is lost: y independent, standard normal. */
export function falseAlarm(threshold: number, k: number, periods: number): number {
  if (threshold <= 0) return 1 - normalBelow(k) ** periods;
  const grid = nodes(Math.min(240, 32 + Math.ceil(6 * threshold)), threshold);
  const stays = grid.map(([r]) => normalBelow(k - r));
  const moves = grid.map(([s]) => grid.map(([r, weight]) => weight * normalDensity(s - r + k)));
  const fromNothing = grid.map(([s]) => normalDensity(s + k));
  // the chance to stand exactly at nothing, and the density above it
  let atNothing = 1;
  let density = grid.map(() => 0);
  for (let period = 0; period < periods; period += 1) {
    const before = density;
    density = moves.map((row, i) => atNothing * (fromNothing[i] ?? 0) + row.reduce((sum, m, j) => sum + m * (before[j] ?? 0), 0));
    atNothing =
      atNothing * normalBelow(k) + grid.reduce((sum, [, weight], j) => sum + weight * (before[j] ?? 0) * (stays[j] ?? 0), 0);
  }
  return 1 - atNothing - grid.reduce((sum, [, weight], j) => sum + weight * (density[j] ?? 0), 0);
}

/**
 * The smallest threshold, not below nothing, whose chance of a false alarm over exactly so many periods is no more than wanted (between 0 and 1).
 */
export function pageThreshold(k: number, periods: number, wanted: number): number {
  if (falseAlarm(0, k, periods) <= wanted) return 0;
  let [low, high] = [0, 1];
  while (falseAlarm(high, k, periods) > wanted) [low, high] = [high, high * 2];
  // the logarithm of the chance runs almost straight, so a secant that keeps the bracket is quick
  const off = (h: number) => Math.log(Math.max(falseAlarm(h, k, periods), 1e-300)) - Math.log(wanted);
  let [offLow, offHigh] = [off(low), off(high)];
  for (let i = 0; i < 60 && high - low > 1e-10; i += 1) {
    const cut = i % 3 === 2 ? (low + high) / 2 : low + ((high - low) * offLow) / (offLow - offHigh);
    const middle = cut > low && cut < high ? cut : (low + high) / 2;
    const offMiddle = off(middle);
    if (Math.abs(offMiddle) < 1e-11) return middle;
    if (offMiddle > 0) [low, offLow] = [middle, offMiddle];
    else [high, offHigh] = [middle, offMiddle];
  }
  return high;
}
