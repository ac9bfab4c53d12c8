/**
 * What makes the uncertainty of an account: its variance by source, the largest first, and what would cut it. The shares are of one variance whose
 * shared errors were added with their signs before they were squared; a sum of all errors as if they were independent never appears (methods.md 1.2).
 */
import type { Measured } from '../measured.ts';
import type { Book } from './book.ts';

/** What would cut a doubt. */
export type Cut =
  | 'recalibrate-scale'
  | 'weigh-not-estimate'
  | 'weigh-again'
  | 'weigh-what-was-stated'
  | 'assay-the-share'
  | 'fire-or-melt'
  | 'fire-apart'
  | 'assay-the-mercury'
  | 'measure-volume-less'
  | 'count-more-periods'
  | 'tell-its-error';

export type DoubtKind =
  | 'scale'
  | 'method'
  | 'reading'
  | 'share'
  | 'residual'
  | 'allotment'
  | 'gold'
  | 'density'
  | 'rate'
  | 'other';

export interface Doubt {
  readonly kind: DoubtKind;
  /** What it is of: a scale in one calibration (its entry), a method by its name, the entry of a reading. */
  readonly of: string;
  /** The entry to open, where there is one. */
  readonly entry: string | null;
  /** Micrograms squared. */
  readonly variance: number;
  /** Of the whole variance, 0 to 1. */
  readonly share: number;
  readonly cut: Cut;
}

/** The first words of source names, up to the colon, as the book gives them. */
const named: ReadonlyMap<string, readonly [kind: DoubtKind, cut: Cut]> = new Map([
  ['scale', ['scale', 'recalibrate-scale']],
  ['method', ['method', 'weigh-not-estimate']],
  ['estimate', ['method', 'weigh-not-estimate']],
  ['share', ['share', 'assay-the-share']],
  ['lot share', ['share', 'fire-or-melt']],
  ['residual', ['residual', 'fire-or-melt']],
  ['usual ratio', ['residual', 'fire-or-melt']],
  ['usual rate', ['rate', 'count-more-periods']],
  ['allotment', ['allotment', 'fire-apart']],
  ['gold in strained mercury', ['gold', 'assay-the-mercury']],
  ['density of mercury', ['density', 'measure-volume-less']],
  ['ore', ['other', 'tell-its-error']],
]);

/** The entry a name begins with, up to its path. */
const entryOf = (book: Book, rest: string): string | null => {
  if (book.current.byId.has(rest)) return rest;
  const head = rest.split(/[:/]/)[0] ?? '';
  return book.current.byId.has(head) ? head : null;
};

function sorted(book: Book, source: string): Pick<Doubt, 'kind' | 'of' | 'entry' | 'cut'> {
  const colon = source.indexOf(':');
  const head = colon < 0 ? source : source.slice(0, colon);
  const found = named.get(head);
  if (!found)
    return book.current.byId.has(head)
      ? { kind: 'reading', of: head, entry: head, cut: 'weigh-again' }
      : { kind: 'other', of: source, entry: null, cut: 'tell-its-error' };
  const [kind, cut] = found;
  const rest = colon < 0 ? '' : source.slice(colon + 1);
  const entry = entryOf(book, rest);
  const of = head === 'method' || entry === null ? rest : entry;
  // an estimate of a lot not fired yet ends with its firing; one of a place ends with a scale
  return head === 'estimate' && rest.includes('/') ? { kind: 'share', of, entry, cut: 'fire-or-melt' } : { kind, of, entry, cut };
}

/** A share of the variance below which nobody asks what would cut it. */
const smallShare = 0.001;

/** Whether the entry has a figure that somebody else stated. */
const isStated = (book: Book, entry: string | null): boolean =>
  entry !== null && JSON.stringify(book.current.byId.get(entry)?.body ?? {}).includes('"how":"stated"');

/** The sources of a value's variance, largest first; their shares add up to one. Empty where nothing is uncertain. */
export function doubtsOf(book: Book, value: Measured): readonly Doubt[] {
  let whole = 0;
  const groups = new Map<string, Omit<Doubt, 'share'>>();
  for (const [source, u] of value.parts) {
    const variance = u * u;
    whole += variance;
    const group = sorted(book, source);
    const key = `${group.kind} ${group.of} ${group.cut}`;
    groups.set(key, { ...group, variance: variance + (groups.get(key)?.variance ?? 0) });
  }
  if (!(whole > 0)) return [];
  return [...groups.values()]
    .map((group) => {
      const share = group.variance / whole;
      const stated = group.kind === 'reading' && share > smallShare && isStated(book, group.entry);
      return { ...group, share, cut: stated ? ('weigh-what-was-stated' as const) : group.cut };
    })
    .sort((a, b) => b.variance - a.variance || (a.of < b.of ? -1 : 1));
}
