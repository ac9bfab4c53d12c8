/**
 * Lines of a scale's serial output, pasted: each is a reading that can be taken, or is refused for a reason that has a name. Forms in common use (common
 * practice, no source): a mark of rest (`ST` still, `US` moving, `OL` overload; or `S S` and `S D`), what is shown (`GS` gross, `NT` net, `TR` tare), sign,
 * digits, unit. Nothing is guessed: a unit that could mean two things and a mark that could be one of thousands are refused.
 */
import type { MassUnit } from '../../core/mass.ts';
import { type MassEntry, offeredUnits } from '../../parts/mass-entry.ts';
import { notation } from '../../words/notation.ts';

export type LineRefused = 'moving' | 'overload' | 'tare' | 'below' | 'comma' | 'unit' | 'no-unit' | 'not-read';

export interface ScaleLine {
  /** The line as it was pasted. */
  readonly text: string;
  /** What can be taken from it; null where it is refused. */
  readonly reading: MassEntry | null;
  /** Why it is refused. */
  readonly why: LineRefused | null;
  /** The scale told that it stood still; where it told nothing of it, false. */
  readonly still: boolean;
}

/** Most lines looked at: a log of a day, not of a year. */
export const mostLines = 200;

const units: Readonly<Record<string, MassUnit>> = {
  ...Object.fromEntries(offeredUnits.map((unit) => [unit.toLowerCase(), unit])),
  gn: 'gr',
  toz: 'ozt',
};

function lineOf(text: string): ScaleLine {
  const refused = (why: LineRefused): ScaleLine => ({ text, reading: null, why, still: false });
  const line = text.trim();
  const rest = /^(?:(ST|US|OL)\b|S\s+([SDI])\b)[\s,]*/i.exec(line);
  const mark = (rest?.[1] ?? rest?.[2] ?? '').toUpperCase();
  if (mark === 'OL' || /\bOL\b/i.test(line)) return refused('overload');
  if (mark === 'US' || mark === 'D') return refused('moving');
  if (mark === 'I') return refused('not-read');
  const shown = /^(?:(GS|NT|TR|G|N|T)\b)[\s,:]*/i.exec(line.slice(rest?.[0].length ?? 0));
  if (shown?.[1]?.toUpperCase().startsWith('T')) return refused('tare');
  const figure = line.slice((rest?.[0].length ?? 0) + (shown?.[0].length ?? 0));
  const m = /^([+\-−]?)\s*(\d+(?:[.,]\d+)?)\s*([A-Za-z%][A-Za-z%-]*)?$/.exec(figure);
  if (!m) return refused('not-read');
  const [, sign, digits = '', unit] = m;
  if (sign === '-' || sign === '−') return refused('below');
  if (digits.includes(',') && notation().decimal !== 'comma') return refused('comma');
  if (unit === undefined) return refused('no-unit');
  const known = Object.hasOwn(units, unit.toLowerCase()) ? units[unit.toLowerCase()] : undefined;
  if (known === undefined) return refused('unit');
  // scales fill up with noughts on the left; what stands before the first digit that counts was not read
  const amount = digits.replace(',', '.').replace(/^0+(?=\d)/, '');
  return { text, reading: { amount, unit: known }, why: null, still: mark === 'ST' || mark === 'S' };
}

/** The lines that hold anything, in their order, at most `mostLines` from the end. */
export const scaleLines = (pasted: string): readonly ScaleLine[] =>
  pasted
    .split(/\r\n|\r|\n/)
    .map((text) => text.replace(/[^\P{C}\t]/gu, ''))
    .filter((text) => text.trim() !== '')
    .slice(-mostLines)
    .map(lineOf);

/**
 * What was pasted into a reading, where it is a scale's output and not a number: null where it is not. `only`: the one reading there is to take, where the
 * paste is a single line and the scale stood still.
 */
export function pastedLog(text: string): { readonly only: MassEntry | null } | null {
  const lines = scaleLines(text);
  const [first] = lines;
  if (!first || (lines.length === 1 && !/^\s*(?:(?:ST|US|OL|GS|NT|TR)\b|S\s+[SDI]\b)/i.test(text))) return null;
  return { only: lines.length === 1 && first.still ? first.reading : null };
}
