/** Addresses of the room Bullion. A bar's id holds a stroke: it goes into one part of the address. */
import { barPieces } from '../../core/book/bar-pieces.ts';
import type { Book } from '../../core/book/book.ts';
import { bullionDrafts as words } from '../../words/screens-bullion.ts';

export const bullionForms = ['melt', 'assay', 'settle', 'away'] as const;
export type BullionForm = (typeof bullionForms)[number];

export const bullionHref = '#/bullion';

/** The page of a bar. */
export const barHref = (bar: string): string => `${bullionHref}/bar/${encodeURIComponent(bar)}`;

/** A form of the room; `about`: the bar, or of a melt the charge whose sponge it begins with. */
export const formHref = (form: BullionForm, about?: string): string =>
  `${bullionHref}/${form}${about === undefined || about === '' ? '' : `/${encodeURIComponent(about)}`}`;

/** The name a form's draft is kept under. */
export const draftName = (form: BullionForm, about = ''): string =>
  about === '' ? `bullion/${form}` : `bullion/${form}/${about}`;

/** What a draft of this room is called and where it is taken up; null for a draft of another room. */
export function draftInBullion(book: Book, name: string): { readonly name: string; readonly href: string } | null {
  const [room, key, ...rest] = name.split('/');
  const form = bullionForms.find((f) => f === key);
  if (room !== 'bullion' || !form) return null;
  const about = rest.join('/');
  const bar = barPieces(book.current).get(about)?.label ?? '';
  return { name: words[form](bar), href: formHref(form, about) };
}
