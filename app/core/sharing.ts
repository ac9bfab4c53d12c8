/**
 * Shares a whole number out by weights so that the parts make the whole again: each gets the whole part of its quota, and what is left over goes one
 * by one to the largest remainders, of equals to the first. The method of largest remainders, as used in apportionment (from memory).
 */

/** Parts of `whole` in the order of `weights`; all nothing where the weights come to nothing. Whole numbers only. */
export function shareOut(whole: number, weights: readonly number[]): number[] {
  const sizes = weights.map((w) => BigInt(Math.max(0, Math.round(w))));
  const sum = sizes.reduce((s, w) => s + w, 0n);
  if (sum === 0n) return weights.map(() => 0);
  const sign = whole < 0 ? -1 : 1;
  const amount = BigInt(Math.abs(whole));
  const quotas = sizes.map((w, i) => ({ i, part: (amount * w) / sum, rest: (amount * w) % sum }));
  let left = amount - quotas.reduce((s, q) => s + q.part, 0n);
  const parts = quotas.map((q) => q.part);
  for (const { i } of quotas.toSorted((a, b) => (a.rest > b.rest ? -1 : a.rest < b.rest ? 1 : a.i - b.i))) {
    if (left === 0n) break;
    parts[i] = (parts[i] ?? 0n) + 1n;
    left -= 1n;
  }
  return parts.map((p) => (p === 0n ? 0 : sign * Number(p)));
}
