/** The state of the Today room: the day's page from the book as it stands, with the drafts this window remembers. */
import { maySee, rolesAt } from '../../core/book/may-see.ts';
import { countOutOfStep } from '../../core/book/out-of-step.ts';
import type { Daybook } from '../../daybook/book.svelte.ts';
import type { DraftRow } from '../../daybook/drafts.ts';
import { type Today, todayOf } from './today.ts';

const skippedKey = 'skipped-steps';

export class TodayState {
  drafts: readonly DraftRow[] = $state.raw([]);
  /** The clock as it was when the page was opened or looked at again. */
  now = $state('');
  /** First steps left for later, on this machine. */
  skipped: ReadonlySet<string> = $state.raw(new Set());
  readonly #daybook: Daybook;

  constructor(daybook: Daybook) {
    this.#daybook = daybook;
    this.now = daybook.clock.now();
  }

  /** Looks at the clock and the drafts again. */
  async look(): Promise<void> {
    this.now = this.#daybook.clock.now();
    const skipped = await this.#daybook.store.setting(skippedKey).catch(() => undefined);
    if (Array.isArray(skipped)) this.skipped = new Set(skipped.map(String));
    const rows = await this.#daybook.store.drafts().catch(() => []);
    this.drafts = [...rows].sort((a, b) => (a.touched < b.touched ? 1 : -1));
  }

  /** Leaves a first step for later, or takes it up again. */
  async skip(key: string, left: boolean): Promise<void> {
    this.skipped = new Set(left ? [...this.skipped, key] : [...this.skipped].filter((one) => one !== key));
    await this.#daybook.store.saveSetting(skippedKey, [...this.skipped]).catch(() => {});
  }

  readonly page: Today = $derived.by(() => {
    const { book, writer } = this.#daybook;
    return todayOf(book, this.now, this.drafts, (what) => maySee(rolesAt(book.registers, writer, this.now), what), this.skipped);
  });

  /** How many things are out of step, by the same list that the Mercury room shows. */
  readonly outOfStep: number = $derived.by(() =>
    countOutOfStep(this.#daybook.book, { at: this.now, notices: this.#daybook.open?.notices ?? [] }),
  );

  /** When the last entry was written down; null in an empty book. */
  get lastWritten(): string | null {
    return this.#daybook.entries.reduce<string | null>((last, e) => (last === null || e.written > last ? e.written : last), null);
  }
}
