/** Addresses of the page that closes a period: `#/mercury/close`, `…/close/again/<closing>` for the next version of one. */
import { roomHref } from '../../shared/places.ts';

const page = `${roomHref('mercury')}/close`;

export const closeHref = (): string => page;

/** The next version of a closing. */
export const nextVersionHref = (closing: string): string => `${page}/again/${encodeURIComponent(closing)}`;
