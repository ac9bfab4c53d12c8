/**
 * Mercury about to be drawn off a vessel: what the book has there, told beside the vessel, and the question where it is less than what is taken. A
 * book can be wrong, so the answer may be that it was so.
 */
import type { Book } from '../../../core/book/book.ts';
import { vesselPlace } from '../../../core/book/places.ts';
import { overStock, vesselStock } from '../../../core/book/vessel-stock.ts';
import type { Kind } from '../../../core/kinds/index.ts';
import { read } from '../../../core/read.ts';
import { weight } from '../../../core/shapes.ts';
import type { Question } from '../../../parts/question.ts';
import { gramText } from '../../../words/figures.ts';
import { placeText } from '../../../words/places.ts';
import { writeUp } from '../../../words/write-up.ts';
import { type WeighingEntry, weightOf } from '../../shared/weighing-entry.ts';
import type { Typed } from '../typed.ts';

const words = writeUp.stock;

/** Where a kind of entry names the vessel it draws from, beside the weight: the group of its body, or the body itself. */
const drawnIn: Partial<Record<Kind, string>> = { issue: '', transfer: '', cleaning: 'added', 'plate-work': 'applied' };

/** The vessel mercury is drawn from and its weight as typed; null where this entry draws none. */
function drawOf(kind: Kind, fields: Typed): { readonly vessel: string; readonly weight: WeighingEntry } | null {
  const group = drawnIn[kind];
  if (group === undefined || (kind === 'transfer' && (fields.way !== 'out' || fields.what !== 'mercury'))) return null;
  const typed = (group === '' ? fields : fields[group]) as Typed | undefined;
  const vessel = typed?.vessel;
  return typeof vessel === 'string' && vessel !== '' ? { vessel, weight: typed?.weight as WeighingEntry } : null;
}

/** A sentence on what the vessel holds by the book, for the field at this path of the draft; undefined elsewhere, and while no vessel is picked. */
export function stockSays(book: Book, kind: Kind, fields: Typed, path: string, at: string): string | undefined {
  const group = drawnIn[kind];
  const draw = drawOf(kind, fields);
  if (group === undefined || !draw || path !== (group === '' ? 'body.vessel' : `body.${group}.vessel`)) return undefined;
  const { ug } = vesselStock(book, draw.vessel, at);
  return words.holds(gramText(Math.round(ug), { sign: ug < -1 }));
}

/** The question before keeping; null where no more is taken than the book has. */
export function stockQuestion(book: Book, kind: Kind, fields: Typed, at: string): Question | null {
  const draw = drawOf(kind, fields);
  const typed = draw && weightOf(draw.weight);
  if (!draw || !typed) return null;
  const got = read(weight, JSON.parse(JSON.stringify(typed)));
  if (!got.ok) return null;
  const over = overStock(book, { vessel: draw.vessel, weight: got.value, at });
  if (!over) return null;
  const held = gramText(over.heldUg, { sign: over.heldUg < 0 });
  return { ...words.ask, says: words.asks(placeText(book, vesselPlace(draw.vessel)), gramText(over.takenUg), held) };
}
