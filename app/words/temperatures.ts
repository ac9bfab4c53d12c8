/** Temperatures for the eye: as the record has them in degrees Celsius, or in degrees Fahrenheit where the site writes those. */
import { decimalFromNumber, rounded, toText } from '../core/decimal.ts';
import { marked, notation } from './notation.ts';

const inF = (): boolean => notation().temperature === 'fahrenheit';

/** The number alone: "21.5"; degrees Fahrenheit to a tenth, none that says nothing. What is no number stays as it is. */
export function degreesText(c: number | string): string {
  const value = Number(c);
  if (Number.isNaN(value) || c === '') return String(c);
  const text = inF() ? toText(rounded(decimalFromNumber((value * 9) / 5 + 32), 1)).replace(/\.0$/, '') : String(c);
  return marked(text).replace('-', '−');
}

/** The bare number in the unit written here: where a scale is drawn. */
export const degreesValue = (c: number): number => (inF() ? (c * 9) / 5 + 32 : c);

/** The unit: "°C". */
export const degreeUnit = (): string => (inF() ? '°F' : '°C');

/** A field's unit as the site has it: °F for °C where it writes those, any other as it is. */
export const unitShown = (unit: string | undefined): string | undefined => (unit === '°C' ? degreeUnit() : unit);

/** "21.5 °C". */
export const temperatureText = (c: number | string): string => `${degreesText(c)}\u00a0${degreeUnit()}`;
