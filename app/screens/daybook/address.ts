/** What is looked for in the daybook, as it stands in the address: `#/daybook/find/kind=firing/text=ball/page=2`. Empty answers are left out. */
import { roomHref } from '../shared/places.ts';

export interface Finding {
  /** A kind on disk, or `unknown` for kinds not understood here; empty: every kind. */
  readonly kind: string;
  /** Id of the person who wrote; empty: everybody. */
  readonly by: string;
  readonly text: string;
  /** The last day wanted. */
  readonly until: string;
  readonly marked: boolean;
  /** From 1. */
  readonly page: number;
}

export const everything: Finding = { kind: '', by: '', text: '', until: '', marked: false, page: 1 };

/** Read from the parts of the address after the room; what is not understood is left out. */
export function findingFrom(rest: readonly string[]): Finding {
  if (rest[0] !== 'find') return everything;
  const pairs = new Map(rest.slice(1).map((part) => [part.split('=', 1)[0] ?? '', part.slice(part.indexOf('=') + 1)]));
  const page = Number(pairs.get('page') ?? 1);
  return {
    kind: pairs.get('kind') ?? '',
    by: pairs.get('by') ?? '',
    text: pairs.get('text') ?? '',
    until: pairs.get('until') ?? '',
    marked: pairs.get('marked') === 'yes',
    page: Number.isInteger(page) && page > 0 ? page : 1,
  };
}

/** The address of what is looked for. */
export function findingHref({ kind, by, text, until, marked, page }: Finding): string {
  const pairs = [
    ['kind', kind],
    ['by', by],
    ['text', text.trim()],
    ['until', until],
    ['marked', marked ? 'yes' : ''],
    ['page', page > 1 ? String(page) : ''],
  ].filter(([, value]) => value !== '');
  const path = pairs.map(([key, value]) => `${key}=${encodeURIComponent(value ?? '')}`).join('/');
  return path === '' ? roomHref('daybook') : `${roomHref('daybook')}/find/${path}`;
}
