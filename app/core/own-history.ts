/**
 * Values of one source against what the same source gave before: the median of its earlier values and a robust spread, 1.4826 times their median absolute
 * deviation from it, which is the standard deviation where they scatter evenly and is not moved by one bad value. The value under test is never in its own
 * history. The rule is this project's own: methods.md asks for a history and names no spread.
 */

/** Fewest earlier values that make a history. */
export const leastEarlier = 5;

/** Standard deviations of an even scatter in one median absolute deviation. */
const perDeviation = 1.4826;
/** Spreads to either side within which a value is as before. */
const width = 2;

export interface Usual {
  readonly median: number;
  /** Half the width of what is usual: two robust spreads. */
  readonly half: number;
  /** Earlier values it rests on. */
  readonly earlier: number;
}

export interface Held {
  /** Null where too few values came before. */
  readonly usual: Usual | null;
  /** Beyond the median and two spreads; false where there is no history. */
  readonly outside: boolean;
}

/** Where a value goes in a sorted list. */
function placeOf(sorted: readonly number[], value: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] ?? 0) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

const middleOf = (sorted: readonly number[]): number => {
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? (sorted[half] ?? 0) : ((sorted[half - 1] ?? 0) + (sorted[half] ?? 0)) / 2;
};

/** Deviations of sorted values from their median, sorted: taken from the middle outwards, no sorting again. */
function deviations(sorted: readonly number[], median: number): number[] {
  let right = placeOf(sorted, median);
  let left = right - 1;
  const found: number[] = [];
  while (found.length < sorted.length) {
    const [down, up] = [sorted[left], sorted[right]];
    if (up === undefined || (down !== undefined && median - down <= up - median)) {
      found.push(median - (down ?? median));
      left -= 1;
    } else {
      found.push(up - median);
      right += 1;
    }
  }
  return found;
}

/** Each value, in the order given, against those before it. */
export function heldAgainstEarlier(values: readonly number[]): readonly Held[] {
  const sorted: number[] = [];
  return values.map((value) => {
    let held: Held = { usual: null, outside: false };
    if (sorted.length >= leastEarlier) {
      const median = middleOf(sorted);
      const half = width * perDeviation * middleOf(deviations(sorted, median));
      held = { usual: { median, half, earlier: sorted.length }, outside: Math.abs(value - median) > half };
    }
    sorted.splice(placeOf(sorted, value), 0, value);
    return held;
  });
}
