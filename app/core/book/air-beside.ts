/**
 * What stands beside a raw reading: brought to 25 °C and 101.325 kPa, as a share by volume, and against what air holds. Each needs temperature or pressure,
 * and where that was not recorded it cannot be told. A meter that normalises by itself is never normalised again. Method: safety.md 3.1, items 4 and 5; 7, item 15.
 */
import { normalisedMgM3, ofSaturation, partsPerBillion } from '../air-reading.ts';
import { toNumber } from '../decimal.ts';
import type { Body } from '../kinds/index.ts';
import { standardPressureKpa } from '../vapour.ts';
import { airFigure } from './air-as-read.ts';

export type CannotTell = 'temperature-not-recorded' | 'pressure-not-recorded' | 'by-the-meter';
export type OrCannotTell = number | { readonly why: CannotTell };

export interface Beside {
  /** As shown, mg/m³. */
  readonly mgM3: number;
  readonly normalisedMgM3: OrCannotTell;
  readonly ppb: OrCannotTell;
  /** Share of what air of that temperature holds at most. */
  readonly ofSaturation: OrCannotTell;
}

export function besideRaw(body: Body<'air-reading'>): Beside {
  const { temperatureC, pressureKpa, normalised } = body;
  const mgM3 = toNumber(airFigure(body).mgM3);
  if (temperatureC === undefined) {
    const none = { why: 'temperature-not-recorded' } as const;
    return { mgM3, normalisedMgM3: normalised === 'yes' ? { why: 'by-the-meter' } : none, ppb: none, ofSaturation: none };
  }
  const share = ofSaturation({ mgM3, temperatureC, pressureKpa: pressureKpa ?? standardPressureKpa });
  if (normalised === 'yes')
    return { mgM3, normalisedMgM3: { why: 'by-the-meter' }, ppb: { why: 'by-the-meter' }, ofSaturation: share };
  if (pressureKpa === undefined) {
    const none = { why: 'pressure-not-recorded' } as const;
    return { mgM3, normalisedMgM3: none, ppb: none, ofSaturation: share };
  }
  const reading = { mgM3, temperatureC, pressureKpa };
  return { mgM3, normalisedMgM3: normalisedMgM3(reading) ?? mgM3, ppb: partsPerBillion(reading) ?? 0, ofSaturation: share };
}
