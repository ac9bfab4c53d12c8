/**
 * The normal and the chi-square distribution, to about fifteen digits. The error function by its series and continued fraction, chi-square by the
 * incomplete gamma function: Abramowitz and Stegun, Handbook of Mathematical Functions, 7.1.6, 7.1.14, 6.5.29 and 6.5.31 (from memory).
 */

const rootTwoPi = Math.sqrt(2 * Math.PI);

/** Density of the standard normal distribution. */
export const normalDensity = (x: number): number => Math.exp((-x * x) / 2) / rootTwoPi;

/** Tail of the standard normal distribution above x ≥ 3: the continued fraction of its ratio to the density. */
function farTail(x: number): number {
  let fraction = x;
  for (let k = 120; k >= 1; k -= 1) fraction = x + k / fraction;
  return normalDensity(x) / fraction;
}

/** Probability below x. */
export function normalBelow(x: number): number {
  if (x > 3) return 1 - farTail(x);
  if (x < -3) return farTail(-x);
  let term = x;
  let total = x;
  for (let k = 1; Math.abs(term) > 1e-18 * Math.abs(total); k += 1) {
    term *= (x * x) / (2 * k + 1);
    total += term;
    if (term === 0) break;
  }
  return 0.5 + normalDensity(x) * total;
}

/** Logarithm of the gamma function of half a whole number above zero: a = freedom / 2. */
function logGammaOfHalf(freedom: number): number {
  let total = freedom % 2 === 0 ? 0 : Math.log(Math.PI) / 2;
  for (let a = freedom / 2 - 1; a > 0; a -= 1) total += Math.log(a);
  return total;
}

/** Probability that chi-square with so many degrees of freedom stays below x. */
export function chiSquareBelow(x: number, freedom: number): number {
  if (x <= 0) return 0;
  const a = freedom / 2;
  const z = x / 2;
  const scale = Math.exp(a * Math.log(z) - z - logGammaOfHalf(freedom));
  if (z < a + 1) {
    let term = 1 / a;
    let total = term;
    for (let k = 1; term > 1e-17 * total; k += 1) {
      term *= z / (a + k);
      total += term;
    }
    return scale * total;
  }
  // the tail as a continued fraction, from far enough down
  let fraction = 0;
  for (let k = 400; k >= 1; k -= 1) fraction = (k * (k - a)) / (z + 2 * k + 1 - a - fraction);
  return 1 - scale / (z + 1 - a - fraction);
}

/** The value chi-square stays below with this probability (between 0 and 1), for at least one degree of freedom. */
export function chiSquareQuantile(probability: number, freedom: number): number {
  let [low, high] = [0, freedom + 10];
  while (chiSquareBelow(high, freedom) < probability) high *= 2;
  for (let i = 0; i < 200 && high - low > 1e-15 * high; i += 1) {
    const middle = (low + high) / 2;
    if (chiSquareBelow(middle, freedom) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
