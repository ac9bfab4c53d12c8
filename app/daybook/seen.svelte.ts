/**
 * Keeps the index of what this window has seen in step with the record: behind, it is added to; absent or corrupt, packed anew; ahead of the record
 * on disk, it is left alone and told, until a person says that the disk counts. It works while the window is idle, after the book has verified,
 * and never touches drafts or the record.
 */
import { type Entry, withheldKind } from '../core/entry.ts';
import type { Store } from './drafts.ts';
import {
  byDesk,
  type Desks,
  firstsOf,
  forEverybody,
  type Missing,
  markOf,
  missingFrom,
  packed,
  type SeenLine,
  segmentSize,
  unpacked,
} from './segments.ts';

/** What the index needs of the window. */
export interface SeenFrom {
  readonly store: Pick<Store, 'segmentKeys' | 'segment' | 'saveSegment' | 'dropSegments'>;
  /** All entries the host sent, verified by it. */
  readonly entries: () => readonly Entry[];
  /** Reads the entries anew; false when the host could not be asked. */
  readonly reload: () => Promise<boolean>;
  /** Only the window that writes the daybook writes the index. */
  readonly mayWrite: () => boolean;
  /** Waits until the window has nothing better to do. */
  readonly idle?: () => Promise<void>;
}

const whenIdle = (): Promise<void> =>
  new Promise((resolve) => {
    if ('requestIdleCallback' in globalThis) requestIdleCallback(() => resolve(), { timeout: 3_000 });
    else setTimeout(resolve, 50);
  });

export class SeenRecord {
  /** What the record on disk lacks; empty while the two agree. */
  missing = $state.raw<readonly Missing[]>([]);
  readonly #from: SeenFrom;
  readonly #idle: () => Promise<void>;
  /** What every stored segment is known by (`markOf`), by desk and first number; null until all were read. */
  #marks: Map<string, string> | null = null;
  #last: Promise<void> = Promise.resolve();
  #left = false;

  constructor(from: SeenFrom) {
    this.#from = from;
    this.#idle = from.idle ?? whenIdle;
  }

  /** Brings the index up to the record, one call after another. `anew`: compares all that is stored first, not only what was added since. */
  settle(anew = false): Promise<void> {
    this.#last = this.#last.then(async () => {
      if (anew) this.#marks = null;
      // a store that fails is one that remembers nothing: the record does not hang on it
      if (!this.#left) await this.#settled().catch(() => {});
    });
    return this.#last;
  }

  /** The person says that the record on disk counts: what was seen of those desks is dropped and packed anew from it. */
  async goByDisk(): Promise<void> {
    await this.#last;
    const desks = this.missing.map(({ desk }) => desk);
    if (desks.length === 0 || !this.#from.mayWrite()) return;
    for (const desk of desks) await this.#drop(desk);
    this.missing = [];
    await this.settle(true);
  }

  /** The daybook is left: nothing more is read or stored. */
  leave(): void {
    this.#left = true;
    this.missing = [];
  }

  async #settled(): Promise<void> {
    if (this.#marks === null && !(await this.#compared())) return;
    if (this.missing.length > 0 || !this.#from.mayWrite()) return;
    for (const [desk, list] of byDesk(forEverybody(this.#from.entries())))
      for (const first of firstsOf(list.length)) {
        const part = list.slice(first - 1, first - 1 + segmentSize);
        const mark = markOf(
          part.at(-1)?.hash ?? '',
          part.map(({ kind }) => kind === withheldKind),
        );
        const key = `${desk} ${first}`;
        if (this.#marks?.get(key) === mark) continue;
        await this.#idle();
        if (this.#left || !this.#from.mayWrite()) return;
        await this.#from.store.saveSegment(packed(desk, list, first));
        this.#marks?.set(key, mark);
      }
  }

  /** Compares all that is stored with the record; true when the record lacks nothing of it. */
  async #compared(): Promise<boolean> {
    const read = await this.#stored();
    let missing = this.#missingOf(read.good);
    // another window may have kept something since the entries came: the record is asked again before anything is said
    if (missing.length > 0 && !this.#left) {
      if (!(await this.#from.reload())) return false;
      missing = this.#missingOf(read.good);
    }
    if (this.#left) return false;
    this.missing = missing;
    if (missing.length > 0) return false;
    if (this.#from.mayWrite()) for (const desk of read.corrupt) await this.#drop(desk);
    this.#marks = read.marks;
    return true;
  }

  #missingOf(good: ReadonlyMap<string, readonly (readonly SeenLine[])[]>): Missing[] {
    const there: Desks = byDesk(this.#from.entries());
    return [...good].flatMap(([desk, seen]) => missingFrom(seen, desk, there.get(desk) ?? []) ?? []);
  }

  /** Every stored segment that is whole, and the desks of those that are not. */
  async #stored() {
    const good = new Map<string, (readonly SeenLine[])[]>();
    const corrupt = new Set<string>();
    const marks = new Map<string, string>();
    for (const [desk, first] of await this.#from.store.segmentKeys()) {
      await this.#idle();
      const lines = unpacked(await this.#from.store.segment(desk, first).catch(() => null));
      if (lines === null || lines[0]?.n !== first) {
        corrupt.add(desk);
        continue;
      }
      const before = good.get(desk);
      if (before) before.push(lines);
      else good.set(desk, [lines]);
      marks.set(
        `${desk} ${first}`,
        markOf(
          lines.at(-1)?.hash ?? '',
          lines.map(({ withheld }) => withheld),
        ),
      );
    }
    for (const key of [...marks.keys()]) if (corrupt.has(key.slice(0, key.indexOf(' ')))) marks.delete(key);
    return { good, corrupt, marks };
  }

  async #drop(desk: string): Promise<void> {
    await this.#from.store.dropSegments(desk);
  }
}
