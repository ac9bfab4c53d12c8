/**
 * What this window has seen of the record, packed for the browser's database: for each desk its entries in segments of a thousand lines, each with
 * the end mark it closes with. It is an index that can be thrown away and packed anew; its one use is to show that the record on disk has fallen
 * behind, as after an old copy was put back, and to hold the lines that are then missing. A row per entry would be some thirty times slower.
 * What is not for everybody is never in it, whoever sits there while it is packed: such a line keeps its number and its hash and says nothing else.
 */
import { withheldOf, withoutThese } from '../core/book/withheld.ts';
import { type Entry, withheldKind } from '../core/entry.ts';

/** Entries in a full segment. */
export const segmentSize = 1_000;

/** A segment as it is stored, under desk and first number. */
export interface SegmentRow {
  readonly desk: string;
  /** Number of its first entry: 1, 1001, 2001 … */
  readonly first: number;
  /** `hash` of its last entry. */
  readonly end: string;
  /** The entries as the journal has them, but for those withheld: a line of canonical JSON each, newlines included. */
  readonly text: string;
}

/** One line of a segment, as far as it is needed to compare it. */
export interface SeenLine {
  readonly n: number;
  readonly hash: string;
  readonly prev: string;
  readonly written: string;
  /** What it said is not for everybody and is not in `line`, which can only be counted. */
  readonly withheld: boolean;
  readonly line: string;
}

/** Entries of one desk that this window has seen and the record on disk lacks. */
export interface Missing {
  readonly desk: string;
  /** From the first that is missing, or stands differently on disk, in order. */
  readonly lines: readonly SeenLine[];
  /** `written` of the last of them. */
  readonly lastWritten: string;
  /** The disk has another entry at the first of these numbers. */
  readonly differs: boolean;
}

/** The entries as they may lie where everybody gets at them: what tells where a bar is kept or what one person breathed keeps its place alone. */
export function forEverybody(entries: readonly Entry[]): readonly Entry[] {
  const hidden = withheldOf(entries);
  return withoutThese(entries, (id) => hidden.has(id));
}

/** The lines that can be handed out again: a withheld one is not what its journal had. */
export const tellable = (lines: readonly SeenLine[]): readonly SeenLine[] => lines.filter(({ withheld }) => !withheld);

/** What a stored segment is known by: its end mark, and how many of its lines are withheld, for a later correction can make it one more. */
export const markOf = (end: string, lines: readonly boolean[]): string => `${end} ${lines.filter(Boolean).length}`;

/** Entries of each desk by number: the first stands at 0. What does not follow on without a gap is left out. */
export type Desks = ReadonlyMap<string, readonly Entry[]>;

export function byDesk(entries: readonly Entry[]): Desks {
  const desks = new Map<string, Entry[]>();
  for (const entry of entries) {
    const list = desks.get(entry.desk);
    if (list) list.push(entry);
    else desks.set(entry.desk, [entry]);
  }
  for (const [desk, list] of desks) {
    list.sort((a, b) => a.n - b.n);
    const gap = list.findIndex((entry, i) => entry.n !== i + 1);
    if (gap >= 0) desks.set(desk, list.slice(0, gap));
  }
  return desks;
}

/** A value with the members of every object in the order of RFC 8785, 3.2.3: by UTF-16 code units. */
function ordered(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(ordered);
  if (value === null || typeof value !== 'object') return value;
  const members = Object.entries(value).filter(([, v]) => v !== undefined);
  return Object.fromEntries(members.sort(([a], [b]) => (a < b ? -1 : 1)).map(([k, v]) => [k, ordered(v)]));
}

/** The line the journal has for an entry, without its newline (RFC 8785; numbers and texts are written as JSON.stringify does). */
export const lineOf = (entry: Entry): string => JSON.stringify(ordered(entry));

/** First numbers of the segments that so many entries make. */
export const firstsOf = (count: number): number[] =>
  Array.from({ length: Math.ceil(count / segmentSize) }, (_, i) => i * segmentSize + 1);

/** The segment of a desk that begins at `first`. `list` holds all of its entries by number, as they are `forEverybody`. */
export function packed(desk: string, list: readonly Entry[], first: number): SegmentRow {
  const part = list.slice(first - 1, first - 1 + segmentSize);
  return { desk, first, end: part.at(-1)?.hash ?? '', text: part.map((entry) => `${lineOf(entry)}\n`).join('') };
}

const texts = ['hash', 'prev', 'written'] as const;

/** The lines of a stored segment, or null where it is not what was once packed: another shape, a cut text, a chain that does not hold. */
export function unpacked(row: unknown): readonly SeenLine[] | null {
  const { desk, first, end, text } = (row ?? {}) as Partial<Record<keyof SegmentRow, unknown>>;
  if (typeof desk !== 'string' || typeof first !== 'number' || typeof end !== 'string' || typeof text !== 'string') return null;
  if (!text.endsWith('\n')) return null;
  const lines: SeenLine[] = [];
  try {
    for (const line of text.slice(0, -1).split('\n')) {
      const entry = JSON.parse(line) as Readonly<Record<string, unknown>>;
      if (texts.some((name) => typeof entry[name] !== 'string')) return null;
      const { hash, prev, written } = entry as Readonly<Record<(typeof texts)[number], string>>;
      const before = lines.at(-1);
      if (entry.desk !== desk || entry.n !== first + lines.length || (before && before.hash !== prev)) return null;
      lines.push({ n: first + lines.length, hash, prev, written, withheld: entry.kind === withheldKind, line });
    }
  } catch {
    return null;
  }
  return lines.length <= segmentSize && lines.at(-1)?.hash === end ? lines : null;
}

/** What the record on disk lacks of the segments seen: for each desk, from the first line the disk does not have at that number. */
export function missingFrom(seen: readonly (readonly SeenLine[])[], desk: string, there: readonly Entry[]): Missing | null {
  const all = seen.flat().sort((a, b) => a.n - b.n);
  const at = all.findIndex(({ n, hash }) => there[n - 1]?.hash !== hash);
  if (at < 0) return null;
  const lines = all.slice(at);
  const differs = there.length >= (lines[0]?.n ?? 0);
  return { desk, lines, lastWritten: lines.at(-1)?.written ?? '', differs };
}
