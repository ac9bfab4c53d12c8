/** The way of a bar back to its ore: melt, charges, lots, clean-ups, crushings, each an entry to open. Earlier bars lead to their own page. */
import { barOrigin } from '../../core/book/bar-origin.ts';
import type { Bar } from '../../core/book/bars.ts';
import type { Book } from '../../core/book/book.ts';
import type { Reading } from '../../core/book/current.ts';
import { entryName, nameIn } from '../../words/daybook-naming.ts';
import { chargeHref, entryHref, lotHref } from '../shared/places.ts';
import { barHref } from './hrefs.ts';

export type OriginStep = 'melt' | 'charges' | 'bars' | 'lots' | 'cleanUps' | 'crushings';

export interface Origin {
  readonly step: OriginStep;
  readonly links: readonly { readonly text: string; readonly href: string }[];
}

/** Every step that has something in it, from the pot back to the mill. */
export function originOf(book: Book, bar: Bar): readonly Origin[] {
  const { charges, lots, makers, crushings } = barOrigin(book, bar);
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
      charges.map(({ id }) => ({ text: entryName(book, id), href: chargeHref(id) })),
    ),
    links(
      'lots',
      lots.map((lot) => ({ text: lot.label, href: lotHref(lot.id) })),
    ),
    links('cleanUps', entries(makers)),
    links('crushings', entries(crushings)),
  ].filter((origin) => origin.links.length > 0);
}
