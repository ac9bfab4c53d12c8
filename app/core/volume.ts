/**
 * Mercury measured by volume: the mass, and how much worse it is known than by weight. Density of mercury at 101.325 kPa: expansion by Beattie
 * and others 1941 on the reference density of Bigg 1964 (from memory; methods.md 4). It is never used outside mercury's liquid range.
 */
import { type Decimal, decimalFromText, times, toNumber, zero } from './decimal.ts';
import { type Measured, measured } from './measured.ts';
import { type Notation, quantityFromText } from './quantity.ts';
import { good, type Result } from './result.ts';

const exact = (text: string): Decimal => decimalFromText(text) ?? zero;

/** Millilitres in one of each unit, exact. A bare fluid ounce is never guessed. */
export const millilitresPer: Readonly<Record<string, Decimal>> = {
  ml: exact('1'),
  l: exact('1000'),
  'fl-oz-imp': exact('28.4130625'),
  'fl-oz-us': exact('29.5735295625'),
};

const notation: Notation = {
  kind: 'volume',
  factors: millilitresPer,
  bare: [[/^(fl-?oz|floz|oz|ozs|ounces?)\.?$/i, 'bare-ounce']],
};

/** "186.0 ml" as exact millilitres; problems as in `quantityFromText`. */
export function millilitresFromText(text: unknown, field: string): Result<Decimal> {
  const got = quantityFromText(text, field, notation);
  return got.ok ? good(got.value.amount) : got;
}

/** The range in which mercury is a liquid at ordinary pressure. */
export const liquidFromC = -38.83;
export const liquidToC = 356.62;

const atZero = 13.59508;
const [c1, c2, c3, c4] = [18144.01e-8, 0.7016e-8, 2.8625e-11, 2.617e-14];

const expansion = (t: number): number => t * (c1 + t * (c2 + t * (c3 + t * c4)));

/** Density of mercury in grams per millilitre at a temperature in °C. */
export const mercuryDensity = (temperatureC: number): number => atZero / (1 + expansion(temperatureC));

/** Its exact derivative, grams per millilitre and kelvin; negative. */
export function mercuryDensitySlope(temperatureC: number): number {
  const t = temperatureC;
  const slope = c1 + t * (2 * c2 + t * (3 * c3 + t * 4 * c4));
  return (-atZero * slope) / (1 + expansion(t)) ** 2;
}

export interface MercuryVolume {
  readonly volumeMl: Decimal;
  readonly temperatureC: number;
  /** Standard uncertainty of the volume as read, millilitres; left out: not known. */
  readonly volumeUMl?: number | undefined;
  /** Standard uncertainty of the temperature, kelvins; left out: not known. */
  readonly temperatureUC?: number | undefined;
}

/** Mass in grams. */
export const massByVolumeG = (v: MercuryVolume): number => toNumber(v.volumeMl) * mercuryDensity(v.temperatureC);

/** Contributions in grams of the reading and of the temperature, signed. One that is not known counts as nothing. */
export const volumePartsG = (v: MercuryVolume): { readonly readingG: number; readonly temperatureG: number } => ({
  readingG: (v.volumeUMl ?? 0) * mercuryDensity(v.temperatureC),
  temperatureG: (v.temperatureUC ?? 0) * toNumber(v.volumeMl) * mercuryDensitySlope(v.temperatureC),
});

/** Standard uncertainty in grams; null when neither the volume's nor the temperature's is known. */
export function uOfVolumeG(v: MercuryVolume): number | null {
  if (v.volumeUMl === undefined && v.temperatureUC === undefined) return null;
  const parts = volumePartsG(v);
  return Math.hypot(parts.readingG, parts.temperatureG);
}

/** How far current tables of mercury's density lie apart, relative (safety.md 1.5): what every volume shares. */
export const densityRelativeU = 3e-5;

/**
 * The volume as a value for the balance, in micrograms. `reading` and `temperature` are sources of this volume (or of the vessel and the
 * thermometer, where these are shared); `density` is the one source that all volumes share.
 */
export function byVolume(
  v: MercuryVolume,
  sources: { readonly reading: string; readonly temperature: string; readonly density: string },
): Measured {
  const parts = volumePartsG(v);
  const ug = toNumber(times(v.volumeMl, exact('1000000'))) * mercuryDensity(v.temperatureC);
  return measured(ug, [
    [sources.reading, parts.readingG * 1e6],
    [sources.temperature, parts.temperatureG * 1e6],
    [sources.density, ug * densityRelativeU],
  ]);
}
