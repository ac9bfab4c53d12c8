/**
 * What a trade word in a label means, said by whoever frames the page: the frame sets it once and every `Field` below asks it with its label. This
 * part knows no words of its own.
 */
import { getContext, setContext } from 'svelte';

/** A word of a label, explained. */
export interface Explained {
  /** The question that opens it. */
  readonly question: string;
  /** What the word means, sentence by sentence. */
  readonly says: readonly string[];
  /** Where all words stand, and the text of that link. */
  readonly href: string;
  readonly more: string;
}

/** The word a label uses; null when it uses none or none is to be explained. */
export type Explains = (label: string) => Explained | null;

const key = Symbol('explained');

/** To be called while the frame is made. */
export const setExplains = (explains: Explains): void => {
  setContext(key, explains);
};

/** What the frame explains; a page without such a frame explains nothing. */
export const explainsHere = (): Explains => getContext<Explains | undefined>(key) ?? (() => null);
