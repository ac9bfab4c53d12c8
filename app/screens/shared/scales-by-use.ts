/** The scales that can be picked, the one read last before the others: a person at the bench seldom changes it. */
import type { Book } from '../../core/book/book.ts';
import { stateAt } from '../../core/book/registers.ts';
import { dayOf } from '../../core/time.ts';

export interface ScaleChoice {
  readonly id: string;
  readonly label: string;
  /** The step of its display, as written. */
  readonly d: string;
}

/** Entries looked at for the last use: more than a day's work at any site. */
const lookBack = 200;

/** Ids of the scales named in a body, at any depth. */
function scalesIn(value: unknown): readonly string[] {
  if (Array.isArray(value)) return value.flatMap(scalesIn);
  if (value === null || typeof value !== 'object') return [];
  const own = 'how' in value && value.how === 'scale' && 'scale' in value && typeof value.scale === 'string' ? [value.scale] : [];
  return [...own, ...Object.values(value).flatMap(scalesIn)];
}

/** Scales in service at that moment, last used first, then as they were entered. */
export function scalesByUse(book: Book, at: string): readonly ScaleChoice[] {
  const used = book.entries
    .slice(-lookBack)
    .toReversed()
    .flatMap((e) => scalesIn(e.body));
  const order = [...new Set([...used, ...book.registers.scale.keys()])];
  return order.flatMap((id) => {
    const thing = book.registers.scale.get(id);
    if (!thing) return [];
    const { body } = stateAt(thing, at);
    return body.out !== undefined && body.out < dayOf(at) ? [] : [{ id, label: body.label, d: body.d }];
  });
}
