/**
 * The daybook that is open in this window: its entries, the book worked out from them, who is writing, and the one way to keep an entry. An entry
 * counts as kept only when the host has answered, which it does after the line is on the disk; nothing is shown before that.
 */
import type { HostState, OpenBook } from '../contract.ts';
import { type Book, readBook } from '../core/book/book.ts';
import { latest } from '../core/book/registers.ts';
import { checkDraft } from '../core/book/rules.ts';
import type { Entry } from '../core/entry.ts';
import { draftFrom } from '../core/kinds/index.ts';
import { bad, good, type Problem, problem, type Result } from '../core/result.ts';
import { machineClock } from './clock.ts';
import { noStore, openStore, type Store } from './drafts.ts';
import type { Host } from './host.ts';
import { onlyWriter, type Writing } from './only-writer.ts';
import { SeenRecord } from './seen.svelte.ts';

/** An entry on the disk, and its desk's end mark after it. */
export interface Kept {
  readonly entry: Entry;
  readonly endMark: string;
}

/** What the daybook needs of the world; tests give their own. */
export interface Surroundings {
  readonly host: Host;
  readonly clock?: typeof machineClock;
  readonly openStore?: (name: string) => Promise<Result<Store>>;
  readonly locks?: LockManager | undefined;
  /** Waits until the window has nothing better to do. */
  readonly idle?: () => Promise<void>;
}

/**
 * Whether the program behind the window answers: `there` it did when last asked, `silent` it did not, `shut` it answers others and lets this window
 * in no more (it was started anew, with a new key). A window that was shut out stays so until it is opened again.
 */
export type Reach = 'there' | 'silent' | 'shut';

/** Entries as the host sends them, one line of JSON each. */
export function entriesFrom(bytes: Uint8Array): readonly Entry[] {
  const text = new TextDecoder().decode(bytes);
  return text === '' ? [] : (JSON.parse(`[${text.trimEnd().replaceAll('\n', ',')}]`) as Entry[]);
}

export class Daybook {
  /** Where things stand at the host; null until it has answered. */
  state = $state.raw<HostState | null>(null);
  /** What went wrong with the last question to the host. */
  problems = $state.raw<readonly Problem[]>([]);
  entries = $state.raw<readonly Entry[]>([]);
  /** All entries are here and the book can be shown. */
  ready = $state(false);
  /** Another window of this browser writes this daybook. */
  elsewhere = $state(false);
  /** Whether the host answers this window. */
  reach = $state<Reach>('there');
  /** The person who writes, by id; null while nobody is chosen. */
  writer = $state<string | null>(null);
  /** Why drafts are not remembered; null while they are. */
  storeProblem = $state.raw<Problem | null>(null);
  /** The last entry kept in this window. */
  lastKept = $state.raw<Kept | null>(null);

  /** What this window has seen of the record, held against what is on the disk; null while no daybook is shown. */
  seen = $state.raw<SeenRecord | null>(null);

  readonly clock: typeof machineClock;
  readonly host: Host;
  store: Store = noStore;
  #openStore: (name: string) => Promise<Result<Store>>;
  #locks: LockManager | undefined;
  #writing: Writing | null = null;
  #idle: Surroundings['idle'];

