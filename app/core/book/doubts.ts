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

/** The first halves of source names, as the book gives them. */
const named: readonly (readonly [prefix: string, kind: DoubtKind, cut: Cut])[] = [
  ['scale:', 'scale', 'recalibrate-scale'],
  ['method:', 'method', 'weigh-not-estimate'],
  ['estimate:', 'method', 'weigh-not-estimate'],
  ['share:', 'share', 'assay-the-share'],
  ['lot share:', 'share', 'fire-or-melt'],
  ['residual:', 'residual', 'fire-or-melt'],
  ['usual ratio:', 'residual', 'fire-or-melt'],
  ['usual rate:', 'rate', 'count-more-periods'],
  ['allotment:', 'allotment', 'fire-apart'],
  ['gold in strained mercury', 'gold', 'assay-the-mercury'],
  ['density of mercury', 'density', 'measure-volume-less'],
  ['ore:', 'other', 'tell-its-error'],
];

/** The entry a name begins with, up to its path. */
const entryOf = (book: Book, rest: string): string | null => {
  if (book.current.byId.has(rest)) return rest;
  const head = rest.split(/[:/]/)[0] ?? '';
  return book.current.byId.has(head) ? head : null;
};

function sorted(book: Book, source: string): { kind: DoubtKind; of: string; entry: string | null; cut: Cut } {
  const found = named.find(([prefix]) => source.startsWith(prefix));
  if (found) {
    const [prefix, kind, cut] = found;
    const rest = source.slice(prefix.length);
    const entry = entryOf(book, rest);
    // an estimate of a lot not fired yet ends with its firing; one of a place ends with a scale
    const lot = prefix === 'estimate:' && rest.includes('/');
    return {
      kind: lot ? 'share' : kind,
      of: prefix === 'method:' || entry === null ? rest : entry,
      entry,
      cut: lot ? 'fire-or-melt' : cut,
    };
  }
  const entry = entryOf(book, source);
  if (entry === null) return { kind: 'other', of: source, entry, cut: 'tell-its-error' };
  const stated = JSON.stringify(book.current.byId.get(entry)?.body ?? {}).includes('"how":"stated"');
  return { kind: 'reading', of: entry, entry, cut: stated ? 'weigh-what-was-stated' : 'weigh-again' };
}

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
    .map((group) => ({ ...group, share: group.variance / whole }))
    .sort((a, b) => b.variance - a.variance || (a.of < b.of ? -1 : 1));
}
