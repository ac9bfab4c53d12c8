/**
 * One air reading seen three ways: brought to 25 °C and 101.325 kPa, as a share by volume, and against what air can hold at all. The raw figure always
 * stays beside the normalised one; which of them a rule wants is the rule's affair. Method: safety.md 3.1, items 4 and 5.
 */
import { gasConstant, kelvinAtZeroC, mercuryMolarMass, saturation, standardPressureKpa } from './vapour.ts';

const normalC = 25;

export interface AirReading {
  readonly mgM3: number;
  readonly temperatureC: number;
  readonly pressureKpa: number;
}

/** Immediately dangerous to life or health, mg/m³: NIOSH, 1994 revision (safety.md 2.1). A warning to leave, never a limit to work up to. */
export const idlhMgM3 = 10;

export const readingFindings = ['above-saturation', 'at-or-above-idlh', 'negative'] as const;
export type ReadingFinding = (typeof readingFindings)[number];

/** The reading at 25 °C and 101.325 kPa, mg/m³; null when the pressure is not above zero. */
export const normalisedMgM3 = ({ mgM3, temperatureC, pressureKpa }: AirReading): number | null =>
  pressureKpa > 0
    ? mgM3 * (standardPressureKpa / pressureKpa) * ((temperatureC + kelvinAtZeroC) / (normalC + kelvinAtZeroC))
    : null;

/** Parts per thousand million by volume of the air as it was; null when the pressure is not above zero. */
export const partsPerBillion = ({ mgM3, temperatureC, pressureKpa }: AirReading): number | null =>
  pressureKpa > 0 ? (((mgM3 / mercuryMolarMass) * gasConstant * (temperatureC + kelvinAtZeroC)) / pressureKpa) * 1000 : null;

/** Share of what the air could hold at most. */
export const ofSaturation = ({ mgM3, temperatureC, pressureKpa }: AirReading): number =>
  mgM3 / saturation(temperatureC, pressureKpa).mgM3;

/** What the raw figure shows. */
export function findingsOf(reading: AirReading): readonly ReadingFinding[] {
  const findings: ReadingFinding[] = [];
  if (reading.mgM3 > saturation(reading.temperatureC, reading.pressureKpa).mgM3) findings.push('above-saturation');
  if (reading.mgM3 >= idlhMgM3) findings.push('at-or-above-idlh');
  if (reading.mgM3 < 0) findings.push('negative');
  return findings;
}
