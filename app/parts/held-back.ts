/**
 * Why a button or link cannot be used just now, said by whoever frames the page: a frame that lets nothing be written sets it once, and every
 * `Action` below heeds it. This part knows no reasons of its own.
 */
import { getContext, setContext } from 'svelte';

/** The reason in words, or null when it can be used. `href`: where a link leads; `writes`: a button that begins or ends a writing. */
export type HeldBack = (what: { readonly href: string | undefined; readonly writes: boolean }) => string | null;

const key = Symbol('held back');

/** To be called while the frame is made. */
export const setHeldBack = (heldBack: HeldBack): void => {
  setContext(key, heldBack);
};

/** What the frame says; a page without such a frame holds nothing back. */
export const heldBackHere = (): HeldBack => getContext<HeldBack | undefined>(key) ?? (() => null);
