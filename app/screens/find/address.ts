/** What is looked for, as it stands in the address: `#/find/<words>/what=lot/from=2026-01-01`. A reload and a step back find the same. */
import type { Sought } from '../../core/book/find.ts';
import { foundThings } from '../../core/book/findable.ts';
import { isKind } from '../../core/kinds/index.ts';
import { isDay } from '../../core/time.ts';
import { roomHref } from '../shared/places.ts';

export const findRoom = 'find';
export const nothingSought: Sought = { words: '', what: '', kind: '', from: '', to: '' };

/** Read from the parts of the address after the room; what is not understood is left out. */
export function soughtFrom(rest: readonly string[]): Sought {
  const pairs = new Map(rest.slice(1).map((part) => [part.split('=', 1)[0] ?? '', part.slice(part.indexOf('=') + 1)]));
  const dayOf = (key: string): string => {
    const day = pairs.get(key) ?? '';
    return isDay(day) ? day : '';
  };
  const kind = pairs.get('kind') ?? '';
  return {
    words: (rest[0] ?? '').trim(),
    what: foundThings.find((what) => what === pairs.get('what')) ?? '',
    kind: isKind(kind) ? kind : '',
    from: dayOf('from'),
    to: dayOf('to'),
  };
}

/** Whether it is narrowed to a sort of thing, a kind of entry or days. */
export const narrowed = ({ what, kind, from, to }: Sought): boolean => [what, kind, from, to].some((part) => part !== '');

/** The address of what is looked for. Without words a space stands in their place, so that what narrows it keeps its own. */
export function findHref(sought: Sought): string {
  const words = sought.words.trim();
  if (words === '' && !narrowed(sought)) return roomHref(findRoom);
  const pairs = (['what', 'kind', 'from', 'to'] as const)
    .filter((key) => sought[key] !== '')
    .map((key) => `/${key}=${encodeURIComponent(sought[key])}`);
  // half of a pair of signs cannot stand in an address
  return `${roomHref(findRoom)}/${encodeURIComponent(words.replace(/\p{Cs}/gu, ' ').trim() || ' ')}${pairs.join('')}`;
}
