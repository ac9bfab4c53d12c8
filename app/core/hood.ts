/**
 * Air a capture hood has to draw so that a source at a distance is still caught: an estimate for a conversation with whoever designs it, never a design.
 * Q = v · (10 x² + A), three quarters of it with a flange (from memory; safety.md 3.1, item 11; good up to about 1.5 duct diameters).
 */
import { type Decimal, decimalFromText, plus, times, zero } from './decimal.ts';

const exact = (text: string): Decimal => decimalFromText(text) ?? zero;

export interface Hood {
  /** Capture velocity wanted at the source, m/s. */
  readonly captureMs: Decimal;
  /** From hood face to source, m. */
  readonly distanceM: Decimal;
  /** Open face of the hood, m². */
  readonly areaM2: Decimal;
  readonly flanged: boolean;
}

/** Cubic metres in a cubic foot, exact. */
export const cubicFootM3 = exact('0.028316846592');

/** Cubic metres a second, exact. */
export function hoodM3s(hood: Hood): Decimal {
  const reach = plus(times(exact('10'), times(hood.distanceM, hood.distanceM)), hood.areaM2);
  const plain = times(hood.captureMs, reach);
  return hood.flanged ? times(exact('0.75'), plain) : plain;
}
