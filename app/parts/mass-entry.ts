/**
 * What is typed into a field for a mass, and the text it is kept as. The digits stay as typed; a unit typed with them ("18 ozt 18 dwt") wins
 * over the one picked beside the field. A bare "oz" or "ton" is never guessed: `whichUnit` says that the field must ask.
 */
import type { MassUnit } from '../core/mass.ts';

export interface MassEntry {
  /** As typed: "955.6", or "18 ozt 18 dwt". */
  amount: string;
  /** The unit picked beside it; empty while none is. */
  unit: MassUnit | '';
}

/** Units offered beside the field, the usual ones first. */
export const offeredUnits: readonly MassUnit[] = [
  'g',
  'kg',
  'mg',
  'ozt',
  'dwt',
  'gr',
  'lb',
  'oz-av',
  'lbt',
  't',
  'long-ton',
  'short-ton',
];

export const noMass = (unit: MassUnit | '' = 'g'): MassEntry => ({ amount: '', unit });

/** Fields filled from a kept mass: one number and unit are taken apart, anything longer stays as it was written. */
export function massEntry(text: string | undefined): MassEntry {
  if (text === undefined) return noMass();
  const m = /^(\S+) (\S+)$/.exec(text.trim());
  const unit = offeredUnits.find((u) => u === m?.[2]);
  return m?.[1] !== undefined && unit ? { amount: m[1], unit } : { amount: text, unit: '' };
}

/** The text to keep, or undefined when nothing was typed. */
export function massText(entry: MassEntry): string | undefined {
  const amount = entry.amount.trim();
  if (amount === '') return undefined;
  return /[A-Za-z]/.test(amount) || entry.unit === '' ? amount : `${amount} ${entry.unit}`;
}

const ounce = /\b(?:oz|ozs|ounces?)\.?$/i;
const ton = /\b(?:tons?)\.?$/i;
const endsAs = (amount: string, word: RegExp) => {
  const text = amount.trim().replace(/([\d.])([A-Za-z])/g, '$1 $2');
  // "fl-oz", "oz-av" and the like are not bare
  return word.test(text) && !/-\S*$/.test(text);
};

/** The units a bare word could mean, or null when nothing is in doubt. */
export function whichUnit(entry: MassEntry): readonly MassUnit[] | null {
  if (endsAs(entry.amount, ounce)) return ['ozt', 'oz-av'];
  if (endsAs(entry.amount, ton)) return ['long-ton', 'short-ton', 't'];
  return null;
}

/** The entry with its bare word answered. */
export const withUnit = (entry: MassEntry, unit: MassUnit): MassEntry => ({
  amount: entry.amount.trim().replace(/\s*[A-Za-z]+\.?$/, ''),
  unit,
});
