/** What drafts of this room are kept under, what they are called and where they are taken up. */
import { kindNames } from '../../words/labels.ts';
import { readingHref } from './address.ts';
import { limitRowHref } from './limits/href.ts';

/** The draft of a reading. */
export const readingDraft = 'air/reading';
/** The draft of a limit that begins with a row read in a source, by the key of the row. */
export const limitDraft = (row: string): string => `${limitDrafts}${row}`;
const limitDrafts = 'air/limit/';

/** Name and place of a draft of this room; null for one of another. */
export function draftInAir(form: string): { readonly name: string; readonly href: string } | null {
  if (form === readingDraft) return { name: kindNames['air-reading'], href: readingHref };
  if (form.startsWith(limitDrafts)) return { name: kindNames.limit, href: limitRowHref(form.slice(limitDrafts.length)) };
  return null;
}
