/**
 * What is typed into a weighing field, and the weight of the record it makes. The digits stay as they were read; nothing is reckoned here. A field
 * in which nothing was typed makes no weight at all.
 */
import type { Weight } from '../../core/shapes.ts';
import { type MassEntry, massEntry, massText, noMass } from '../../parts/mass-entry.ts';

export const volumeUnits = ['ml', 'l', 'fl-oz-imp', 'fl-oz-us'] as const;

/** Plain data only: it goes into drafts. Empty text: nothing typed. */
export interface WeighingEntry {
  how: 'scale' | 'volume' | 'stated';
  scale: string;
  gross: MassEntry;
  tareHow: 'none' | 'reading' | 'vessel';
  tare: MassEntry;
  vessel: string;
  volume: string;
  volumeUnit: string;
  volumeU: string;
  temperature: string;
  temperatureU: string;
  mass: MassEntry;
  u: MassEntry;
  by: string;
  /** Lines pasted from the scale's output: they stay in the draft. */
  log: string;
}

/** An empty field, on the scale used last. */
export const noWeighing = (scale = '', unit: MassEntry['unit'] = 'g'): WeighingEntry => ({
  how: 'scale',
  scale,
  gross: noMass(unit),
  tareHow: 'none',
  tare: noMass(unit),
  vessel: '',
  volume: '',
  volumeUnit: 'ml',
  volumeU: '',
  temperature: '',
  temperatureU: '',
  mass: noMass(unit),
  u: noMass(unit),
  by: '',
  log: '',
});

/** Fields filled from a weight of the record, for a correction. */
export function weighingEntry(weight: Weight): WeighingEntry {
  const empty = noWeighing();
  switch (weight.how) {
    case 'scale':
      return {
        ...empty,
        scale: weight.scale ?? '',
        gross: massEntry(weight.gross),
        tareHow: weight.vessel !== undefined ? 'vessel' : weight.tare !== undefined ? 'reading' : 'none',
        tare: massEntry(weight.tare),
        vessel: weight.vessel ?? '',
      };
    case 'volume': {
      const [volume = '', volumeUnit = 'ml'] = weight.volume.split(' ');
      return {
        ...empty,
        how: 'volume',
        volume,
        volumeUnit,
        volumeU: weight.volumeUMl === undefined ? '' : String(weight.volumeUMl),
        temperature: String(weight.temperatureC),
        temperatureU: weight.temperatureUC === undefined ? '' : String(weight.temperatureUC),
      };
    }
    case 'stated':
      return { ...empty, how: 'stated', mass: massEntry(weight.mass), u: massEntry(weight.u), by: weight.by ?? '' };
  }
}

const text = (typed: string): string | undefined => (typed.trim() === '' ? undefined : typed.trim());

/** A number, or the text as typed so that the schema names the field. */
function number(typed: string): number | string | undefined {
  const plain = text(typed)?.replace('−', '-');
  return plain === undefined ? undefined : /^-?\d+(\.\d+)?$/.test(plain) ? Number(plain) : plain;
}

/** Nothing was read or stated in this field. */
export function isBlank(entry: WeighingEntry): boolean {
  const first = { scale: entry.gross.amount, volume: entry.volume, stated: entry.mass.amount }[entry.how];
  return first.trim() === '' && (entry.how !== 'scale' || entry.tareHow === 'none' || entry.tare.amount.trim() === '');
}

/**
 * The weight as it would be kept, to be read by the schema `weight`; undefined when the field is blank. A tare that was chosen and not filled in is
 * `null`, which the schema names as missing: left out it would count as a scale that had been zeroed, and the gross for the net.
 */
export function weightOf(entry: WeighingEntry): Record<string, unknown> | undefined {
  if (isBlank(entry)) return undefined;
  switch (entry.how) {
    case 'scale':
      return {
        how: 'scale',
        scale: text(entry.scale),
        gross: massText(entry.gross),
        tare: entry.tareHow === 'none' ? undefined : (massText(entry.tare) ?? null),
        vessel: entry.tareHow === 'vessel' ? (text(entry.vessel) ?? null) : undefined,
      };
    case 'volume':
      return {
        how: 'volume',
        volume: `${entry.volume.trim()} ${entry.volumeUnit}`,
        volumeUMl: number(entry.volumeU),
        temperatureC: number(entry.temperature),
        temperatureUC: number(entry.temperatureU),
      };
    case 'stated':
      return { how: 'stated', mass: massText(entry.mass), u: massText(entry.u), by: text(entry.by) };
  }
}
