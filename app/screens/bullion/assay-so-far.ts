/** What an assay comes to while it is typed, by the book's own reckoning: rows that are not complete are left out until they are. */
import { type AssayRead, assayRead, type Fineness } from '../../core/book/assays.ts';
import type { Reading } from '../../core/book/current.ts';
import { decimalFromNumber } from '../../core/decimal.ts';
import { bodyFrom } from '../../core/kinds/index.ts';
import { decimalText, placesFor } from '../../words/figures.ts';
import { uOfParts } from './figures.ts';

const full = (row: unknown, ...keys: readonly string[]): boolean =>
  typeof row === 'object' && row !== null && keys.every((key) => (row as Record<string, unknown>)[key] !== undefined);

/** The assay of a body as typed; null while it cannot be read. */
export function assaySoFar(body: Record<string, unknown>, happened: string): AssayRead | null {
  const plain = JSON.parse(JSON.stringify(body)) as Record<string, unknown>;
  const rows = (name: string, ...keys: readonly string[]) => {
    const list = plain[name];
    if (Array.isArray(list)) plain[name] = list.filter((row) => full(row, ...keys));
  };
  rows('replicates', 'sample', 'cornet');
  rows('proofs', 'taken', 'found');
  rows('titrations', 'sample', 'volumeMl', 'normality');
  if (typeof plain.sampling === 'object' && !full(plain.sampling, 'method'))
    plain.sampling = { ...plain.sampling, method: 'other' };
  const read = bodyFrom('assay', plain);
  if (!read.ok) return null;
  const reading: Reading<'assay'> = {
    id: 'typed',
    kind: 'assay',
    body: read.value,
    happened,
    corrections: [],
    struck: null,
  } as unknown as Reading<'assay'>;
  const found = assayRead(reading);
  return found.gold || found.silver || found.mercury || found.density ? found : null;
}

/** Expanded uncertainties (k = 2) of one fineness in parts per thousand: of the assay, of sampling, and of both; empty where one is not known. */
export function apart({ parts, uKnown, samplingKnown }: Fineness): {
  readonly own: string;
  readonly sampling: string;
  readonly both: string;
} {
  const of = (wanted: (source: string) => boolean) => 2 * uOfParts(new Map([...parts].filter(([source]) => wanted(source))));
  const text = (U: number) => decimalText(decimalFromNumber(U), placesFor(U));
  const isSampling = (source: string) => source.startsWith('sampling:');
  return {
    own: uKnown ? text(of((s) => !isSampling(s))) : '',
    sampling: samplingKnown ? text(of(isSampling)) : '',
    both: uKnown && samplingKnown ? text(of(() => true)) : '',
  };
}
