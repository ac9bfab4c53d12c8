/**
 * How each entry reads now: with its corrections applied and its strike seen. Nothing is removed: the entry as first written, every correction
 * and who, when and why stay beside the present reading. Two corrections of one reading are both kept and the entry is marked contested.
 */
import { type Entry, withheldKind } from '../entry.ts';
import { type Body, bodyFrom, isKind, type Kind } from '../kinds/index.ts';
import { compareMoments, minutesOf } from '../time.ts';
import { inTrail } from './trail.ts';

/** An entry as it reads now. */
export interface Reading<K extends Kind = Kind> {
  readonly id: string;
  readonly kind: K;
  /** As first written. */
  readonly entry: Entry;
  /** As it reads now. */
  readonly body: Body<K>;
  readonly happened: string;
  /** Corrections of it that stand, oldest first. */
  readonly corrections: readonly Entry[];
  /** The strike that took it out of every figure, if there is one. */
  readonly struck: Entry | null;
  /** Two corrections name the same reading: both are shown, the later one is used. */
  readonly contested: boolean;
}

/** Everything in the book, read. */
export interface Current {
  /** By the id of the entry as first written; corrections and strikes are among them, read as themselves. */
  readonly byId: ReadonlyMap<string, Reading>;
  /** Readings of one kind that are not struck, in order of happening. */
  readonly of: <K extends Kind>(kind: K) => readonly Reading<K>[];
  /** Entries of kinds this program does not know. */
  readonly notUnderstood: readonly Entry[];
  /** Corrections and strikes whose target is not here (yet). */
  readonly adrift: readonly Entry[];
}

/** Order for showing and for taking up corrections: happening, writing, desk, number. No balance hangs on it. */
export const inOrder = (a: Entry, b: Entry): number =>
  compareMoments(a.happened, b.happened) ||
  compareMoments(a.written, b.written) ||
  (a.desk < b.desk ? -1 : a.desk > b.desk ? 1 : a.n - b.n);

/** Order of writing: the order in which corrections and later entries are taken up. */
export const byWriting = (a: Entry, b: Entry): number =>
  compareMoments(a.written, b.written) || (a.desk < b.desk ? -1 : a.desk > b.desk ? 1 : 0) || a.n - b.n;

/** The entry a correction is about in the end: a correction may name an earlier correction. Null when the trail breaks or runs in a ring. */
export function rootOf(id: string, entries: ReadonlyMap<string, Entry>): Entry | null {
  const seen = new Set<string>();
  let at = entries.get(id);
  while (at?.kind === 'correction') {
    if (seen.has(at.id)) return null;
    seen.add(at.id);
    at = entries.get(String(at.body.corrects));
  }
  return at ?? null;
}

/** The items by a moment that is read once for each, not at every comparison; those of one moment as `among` orders them. */
function sortedBy<T>(items: readonly T[], at: (item: T) => number, among: (a: T, b: T) => number): T[] {
  const rows = items.map((item) => ({ item, at: at(item) }));
  return rows.sort((a, b) => a.at - b.at || among(a.item, b.item)).map((row) => row.item);
}

