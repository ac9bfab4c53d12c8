/**
 * The form of a charge: every lot of the safe has a row, and a weight takes it in. Rows are held by the lot's id, so that a draft taken up again
 * does not put a weight to another lot.
 */
import { anyKey } from '../../daybook/draft-shape.ts';
import { type FormPlan, textOr } from '../../daybook/form.svelte.ts';
import { isBlank, noWeighing, type WeighingEntry, weightOf } from '../shared/weighing-entry.ts';
import { type CheckAnswers, checksOf, noAnswer } from './checks-entry.ts';
import { noRowWeight, type RowWeight, rowWeighing } from './typed.ts';

export interface TakenLot extends RowWeight {
  take: 'whole' | 'part' | 'not-found';
  rest: WeighingEntry;
  looked: string;
}
export interface UnwrittenLot extends RowWeight {
  key: string;
  label: string;
}
export interface OtherThing {
  key: string;
  what: string;
  label: string;
  weight: WeighingEntry;
  vessel: string;
}

export interface ChargeValues {
  retort: string;
  scale: string;
  /** By the lot's id. */
  lots: Record<string, TakenLot>;
  unwritten: UnwrittenLot[];
  others: OtherThing[];
  holds: string;
  /** In percent, as typed. */
  fill: string;
  lining: string;
  lute: string;
  pipeClear: string;
  waterOn: string;
  dry: string;
  checks: CheckAnswers;
  note: string;
}

/** `scale`: the one the rest of a split lot is weighed on unless told otherwise. */
export const noTake = (scale = ''): TakenLot => ({ ...noRowWeight(), take: 'whole', rest: noWeighing(scale), looked: '' });
export const emptyUnwritten = (key: string): UnwrittenLot => ({ ...noRowWeight(), key, label: '' });
export const emptyOther = (key: string, scale: string): OtherThing => ({
  key,
  what: '',
  label: '',
  weight: noWeighing(scale),
  vessel: '',
});

/** Whether a lot's row says anything: a weight, that only a part was taken, or that it was not found. */
export const taken = (row: TakenLot | undefined): row is TakenLot =>
  row !== undefined && (row.take !== 'whole' || !isBlank(row.weight));

/** Ids of the lots that go in, in the order of the list shown. */
export const takenIds = (values: ChargeValues, shown: readonly string[]): readonly string[] => [
  ...shown.filter((id) => taken(values.lots[id])),
  ...Object.keys(values.lots).filter((id) => !shown.includes(id) && taken(values.lots[id])),
];

/** A share of percent as typed: "60" is 0.6. What is no number goes through for the schema to name. */
function shareOf(percent: string): number | string | undefined {
  const plain = textOr(percent)?.replace(/\s*%$/, '');
  if (plain === undefined) return undefined;
  return /^\d+(\.\d+)?$/.test(plain) ? Number((Number(plain) / 100).toFixed(6)) : plain;
}

const emptyCharge = (scale: string, retort: string, lots: ChargeValues['lots']): ChargeValues => ({
  retort,
  scale,
  lots,
  unwritten: [],
  others: [],
  holds: 'amalgam',
  fill: '',
  lining: '',
  lute: '',
  pipeClear: '',
  waterOn: '',
  dry: '',
  checks: {},
  note: '',
});

/** `shown`: ids of the lots on the page, in order. `checks`: names of the checks asked in the form. */
export const chargePlan = (
  scale: string,
  retort: string,
  shown: () => readonly string[],
  checks: readonly string[],
): FormPlan<ChargeValues> => ({
  name: 'charge',
  kind: 'charge',
  start: () => emptyCharge(scale, retort, Object.fromEntries(shown().map((id) => [id, noTake(scale)]))),
  full: () => ({
    ...emptyCharge(scale, retort, { [anyKey]: noTake(scale) }),
    unwritten: [emptyUnwritten('')],
    others: [emptyOther('', scale)],
    checks: { [anyKey]: noAnswer() },
  }),
  body: (v) => {
    const lots = takenIds(v, shown()).map((lot, i) => {
      const row = v.lots[lot] ?? noTake();
      const key = `l${i + 1}`;
      if (row.take === 'not-found') return { take: row.take, key, lot, looked: textOr(row.looked) };
      const weight = weightOf(rowWeighing(row, v.scale));
      return row.take === 'part'
        ? { take: row.take, key, lot, weight, rest: weightOf(row.rest) }
        : { take: row.take, key, lot, weight };
    });
    const unwritten = v.unwritten.map((row) => ({
      take: 'unwritten',
      key: row.key,
      label: textOr(row.label),
      weight: weightOf(rowWeighing(row, v.scale)),
    }));
    const others = v.others.map((other) => ({
      key: other.key,
      what: textOr(other.what),
      label: textOr(other.label),
      weight: weightOf(other.weight),
      vessel: textOr(other.vessel),
    }));
    return {
      retort: textOr(v.retort),
      holds: v.holds === 'amalgam' ? undefined : v.holds,
      rows: [...lots, ...unwritten],
      others: others.length > 0 ? others : undefined,
      fill: shareOf(v.fill),
      lining: textOr(v.lining),
      lute: textOr(v.lute),
      pipeClear: textOr(v.pipeClear),
      waterOn: textOr(v.waterOn),
      dry: textOr(v.dry),
      checks: checksOf(v.checks, checks),
      note: textOr(v.note),
    };
  },
});
