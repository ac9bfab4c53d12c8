/** Kinds of entry that are written on a paper form when no screen is at hand. Registers, the count (it has its own sheet) and what changes the book itself are not. */
import { type Kind, kinds, registerKinds } from './index.ts';

const notByHand: ReadonlySet<Kind> = new Set<Kind>(['closing', 'correction', 'strike', 'stock-take', ...registerKinds]);

/** Every kind there is a form for. */
export const formKinds: readonly Kind[] = (Object.keys(kinds) as Kind[]).filter((kind) => !notByHand.has(kind));

/** The forms of a day at the battery and the retort, printed together. */
export const dayForms: readonly Kind[] = ['crushing', 'issue', 'clean-up', 'charge', 'firing', 'return', 'melt', 'spill'];
