/** Where in the record the weights of a run stand: a lot's label in the entry that made it, the row of a charge that split it, the heat of a charge. */
import type { Weight } from '../../shapes.ts';
import type { Book } from '../book.ts';
import type { Charge, Firing } from '../charges.ts';

/** Which heat of a firing was this charge's. */
export const heatOf = (firing: Firing, charge: string): number =>
  Math.max(
    0,
    firing.reading.body.heats.findIndex((heat) => heat.charge === charge),
  );

/** Where a lot's label weight stands in the entry that made it. */
export function fieldOfLot(book: Book, entry: string, id: string): { readonly path: string; readonly weight: Weight } | null {
  const body = book.current.byId.get(entry)?.body as Record<string, unknown> | undefined;
  for (const field of ['lots', 'made']) {
    const list = body?.[field];
    if (!Array.isArray(list)) continue;
    const index = list.findIndex((one: { key: string }) => `${entry}/${one.key}` === id);
    const found = list[index] as { weight: Weight } | undefined;
    if (found) return { path: `${field}[${index}].weight`, weight: found.weight };
  }
  return null;
}

export interface Split {
  readonly index: number;
  readonly label: string;
  readonly isPart: boolean;
  readonly weight: Weight;
  readonly rest: Weight | undefined;
}

/** The row of a charge that made this child lot. */
export function splitOf(book: Book, charge: string, child: string): Split | null {
  const reading = book.current.byId.get(charge);
  if (reading?.kind !== 'charge') return null;
  const { rows } = reading.body as Charge['reading']['body'];
  for (const [index, row] of rows.entries()) {
    if (row.take !== 'part' || !child.startsWith(`${charge}/${row.key}`)) continue;
    const tail = child.slice(`${charge}/${row.key}`.length);
    if (tail === 'a' || tail === 'b')
      return {
        index,
        label: book.lots.all.get(row.lot)?.label ?? row.lot,
        isPart: tail === 'a',
        weight: row.weight,
        rest: row.rest,
      };
  }
  return null;
}
