/** Yesterday's issue again: the vessels, the part of the circuit and the scale of the last issue, and never its weight. */
import type { Book } from '../../../core/book/book.ts';
import type { Reading } from '../../../core/book/current.ts';
import { massEntry } from '../../../parts/mass-entry.ts';
import { fieldsOf } from '../../../words/daybook-fields.ts';
import { scalesByUse } from '../../shared/scales-by-use.ts';
import { noWeighing, type WeighingEntry } from '../../shared/weighing-entry.ts';
import { filled, type Typed } from '../typed.ts';
import { offeredFor } from './offered.ts';
import { usualScale } from './plan.ts';

/** The issue written last, by when it happened; null where there is none yet. */
export const lastIssue = (book: Book): Reading<'issue'> | null => book.current.of('issue').at(-1) ?? null;

/** How it was weighed, without what was read: the scale while it is in service, or the unit of a measured volume. */
function sameWay(book: Book, { body: { weight } }: Reading<'issue'>, at: string): WeighingEntry {
  const usual = usualScale(book, at);
  if (weight.how === 'volume') {
    const unit = weight.volume.split(' ')[1] ?? 'ml';
    return { ...noWeighing(usual.scale, usual.unit), how: 'volume', volumeUnit: unit };
  }
  const scale = weight.how === 'scale' ? scalesByUse(book, at).find((s) => s.id === weight.scale) : undefined;
  return scale ? noWeighing(scale.id, massEntry(scale.d).unit || 'g') : noWeighing(usual.scale, usual.unit);
}

/** Fields of an issue begun from the last one: a vessel, battery or plate that is out of use by then is left empty, with doses, looks and remark. */
export function issueLike(book: Book, last: Reading<'issue'>, at: string): Typed {
  const { vessel, to, into, battery, plate } = last.body;
  const day = at.slice(0, 10);
  const still = (kind: 'vessel' | 'battery' | 'plate', id: string | undefined) =>
    id !== undefined && offeredFor(book, 'issue', kind, kind, day)(id) ? id : undefined;
  const body = {
    to,
    vessel: still('vessel', vessel),
    into: still('vessel', into),
    battery: still('battery', battery),
    plate: still('plate', plate),
  };
  return { ...filled(fieldsOf.issue, body, usualScale(book, at)), weight: sameWay(book, last, at) };
}
