/** The way of a bar back to its ore: melt, charges, lots, clean-ups, crushings, each an entry to open. Earlier bars lead to their own page. */
import type { Bar } from '../../core/book/bars.ts';
import type { Book } from '../../core/book/book.ts';
import type { Reading } from '../../core/book/current.ts';
import type { Lot } from '../../core/book/lots.ts';
import { dayOf } from '../../core/time.ts';
import { entryName, nameIn } from '../../words/daybook-naming.ts';
import { chargeHref, entryHref, lotHref } from '../shared/places.ts';
import { barHref } from './hrefs.ts';

export type OriginStep = 'melt' | 'charges' | 'bars' | 'lots' | 'cleanUps' | 'crushings';

export interface Origin {
  readonly step: OriginStep;
  readonly links: readonly { readonly text: string; readonly href: string }[];
}

/** The lot and everything it was cleaned, squeezed or split out of. */
function lotsBehind(book: Book, id: string, found: Map<string, Lot>): void {
  const lot = book.lots.all.get(id);
  if (!lot || found.has(id)) return;
  found.set(id, lot);
  if (lot.parent !== null) lotsBehind(book, lot.parent, found);
  const maker = book.current.byId.get(lot.madeBy);
  if (maker?.kind === 'squeeze' || maker?.kind === 'cleaning')
    for (const input of (maker as Reading<'squeeze'>).body.lots ?? []) lotsBehind(book, input, found);
}

/** Crushings a clean-up stands for: those since the last clean-up of its type. It names no battery, so all of the mill are among them. */
function crushingsOf(book: Book, cleanUp: Reading<'clean-up'>): readonly Reading<'crushing'>[] {
  const before = book.current
    .of('clean-up')
    .findLast((r) => r.body.type === cleanUp.body.type && dayOf(r.happened) < dayOf(cleanUp.happened));
  return book.current
    .of('crushing')
    .filter((r) => dayOf(r.happened) <= dayOf(cleanUp.happened) && (!before || dayOf(r.happened) > dayOf(before.happened)));
}

/** Every step that has something in it, from the pot back to the mill. */
export function originOf(book: Book, bar: Bar): readonly Origin[] {
  const lots = new Map<string, Lot>();
  for (const charge of bar.from.charges)
    for (const row of book.charges.all.get(charge)?.rows ?? []) if (row.lot) lotsBehind(book, row.lot.id, lots);
  const makers = [...new Set([...lots.values()].map((lot) => lot.madeBy))].flatMap((id) => book.current.byId.get(id) ?? []);
  const cleanUps = makers.filter((r): r is Reading<'clean-up'> => r.kind === 'clean-up');
  const crushings = [...new Map(cleanUps.flatMap((r) => crushingsOf(book, r)).map((r) => [r.id, r])).values()];
  const links = (step: OriginStep, all: Origin['links']): Origin => ({ step, links: all });
  const entries = (list: readonly Reading[]) => list.map((r) => ({ text: entryName(book, r.id), href: entryHref(r.id) }));
  return [
    links('melt', entries([bar.melt])),
    links(
      'bars',
      bar.from.bars.map((id) => ({ text: nameIn(book, 'bar', id, bar.melt.happened), href: barHref(id) })),
    ),
    links(
      'charges',
      bar.from.charges.map((id) => ({ text: entryName(book, id), href: chargeHref(id) })),
    ),
    links(
      'lots',
      [...lots.values()].map((lot) => ({ text: lot.label, href: lotHref(lot.id) })),
    ),
    links('cleanUps', entries(makers)),
    links('crushings', entries(crushings)),
  ].filter((origin) => origin.links.length > 0);
}
