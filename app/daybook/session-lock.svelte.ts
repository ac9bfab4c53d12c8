/**
 * The lock of this window: it comes down by itself after a time without a key or a touch, or when somebody says so. Where nobody has a passphrase it only
 * covers the page; where somebody has, the host is told and hands nothing over until one is given. What is being written is a draft before anything goes.
 */
import { type Problem, problem } from '../core/result.ts';
import type { Daybook } from './book.svelte.ts';

/** Longer than a form waits before it saves its draft, in milliseconds. */
const draftMs = 400;

export class SessionLock {
  /** The page is covered. */
  shown = $state(false);
  /** A passphrase is being looked at. */
  looking = $state(false);
  problems = $state.raw<readonly Problem[]>([]);
  readonly #daybook: Daybook;
  readonly #millis: () => number;
  readonly #wait: (ms: number) => Promise<void>;
  #touched: number;

  constructor(
    daybook: Daybook,
    millis: () => number = () => performance.now(),
    wait: (ms: number) => Promise<void> = (ms) => new Promise((done) => setTimeout(done, ms)),
  ) {
    this.#daybook = daybook;
    this.#millis = millis;
    this.#wait = wait;
    this.#touched = millis();
  }

  /** Whether nothing of the open daybook is to be shown. */
  get locked(): boolean {
    return this.#daybook.open !== null && (this.shown || this.#daybook.locked);
  }

  /** Somebody is here. */
  touch(): void {
    this.#touched = this.#millis();
  }

  /** Looks whether it has been long enough; to be called every few seconds. */
  look(): void {
    const minutes = this.#daybook.state?.lock?.idleMinutes ?? null;
    if (minutes === null || this.#daybook.open === null || this.locked) return;
    if (this.#millis() - this.#touched >= minutes * 60_000) void this.lock();
  }

  /** Covers the page; forms that go save their drafts, and then the host is told. */
  async lock(): Promise<void> {
    if (this.#daybook.open === null) return;
    this.problems = [];
    this.shown = true;
    if ((this.#daybook.state?.lock?.people.length ?? 0) === 0) return;
    await this.#wait(draftMs);
    await this.#daybook.lock();
  }

  /** Uncovers the page where nobody has a passphrase. */
  goOn(): void {
    if (this.#daybook.locked) return;
    this.touch();
    this.shown = false;
  }

  /** Gives a passphrase; true when it opened. */
  async open(person: string, passphrase: string): Promise<boolean> {
    if (this.looking) return false;
    this.looking = true;
    this.problems = person === '' ? [problem('no-passphrase', 'person')] : [];
    if (person !== '') this.problems = await this.#daybook.unlock(person, passphrase);
    this.looking = false;
    if (this.problems.length > 0) return false;
    this.touch();
    this.shown = false;
    return true;
  }
}
