/**
 * What the QR code on a tag or label says: "retort-daybook:entry/<id of the entry>". Plain text that any reader of codes shows; it holds nothing but
 * the id, leads nowhere by itself, and is typed or pasted into Find.
 */
import { isId } from './shapes.ts';

const opening = 'retort-daybook:entry/';

/** The text of an entry's code. */
export const codeOfEntry = (id: string): string => opening + id;

/** The id of the entry that the text is the code of, whatever its case and the blanks around it; null for any other text. */
export function entryOfCode(text: string): string | null {
  const plain = text.trim().toLowerCase();
  if (!plain.startsWith(opening)) return null;
  const id = plain.slice(opening.length);
  return isId(id) ? id : null;
}