  constructor({ host, clock = machineClock, openStore: open = openStore, locks, idle }: Surroundings) {
    this.host = { ask: (question, body) => this.#heard(host.ask(question, body)) };
    this.clock = clock;
    this.#openStore = open;
    this.#locks = locks;
    this.#idle = idle;
  }

  /** Everything the entries say. */
  readonly book: Book = $derived(readBook(this.entries));

  /** The open daybook as the host has it. */
  get open(): OpenBook | null {
    return this.state?.book ?? null;
  }

  /** The host hands nothing over until somebody unlocks it. */
  get locked(): boolean {
    return this.state?.lock?.locked ?? false;
  }

  /** Whether nobody else may write in this person's name: they have a passphrase, and the window was not opened with it. */
  ofAnother(person: string): boolean {
    const { as = null, people = [] } = this.state?.lock ?? {};
    return person !== as && people.some((one) => one.person === person);
  }

  /** Nothing can be kept: the host opened it for reading, another window writes, or this window is let in no more. */
  get readingOnly(): boolean {
    return (
      this.open === null || !this.open.writable || this.elsewhere || this.reach === 'shut' || (this.state?.lock?.reads ?? false)
    );
  }

  /** People of the register who are still here, by id with their names. */
  get people(): readonly { readonly id: string; readonly name: string }[] {
    const today = this.clock.now().slice(0, 10);
    return [...this.book.registers.person.values()]
      .map((person) => ({ id: person.id, body: latest(person).body }))
      .filter(({ body }) => body.left === undefined || body.left >= today)
      .map(({ id, body }) => ({ id, name: body.name }));
  }

  /** Asks the host where things stand, and reads the open daybook if there is one. */
  async start(): Promise<void> {
    await this.#take(await this.host.ask('state', {}));
  }

  /** Opens a daybook this installation knows. */
  async openRecent(key: string): Promise<void> {
    await this.#take(await this.host.ask('open', { recent: key }));
  }

  /** Makes a new daybook by its site's name. */
  async make(name: string): Promise<void> {
    await this.#take(await this.host.ask('open', { make: name }));
  }

  /** Opens the invented sample site; it is put beside the other daybooks if it is not there yet. */
  async openSample(): Promise<void> {
    await this.#take(await this.host.ask('open', { sample: true }));
  }

  /** Closes the daybook. */
  async close(): Promise<void> {
    await this.#take(await this.host.ask('close', {}));
  }

  /** Has the host hand nothing over until a passphrase is given; without one set, it goes on as before. */
  async lock(): Promise<void> {
    const answer = await this.host.ask('lock', {});
    if (answer.ok) await this.#take(answer);
  }

  /** Gives a passphrase; nothing comes back when it opened, else why not. Whoever opened it is who writes. */
  async unlock(person: string, passphrase: string): Promise<readonly Problem[]> {
    const answer = await this.host.ask('unlock', { person, passphrase });
    if (!answer.ok) return answer.problems;
    await this.#take(answer);
    await this.write(person);
    return [];
  }

  /** Says after how many minutes without a touch the window locks itself; null: never. */
  async lockAfter(minutes: number | null): Promise<readonly Problem[]> {
    return this.#told(await this.host.ask('lock-after', { minutes }));
  }

  /** Sets, changes or (null) takes away a person's passphrase on this machine. */
  async setPassphrase(person: string, before: string | undefined, after: string | null): Promise<readonly Problem[]> {
    return this.#told(await this.host.ask('passphrase', { person, after, ...(before === undefined ? {} : { before }) }));
  }

  #told(answer: Result<HostState>): readonly Problem[] {
    if (!answer.ok) return answer.problems;
    this.state = answer.value;
    return [];
  }

  /** Asks quietly whether the host still answers; a host that does so again with another daybook is followed there. */
  async look(): Promise<void> {
    if (this.reach === 'shut') return;
    const before = this.reach;
    const answer = await this.host.ask('state', {});
    if (answer.ok && before === 'silent' && answer.value.book?.id !== this.open?.id) await this.#take(answer);
  }

