/**
 * What can go wrong with what a person gave us, as values. Every check returns all its problems at once, never only the first;
 * `app/words/problems.ts` says each of them in plain words. `throw` stays for what cannot happen.
 */

/** One thing that cannot be accepted: a code for the words, the field it stands in, and the plain data the sentence needs. */
export interface Problem {
  /** Which rule is broken: a key of the problem texts in app/words. */
  readonly code: string;
  /** The field as a path from the top of the input, indices from 0: `firings[0].sponge`. Empty for the whole input. */
  readonly field: string;
  /** Values the sentence names (what was read, what would be accepted). */
  readonly data?: Readonly<Record<string, string | number>>;
}

/** A value, or every problem that keeps it from being one. */
export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] };

/** The value is good. */
export const good = <T>(value: T): Result<T> => ({ ok: true, value });

/** The value cannot be had, for these reasons. */
export const bad = (...problems: readonly Problem[]): { readonly ok: false; readonly problems: readonly Problem[] } => ({
  ok: false,
  problems,
});

/** A problem in one call. */
export const problem = (code: string, field: string, data?: Problem['data']): Problem =>
  data === undefined ? { code, field } : { code, field, data };

/** The path of a member below `at`: `under('firings[0]', 'sponge')` is `firings[0].sponge`, `under('bars', 2)` is `bars[2]`. */
export const under = (at: string, key: string | number): string =>
  typeof key === 'number' ? `${at}[${key}]` : at === '' ? key : `${at}.${key}`;
