/** Where things named by an entry lead: a register's page, a charge's run, a lot's page, an entry's own page; and pages of this room. */

import { barPieces } from '../../core/book/bar-pieces.ts';
import type { Book } from '../../core/book/book.ts';
import { type RegisterKind, registerKinds } from '../../core/kinds/index.ts';
import type { Named } from '../../words/daybook-shapes.ts';
import { chargeHref, entryHref, lotHref, registerHref } from '../shared/places.ts';
import { entryOf } from './links.ts';

const isRegister = (to: Named): to is RegisterKind => registerKinds.some((k) => k === to);

/** The address of a thing; undefined where it is not in the book here. */
export function hrefOf(book: Book, to: Named, id: string): string | undefined {
  if (isRegister(to)) return book.registers[to].has(id) ? registerHref(to, id) : undefined;
  if (to === 'lot') return book.lots.all.has(id) ? lotHref(id) : undefined;
  if (to === 'bar') {
    const bar = barPieces(book.current).get(id);
    return bar ? entryHref(bar.melt.id) : undefined;
  }
  if (to === 'charge') return book.charges.all.has(id) ? chargeHref(id) : undefined;
  return entryOf(book, id) ? entryHref(id) : undefined;
}

export const noteHref = '#/daybook/note';
export type Deed = 'correct' | 'strike' | 'note';
/** A form about an entry; a correction may be opened at one of its fields ("lots[3].weight"). */
export const deedHref = (id: string, deed: Deed, field = ''): string =>
  `${entryHref(id)}/${deed}${field === '' ? '' : `?field=${encodeURIComponent(field)}`}`;
/** Deed and field out of the last part of such an address. */
export function deedFrom(part: string): { readonly deed: string; readonly field: string } {
  const [deed = '', query = ''] = part.split('?', 2);
  return { deed, field: query.startsWith('field=') ? query.slice('field='.length) : '' };
}
