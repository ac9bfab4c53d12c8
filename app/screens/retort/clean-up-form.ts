/** The form of a clean-up: rows of balls or lots on one scale, and what else may be known. Rows in which nothing stands make no lot. */
import { anyKey } from '../../daybook/draft-shape.ts';
import { type FormPlan, numberOr, textOr } from '../../daybook/form.svelte.ts';
import { type MassEntry, massText, noMass } from '../../parts/mass-entry.ts';
import { isBlank, noWeighing, type WeighingEntry, weightOf } from '../shared/weighing-entry.ts';
import { type CheckAnswers, checksOf, noAnswer } from './checks-entry.ts';
import { noRowWeight, type RowWeight, rowWeighing } from './typed.ts';

export interface LotRow extends RowWeight {
  key: string;
  label: string;
  state: string;
  source: string;
  seal: string;
  /** Plates it was scraped off; drafts of before the form asked have none. */
  plates?: string[];
}

export interface CleanUpValues {
  scale: string;
  rows: LotRow[];
  /** State and source of rows that name none of their own. */
  state: string;
  source: string;
  type: string;
  where: string;
  ore: MassEntry;
  oreU: string;
  strained: WeighingEntry;
  strainedVessel: string;
  present: string[];
  locked: string;
  checks: CheckAnswers;
  note: string;
}

export const emptyRow = (key: string, label = ''): LotRow => ({
  ...noRowWeight(),
  key,
  label,
  state: '',
  source: '',
  seal: '',
  plates: [],
});

/** A key no row has: keys are never used again within a form, so that a row taken out and one put in are not taken for each other. */
export function nextKey(rows: readonly { readonly key: string }[], letter: string): string {
  const numbers = rows.map((row) => (row.key.startsWith(letter) ? Number(row.key.slice(letter.length)) : 0));
  return `${letter}${Math.max(0, ...numbers.filter(Number.isInteger)) + 1}`;
}

/** The label after this one: "B-09" to "B-10". A label that ends in no number says nothing about the next. */
export function labelAfter(label: string): string {
  const m = /^(.*?)(\d+)$/.exec(label.trim());
  return m ? `${m[1]}${String(Number(m[2]) + 1).padStart(m[2]?.length ?? 0, '0')}` : '';
}

const written = (row: LotRow): boolean => !isBlank(row.weight);

/** The rows that make lots, in order: the fields of the form stand in the same order as those of the entry. */
export function lotRows(rows: readonly LotRow[]): readonly LotRow[] {
  // a row with a label that only follows on from the one above is blank; the first row always counts, so that an empty form says what is missing
  return rows.filter(
    (row, i) => i === 0 || written(row) || (row.label.trim() !== '' && row.label !== labelAfter(rows[i - 1]?.label ?? '')),
  );
}

const start = (scale: string): CleanUpValues => ({
  scale,
  rows: [emptyRow('b1')],
  state: '',
  source: '',
  type: '',
  where: '',
  ore: noMass('t'),
  oreU: '',
  strained: noWeighing(scale),
  strainedVessel: '',
  present: [],
  locked: '',
  checks: {},
  note: '',
});

/** `checks`: names of the checks asked in the form. */
export const cleanUpPlan = (scale: string, checks: readonly string[] = []): FormPlan<CleanUpValues> => ({
  name: 'clean-up',
  kind: 'clean-up',
  start: () => start(scale),
  full: () => ({ ...start(scale), checks: { [anyKey]: noAnswer() } }),
  body: (v) => {
    const ore = massText(v.ore);
    const strained = weightOf(v.strained);
    return {
      type: textOr(v.type),
      where: textOr(v.where),
      ore: ore === undefined ? undefined : { mass: ore, u: numberOr(v.oreU) },
      lots: lotRows(v.rows).map((row) => ({
        key: row.key,
        label: textOr(row.label),
        weight: weightOf(rowWeighing(row, v.scale)),
        state: textOr(row.state || v.state),
        source: textOr(row.source || v.source),
        seal: textOr(row.seal),
        plates: row.plates?.length ? [...row.plates] : undefined,
      })),
      strained:
        strained === undefined && v.strainedVessel === '' ? undefined : { weight: strained, vessel: textOr(v.strainedVessel) },
      present: v.present.length > 0 ? [...v.present] : undefined,
      locked: textOr(v.locked),
      checks: checksOf(v.checks, checks),
      note: textOr(v.note),
    };
  },
});
