/**
 * The form of a correction of any kind of entry: its fields filled with the present reading, the whole body as it should read, and why. It names
 * the reading its writer had before them: the last correction that stands, or the entry itself.
 */
import type { Book } from '../../core/book/book.ts';
import type { Reading } from '../../core/book/current.ts';
import { bodyFrom } from '../../core/kinds/index.ts';
import { type FormPlan, textOr } from '../../daybook/form.svelte.ts';
import { momentText } from '../../words/dates.ts';
import { daybookWords } from '../../words/daybook.ts';
import { fieldsOf } from '../../words/daybook-fields.ts';
import { comparedRows, type Row, rowsOf } from './rows.ts';
import { bodyOf, filled, momentOf, oneOfEach, type Typed, type TypedMoment, typedMoment } from './typed.ts';

export interface CorrectionValues {
  /** The reading that was before the writer when the form was opened. */
  corrects: string;
  fields: Typed;
  happened: TypedMoment;
  why: string;
}

/** Offset from UTC that goes with times the entry did not have before. */
const offsetOf = (reading: Reading): string => reading.happened.slice(-6);

export const correctionPlan = (reading: Reading): FormPlan<CorrectionValues> => ({
  name: `correction/${reading.id}`,
  kind: 'correction',
  start: () => ({
    corrects: reading.corrections.at(-1)?.id ?? reading.id,
    fields: filled(fieldsOf[reading.kind], reading.body as Record<string, unknown>),
    happened: typedMoment(reading.happened),
    why: '',
  }),
  full: () => ({
    corrects: reading.id,
    fields: oneOfEach(fieldsOf[reading.kind]),
    happened: typedMoment(reading.happened),
    why: '',
  }),
  body: (v) => {
    const happened = momentOf(v.happened, offsetOf(reading));
    return {
      corrects: v.corrects,
      body: bodyOf(fieldsOf[reading.kind], v.fields, offsetOf(reading)),
      happened: happened === reading.happened ? undefined : happened,
      why: textOr(v.why),
    };
  },
});

/** When it happened as a row, so that it is compared like every other answer. */
export const happenedRow = (moment: string): Row => ({
  path: 'happened',
  place: 'happened',
  under: [],
  label: daybookWords.happened,
  text: momentText(moment),
  names: [],
  weight: null,
});

/** Names of the rows that what is typed would change; null while it cannot be read yet. */
export function changesOf(book: Book, reading: Reading, values: CorrectionValues): readonly string[] | null {
  const typed = JSON.parse(JSON.stringify(correctionPlan(reading).body(values))) as { body: unknown; happened?: string };
  const got = bodyFrom(reading.kind, typed.body);
  if (!got.ok) return null;
  const now = typed.happened ?? reading.happened;
  const before = [happenedRow(reading.happened), ...rowsOf(book, reading.kind, reading.body, reading.happened)];
  const after = [happenedRow(now), ...rowsOf(book, reading.kind, got.value, now)];
  return comparedRows([before, after], [-1, 0]).map((row) => row.name);
}
