/**
 * Published and constructed examples as data: what went in, what must come out, and who says so. Expected values are printed text; they are met to the
 * last figure printed, unless the case says how far apart two sources are known to be. They are never produced by the code under test.
 */
import { readFileSync } from 'node:fs';

/** Where an example comes from. */
export interface Source {
  readonly author: string;
  readonly title: string;
  readonly edition: string;
  readonly page: string;
  readonly mark: string;
  readonly where?: string;
}

export interface Case {
  /** A sentence that states the rule. */
  readonly rule: string;
  readonly source: Source;
  readonly reckon: string;
  readonly input: unknown;
  /** Path in the output to the value printed: text with its figures and unit, or anything else exactly. `null`: not there at all. */
  readonly expect: Readonly<Record<string, unknown>>;
  /** How far apart two sources are known to be. */
  readonly relative?: number;
  readonly within?: number;
}

export const marks = ['read', 'read second-hand', 'from memory', 'common practice', 'constructed for this project'];

export const cases = (name: string): readonly Case[] =>
  JSON.parse(readFileSync(new URL(`./data/${name}.json`, import.meta.url), 'utf8')) as Case[];

/** The member at a path such as `per_firing[0].gap_g`. */
export const member = (value: unknown, path: string): unknown =>
  path
    .split(/[.[\]]+/)
    .filter((key) => key !== '')
    .reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], value);

const units: Readonly<Record<string, number>> = { '%': 0.01, ozt: 31.1034768, gr: 0.06479891 };

/** A printed figure and half of its last place. */
export function printed(text: string): { readonly value: number; readonly half: number } {
  const m = /^(-?\d+(?:\.(\d+))?)(?: (%|ozt|gr))?$/.exec(text);
  if (!m) throw new Error(`not a printed figure: ${text}`);
  const unit = units[m[3] ?? ''] ?? 1;
  // a hair more than half, because the unit itself is a double
  return { value: Number(m[1]) * unit, half: 0.5001 * 10 ** -(m[2]?.length ?? 0) * unit };
}
