/** What the sentences of the daybook are put together with. */
import type { Book } from '../core/book/book.ts';
import type { LotSource } from '../core/kinds/clean-up.ts';
import type { Body, Kind } from '../core/kinds/index.ts';
import type { Weight } from '../core/shapes.ts';
import type { Named } from './daybook-shapes.ts';
import { lotSourceNames } from './retort.ts';

/** What a sentence may ask while it is made. */
export interface Asked {
  readonly book: Book;
  readonly id: string;
  /** Read back to who writes it: also what is not for everybody. */
  readonly whole: boolean;
  readonly name: (to: Named, id: string) => string;
  readonly net: (...weights: readonly Weight[]) => string;
}

export const small = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
export const list = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
export const parts = (...items: readonly (string | false | undefined)[]): string => items.filter((t) => t).join('; ');
export const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;
export const sourceText = (source: LotSource): string =>
  source === 'several' ? 'several places' : small(lotSourceNames[source]);
export const at = (place: string | undefined): string => (place === undefined ? '' : ` (${place})`);
export const restated = (of: string | undefined): string => (of === undefined ? '' : ' restated');

/** "2 lots (march A, march B), 968.00 g": balls and lots that were made. */
export const lotsText = (lots: readonly { readonly label: string; readonly weight: Weight }[], net: Asked['net']): string =>
  `${count(lots.length, 'lot', 'lots')}${lots.length > 4 ? '' : ` (${lots.map((l) => l.label).join(', ')})`}, ${net(...lots.map((l) => l.weight))}`;

/** Sentences by kind. */
export type Lines<K extends Kind> = { readonly [P in K]: (body: Body<P>, asked: Asked) => string };