/** Reads all entries of all desks. Order of the input does not matter; a line that came twice counts once. */
export function readCurrent(all: readonly Entry[]): Current {
  const entries = new Map<string, Entry>();
  for (const e of sortedBy(all, (e) => minutesOf(e.written) ?? 0, byWriting)) if (!entries.has(e.id)) entries.set(e.id, e);

  const struckBy = new Map<string, Entry>();
  const corrections = new Map<string, Entry[]>();
  const adrift: Entry[] = [];
  for (const e of entries.values()) {
    if (e.kind !== 'strike') continue;
    const target = String(e.body.strikes);
    if (!entries.has(target)) adrift.push(e);
    else if (!struckBy.has(target)) struckBy.set(target, e);
  }
  for (const e of entries.values()) {
    if (e.kind !== 'correction' || struckBy.has(e.id)) continue;
    const root = rootOf(e.id, entries);
    if (!root) adrift.push(e);
    else corrections.set(root.id, [...(corrections.get(root.id) ?? []), e]);
  }

  const none: readonly Entry[] = [];
  const byId = new Map<string, Reading>();
  const byKind = new Map<Kind, Reading[]>();
  const notUnderstood: Entry[] = [];
  for (const e of sortedBy([...entries.values()], (e) => minutesOf(e.happened) ?? 0, inOrder)) {
    if (!isKind(e.kind)) {
      // what is kept from this reader's eyes is no riddle
      if (e.kind !== withheldKind) notUnderstood.push(e);
      continue;
    }
    const written = corrections.get(e.id);
    const own = written ? inTrail(written) : none;
    let body: unknown = e.body;
    let happened = e.happened;
    for (const c of own) {
      if (!bodyFrom(e.kind, c.body.body).ok) continue;
      body = c.body.body;
      happened = typeof c.body.happened === 'string' ? c.body.happened : happened;
    }
    const struck = struckBy.get(e.id) ?? null;
    const reading = {
      id: e.id,
      kind: e.kind,
      entry: e,
      body,
      happened,
      corrections: own,
      struck,
      contested: own.length > 1 && new Set(own.map((c) => String(c.body.corrects))).size < own.length,
    } as Reading;
    byId.set(e.id, reading);
    if (struck) continue;
    const alike = byKind.get(e.kind);
    if (alike) alike.push(reading);
    else byKind.set(e.kind, [reading]);
  }
  for (const [kind, list] of byKind)
    byKind.set(
      kind,
      sortedBy(list, (r) => minutesOf(r.happened) ?? 0, byEntry),
    );
  return current(byId, byKind, notUnderstood, adrift);
}

const byEntry = (a: Reading, b: Reading): number => inOrder(a.entry, b.entry);

/** The lists of readings of what was read, for `withEntry`. */
const listsOf = new WeakMap<Current, ReadonlyMap<Kind, readonly Reading[]>>();

function current(
  byId: ReadonlyMap<string, Reading>,
  byKind: ReadonlyMap<Kind, readonly Reading[]>,
  notUnderstood: readonly Entry[],
  adrift: readonly Entry[],
): Current {
  const of = <K extends Kind>(kind: K) => (byKind.get(kind) ?? []) as unknown as readonly Reading<K>[];
  const made: Current = { byId, of, notUnderstood, adrift };
  listsOf.set(made, byKind);
  return made;
}

/**
 * What was read, with one entry more, made out of what is there: for a host that keeps entries one by one and would otherwise read a whole book for
 * each. It takes over `before`, which must not be used again. Null where only a fresh reading tells: a correction, a strike, an entry that comes
 * before another in order, or anything adrift that may be about it.
 */
export function withEntry(before: Current, entry: Entry, last: Entry | undefined): Current | null {
  const { kind } = entry;
  const lists = listsOf.get(before);
  if (!lists || !isKind(kind) || kind === 'correction' || kind === 'strike' || before.adrift.length > 0) return null;
  if (before.byId.has(entry.id) || (last && inOrder(last, entry) > 0)) return null;
  const reading = {
    id: entry.id,
    kind,
    entry,
    body: entry.body,
    happened: entry.happened,
    corrections: [],
    struck: null,
    contested: false,
  } as unknown as Reading;
  const list = (lists.get(kind) ?? []) as Reading[];
  const end = list.at(-1);
  // a correction may have dated one of its kind later
  if (end && (compareMoments(end.happened, entry.happened) || byEntry(end, reading)) > 0) return null;
  (before.byId as Map<string, Reading>).set(entry.id, reading);
  list.push(reading);
  (lists as Map<Kind, readonly Reading[]>).set(kind, list);
  return current(before.byId, lists, before.notUnderstood, before.adrift);
}
