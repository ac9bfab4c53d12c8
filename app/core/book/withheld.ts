/**
 * Which entries tell what is not for everybody: where a bar is kept; a reading at a person, or a day of somebody's health surveillance. A correction of
 * such an entry tells it as well. What leaves the site goes without them unless it is asked for. Source: design.md 1.
 */
import { type Entry, withheldKind } from '../entry.ts';
import type { Hidden } from './may-see.ts';

const told = (kind: string, body: Readonly<Record<string, unknown>>): Hidden | null =>
  kind === 'bar-kept'
    ? 'bar-place'
    : (kind === 'air-reading' && body.sample === 'personal') || (kind === 'check-due' && body.person !== undefined)
      ? 'personal-air'
      : null;

/** What each of these entries tells that is not for everybody, by id; entries that tell nothing of the sort are not in it. */
export function withheldOf(entries: readonly Entry[]): ReadonlyMap<string, Hidden> {
  const byId = new Map(entries.map((entry) => [entry.id, entry]));
  const found = new Map<string, Hidden>();
  for (const entry of entries) {
    let at: Entry | undefined = entry;
    const seen = new Set<string>();
    // a correction tells what it corrects, and may itself turn an entry into such a one
    while (at && !seen.has(at.id)) {
      seen.add(at.id);
      const body: unknown = at.kind === 'correction' ? at.body.body : at.body;
      const kind = at.kind === 'correction' ? rootKind(at, byId) : at.kind;
      const what = told(kind, (body ?? {}) as Record<string, unknown>);
      if (what !== null) {
        // and what it corrects reads so now, down to the entry as first written
        for (const id of [...seen, ...corrected(at, byId)]) found.set(id, what);
        break;
      }
      at = at.kind === 'correction' ? byId.get(String(at.body.corrects)) : undefined;
    }
  }
  return found;
}

/** The entry as it lies where it may not be read: it keeps its place in the chain and its times, and says nothing. */
const veiled = ({ format, desk, n, prev, hash, id, written, happened, by }: Entry): Entry => ({
  ...{ format, desk, n, prev, hash, id, written, happened, by },
  kind: withheldKind,
  body: {},
});

/** The entries with those veiled whose ids may not be read, and with them the strikes of such: a strike says why. */
export const withoutThese = (entries: readonly Entry[], hidden: (id: string) => boolean): readonly Entry[] =>
  entries.map((e) => (hidden(e.id) || (e.kind === 'strike' && hidden(String(e.body.strikes))) ? veiled(e) : e));

/** The entries that a correction corrects, one after another, to the first; none for any other entry. */
function corrected(entry: Entry, byId: ReadonlyMap<string, Entry>): readonly string[] {
  const ids = new Set<string>();
  let at: Entry | undefined = entry;
  while (at?.kind === 'correction') {
    at = byId.get(String(at.body.corrects));
    if (!at || ids.has(at.id)) break;
    ids.add(at.id);
  }
  return [...ids];
}

/** The kind of what a chain of corrections is about in the end. */
const rootKind = (entry: Entry, byId: ReadonlyMap<string, Entry>): string =>
  byId.get(corrected(entry, byId).at(-1) ?? entry.id)?.kind ?? '';
