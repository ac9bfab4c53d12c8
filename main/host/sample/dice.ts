/** Numbers that look like a scale's scatter and are the same every time: the generator of the sample site. Never used for anything that counts. */

export interface Dice {
  /** Evenly between the two. */
  readonly between: (low: number, high: number) => number;
  /** A whole number from low to high, both included. */
  readonly whole: (low: number, high: number) => number;
}

/** A small generator with 32 bits of state (mulberry32, public domain arithmetic; from memory). */
export function diceFrom(seed: number): Dice {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    between: (low, high) => low + (high - low) * next(),
    whole: (low, high) => low + Math.floor(next() * (high - low + 1)),
  };
}
