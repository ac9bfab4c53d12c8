/** The addresses of the limits: the list, and the form begun with one of its rows. */
import { roomHref } from '../../shared/places.ts';

export const limitsHref = `${roomHref('air')}/limits`;
export const limitRowHref = (key: string): string => `${limitsHref}/${key}`;
