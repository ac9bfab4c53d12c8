/**
 * The form of any kind of entry that is written from the description of its fields: what stands in it at first, and the body it makes. A list that
 * must hold something begins with one row; a stock-take begins with every place that has to be answered.
 */
import type { Book } from '../../../core/book/book.ts';
import type { Reading } from '../../../core/book/current.ts';
import { ownNotation } from '../../../core/book/site-notation.ts';
import { lastSaid } from '../../../core/book/site-says.ts';
import { type Body, bodyFrom, type Kind } from '../../../core/kinds/index.ts';
import type { FormPlan } from '../../../daybook/form.svelte.ts';
import { type MassEntry, massEntry, noMass } from '../../../parts/mass-entry.ts';
import { fieldsOf } from '../../../words/daybook-fields.ts';
import { entryLine } from '../../../words/daybook-line.ts';
import { scalesByUse } from '../../shared/scales-by-use.ts';
import { rowsShown } from '../../shared/work-answers.ts';
import { bodyOf, filled, newItem, oneOfEach, type Typed, type UsualScale } from '../typed.ts';
import { countRows } from './count.ts';

export interface WriteValues {
  fields: Typed;
}

/** The scale used last, in the unit of its display. */
export function usualScale(book: Book, now: string): UsualScale {
  const [first] = scalesByUse(book, now);
  return { scale: first?.id ?? '', unit: massEntry(first?.d).unit || 'g' };
}

/** The unit that ore was last written in; tonnes where none was yet. */
function oreUnit(book: Book): MassEntry['unit'] {
  const last = book.current.of('crushing').findLast((r) => r.body.ore !== undefined)?.body.ore;
  return (last && massEntry(last.mass).unit) || 't';
}

export interface WriteStart {
  readonly book: Book;
  readonly now: string;
  /** The thing of a register that is stated anew. */
  readonly of?: { readonly id: string; readonly body: unknown } | undefined;
  /** A thing to begin with: the charge of a melt or of its being taken apart. */
  readonly about?: string | undefined;
}

function startOf(kind: Kind, { book, now, of, about }: WriteStart): Typed {
  const fields = fieldsOf[kind];
  const usual = usualScale(book, now);
  if (of) return filled(fields, { ...(of.body as Record<string, unknown>), of: of.id }, usual);
  const stands =
    kind === 'stop-rules' ||
    kind === 'site-figures' ||
    kind === 'site-numbers' ||
    kind === 'retention' ||
    kind === 'lead-times' ||
    kind === 'site-notation'
      ? lastSaid(book.current, kind, now)
      : null;
  // the list written last takes the place of the one before: a new one begins with what stands
  if (stands) return filled(fields, { ...stands.body, note: undefined }, usual);
  const typed = filled(fields, kind === 'site-notation' ? { ...ownNotation } : {}, usual);
  if (kind === 'stock-take') return { ...typed, lines: countRows(book, now, usual) };
  for (const { key, shape, needed } of fields)
    if (shape.is === 'list' && needed) (typed[key] as Typed[]).push(newItem(shape.fields, typed, usual));
  const ore = typed.ore as Typed | undefined;
  if (ore) ore.mass = noMass(oreUnit(book));
  if (about !== undefined && kind === 'unmake') typed.charge = about;
  const sponge = kind === 'melt' ? (typed.sponges as Typed[])[0] : undefined;
  if (about !== undefined && sponge) sponge.charge = about;
  return typed;
}

/** Offset from UTC of times typed into it: the clock's own. */
const offsetAt = (now: string): string => now.slice(-6);

export const writePlan = (kind: Kind, start: WriteStart): FormPlan<WriteValues> => ({
  name: start.of ? `${kind}/${start.of.id}` : kind,
  kind,
  start: () => ({ fields: startOf(kind, start) }),
  full: () => ({ fields: oneOfEach(fieldsOf[kind]) }),
  body: ({ fields }) => {
    const checks: Typed = Array.isArray(fields.checks)
      ? { checks: [...rowsShown(start.book.current, kind, start.now, fields, fields.checks as Typed[])] }
      : {};
    return bodyOf(fieldsOf[kind], { ...fields, ...checks }, offsetAt(start.now));
  },
});

/** What would be kept, as the daybook will say it; empty while it cannot be read yet. */
export function readBackOf(book: Book, draft: Record<string, unknown>, now: string): string {
  const kind = draft.kind as Kind;
  const body = bodyFrom(kind, draft.body);
  if (!body.ok) return '';
  const happened = typeof draft.happened === 'string' ? draft.happened : now;
  const reading = { id: String(draft.id), kind, body: body.value as Body<Kind>, happened, corrections: [], struck: null };
  return entryLine(book, reading as unknown as Reading, true);
}
