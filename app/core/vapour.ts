/**
 * Mercury vapour over liquid mercury: its pressure and what saturated air holds. Correlation of Huber, Laesecke and Friend, Ind. Eng. Chem. Res. 45
 * (2006) 7351, equation 4 (coefficients as printed in openly published copies; safety.md 1.2), good to 1 % from 0 to 60 °C. It says what air can hold at
 * most, never what a room holds.
 */

/** Constants as fixed in safety.md section 0. */
export const gasConstant = 8.314462618;
/** Grams per mole. */
export const mercuryMolarMass = 200.592;
export const kelvinAtZeroC = 273.15;
/** One standard atmosphere, kilopascals. */
export const standardPressureKpa = 101.325;

/** From the triple point to the critical point, °C. */
export const vapourFromC = -38.83;
export const vapourToC = 1490.85;

const criticalK = 1764;
const criticalPa = 167e6;
const terms: readonly (readonly [coefficient: number, power: number])[] = [
  [-4.57618368, 1],
  [-1.40726277, 1.89],
  [2.36263541, 2],
  [-31.0889985, 8],
  [58.0183959, 8.5],
  [-27.6304546, 9],
];

/** The correlation step by step, so that a hand can follow it. */
export interface VapourSteps {
  readonly kelvin: number;
  /** 1 − T/Tc. */
  readonly x: number;
  /** Each coefficient times x to its power, in the order of the equation. */
  readonly terms: readonly number[];
  /** Their sum. */
  readonly series: number;
  /** Tc/T. */
  readonly ratio: number;
  /** ln(p/pc). */
  readonly exponent: number;
  readonly pressurePa: number;
}

/** The steps at a temperature in °C between the triple and the critical point. */
export function vapourSteps(temperatureC: number): VapourSteps {
  const kelvin = temperatureC + kelvinAtZeroC;
  // the upper end of the range is the critical point itself, where nothing is left of x
  const x = Math.max(0, 1 - kelvin / criticalK);
  const steps = terms.map(([coefficient, power]) => coefficient * x ** power);
  const series = steps.reduce((total, step) => total + step, 0);
  const ratio = criticalK / kelvin;
  const exponent = ratio * series;
  return { kelvin, x, terms: steps, series, ratio, exponent, pressurePa: criticalPa * Math.exp(exponent) };
}

/** Vapour pressure of mercury in pascals at a temperature in °C between the triple and the critical point. */
export const vapourPressurePa = (temperatureC: number): number => vapourSteps(temperatureC).pressurePa;

/** Milligrams of mercury in a cubic metre at a partial pressure in pascals (ideal gas). */
export const concentrationMgM3 = (pressurePa: number, temperatureC: number): number =>
  ((pressurePa * mercuryMolarMass) / (gasConstant * (temperatureC + kelvinAtZeroC))) * 1e3;

/** What saturated vapour comes to under an ambient pressure. */
export interface Saturation {
  readonly pressurePa: number;
  readonly mgM3: number;
  /** Parts per million by volume; null when the ambient pressure is not above zero. */
  readonly ppm: number | null;
  /** The vapour pressure passes ambient: the vapour stands at ambient pressure and is not diluted by air. */
  readonly boiling: boolean;
}

/** Saturated vapour at a temperature in °C and an ambient pressure in kilopascals. */
export function saturation(temperatureC: number, ambientKpa: number = standardPressureKpa): Saturation {
  const ambientPa = ambientKpa * 1000;
  const own = vapourPressurePa(temperatureC);
  const boiling = ambientPa > 0 && own > ambientPa;
  const pressurePa = boiling ? ambientPa : own;
  return {
    pressurePa,
    mgM3: concentrationMgM3(pressurePa, temperatureC),
    ppm: boiling ? 1e6 : ambientPa > 0 ? (own / ambientPa) * 1e6 : null,
    boiling,
  };
}

/** Warmer than any room air: vapour this hot comes off a retort, not out of a room. */
export const hotFromC = 50;

export const vapourFindings = ['boiling', 'hot-for-room-air'] as const;
export type VapourFinding = (typeof vapourFindings)[number];