  /** Notes from every answer whether the host is there. Whoever cannot keep must not stand in the way of a window that can. */
  async #heard<T extends Result<unknown>>(asking: Promise<T>): Promise<T> {
    const answer = await asking;
    const codes = answer.ok ? [] : answer.problems.map((p) => p.code);
    const before = this.reach;
    // it locked by itself, or another window locked it
    if (codes.includes('session-locked') && !this.locked) void this.start();
    if (before === 'shut') return answer;
    this.reach = codes.includes('no-session') ? 'shut' : codes.includes('host-silent') ? 'silent' : 'there';
    if (this.reach !== 'there') this.#letWritingGo();
    else if (before === 'silent' && this.ready && this.open) this.#askToWrite(this.open.id, true);
    return answer;
  }

  #letWritingGo(): void {
    this.#writing?.release();
    this.#writing = null;
  }

  /** Asks for the right to write; `missed`: others may have kept something since it was last held. */
  #askToWrite(id: string, missed = false): void {
    this.#letWritingGo();
    this.#writing = onlyWriter(this.#locks, id, (ours) => {
      const waited = this.elsewhere;
      this.elsewhere = !ours;
      // what the other window kept meanwhile is not here yet
      if (ours && (waited || missed)) void this.reload();
    });
  }

  async #take(answer: Result<HostState>): Promise<void> {
    if (!answer.ok) {
      this.problems = answer.problems;
      return;
    }
    this.problems = [];
    const before = this.open?.id;
    const next = answer.value.book;
    const locked = answer.value.lock?.locked ?? false;
    if (before !== next?.id || locked) this.#leave();
    this.state = answer.value;
    // also when an earlier try got no further than the door
    if (next && !this.ready && !locked) await this.#enter(next);
  }

  #leave(): void {
    this.ready = false;
    this.seen?.leave();
    this.seen = null;
    this.entries = [];
    this.elsewhere = false;
    this.writer = null;
    this.lastKept = null;
    this.#letWritingGo();
    this.store.close();
    this.store = noStore;
  }

  async #enter(open: OpenBook): Promise<void> {
    this.store.close();
    const store = await this.#openStore(open.id);
    this.store = store.ok ? store.value : noStore;
    this.storeProblem = store.ok ? null : (store.problems[0] ?? null);
    if (!(await this.#read())) return;
    const writer = await this.store.setting('writer').catch(() => undefined);
    const as = this.state?.lock?.as ?? writer;
    if (typeof as === 'string' && this.book.registers.person.has(as) && !this.ofAnother(as)) this.writer = as;
    this.#askToWrite(open.id);
    this.ready = true;
    if (store.ok) this.#lookBack(store.value);
  }

  /** Holds what was seen before against the record that has just come; while the window is idle, so that opening does not wait for it. */
  #lookBack(store: Store): void {
    this.seen = new SeenRecord({
      store,
      entries: () => this.entries,
      reload: () => this.#read(),
      mayWrite: () => this.#writing !== null && !this.elsewhere,
      ...(this.#idle ? { idle: this.#idle } : {}),
    });
    void this.seen.settle();
  }

  /** Reads all entries anew. */
  async reload(): Promise<boolean> {
    const read = await this.#read();
    if (read) void this.seen?.settle(true);
    return read;
  }

  async #read(): Promise<boolean> {
    const answer = await this.host.ask('entries', {});
    if (answer.ok) this.entries = entriesFrom(answer.value);
    else this.problems = answer.problems;
    return answer.ok;
  }

  /** Says who writes from now on. One touch, no passphrase: it is the book's word, not a lock. */
  async write(person: string | null): Promise<void> {
    this.writer = person;
    await this.store.saveSetting('writer', person).catch(() => {});
  }

  /**
   * Keeps an entry: its shape and the book's rules first, then the host. Every problem comes back with its field. Asking again with the same id
   * after a host that fell silent keeps it once.
   */
  async keep(draft: unknown): Promise<Result<Kept>> {
    if (this.readingOnly) return bad(problem('reading-only', ''));
    const read = this.check(draft);
    if (!read.ok) return read;
    const answer = await this.host.ask('keep', read.value);
    if (!answer.ok) return answer;
    const { entry, desk } = answer.value;
    if (!this.entries.some((e) => e.id === entry.id)) this.entries = [...this.entries, entry];
    if (this.state?.book) {
      const desks = this.state.book.desks.filter((d) => d.desk !== desk.desk);
      this.state = { ...this.state, book: { ...this.state.book, desks: [...desks, desk] } };
    }
    this.lastKept = { entry, endMark: desk.endMark };
    void this.seen?.settle();
    return good(this.lastKept);
  }

  /** The draft as it would be kept, or everything that is wrong with it. */
  check(draft: unknown): ReturnType<typeof draftFrom> {
    const read = draftFrom(draft);
    if (!read.ok) return read;
    const problems = checkDraft(this.book, read.value, this.clock.now());
    return problems.length > 0 ? bad(...problems) : read;
  }
}
