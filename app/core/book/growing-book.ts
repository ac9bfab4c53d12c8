/**
 * A book that entries are added to one by one, for asking the rules of keeping. Each part is worked out when it is first asked for, and stands until
 * an entry comes that can change it: what an entry of another kind says cannot touch it. It is always the same as `readBook` of the same entries.
 */
import type { Entry } from '../entry.ts';
import { type Kind, registerKinds } from '../kinds/index.ts';
import { type Book, bookOf } from './book.ts';
import { type Charges, readCharges } from './charges.ts';
import { type Current, readCurrent, withEntry } from './current.ts';
import { type Lots, readLots } from './lots.ts';
import { type Registers, readRegisters } from './registers.ts';

/** Kinds that the lots are read from; a scale changes what a weight of theirs is worth, a retort how full a charge makes it. */
const makesLots: ReadonlySet<string> = new Set<Kind>([
  'clean-up',
  'cleaning',
  'squeeze',
  'plate-work',
  'charge',
  'unmake',
  'transfer',
  'scale',
]);
const makesCharges: ReadonlySet<string> = new Set<Kind>([...(makesLots as Set<Kind>), 'firing', 'retort']);
const makesRegisters: ReadonlySet<string> = new Set<Kind>(registerKinds);

export class GrowingBook {
  #entries: readonly Entry[];
  #current: Current | null = null;
  #registers: Registers | null = null;
  #lots: Lots | null = null;
  #charges: Charges | null = null;
  #book: Book | null = null;

  constructor(entries: readonly Entry[]) {
    this.#entries = entries;
  }

  /** Adds one entry; `entries` are all of them in order, with it. */
  add(entry: Entry, entries: readonly Entry[]): void {
    this.#current = this.#current && withEntry(this.#current, entry, this.#lastBut(entry, entries));
    this.#entries = entries;
    this.#book = null;
    const fresh = this.#current === null;
    if (fresh || makesRegisters.has(entry.kind)) this.#registers = null;
    if (fresh || makesLots.has(entry.kind)) this.#lots = null;
    if (fresh || makesCharges.has(entry.kind)) this.#charges = null;
  }

  /** The last entry before this one was added; this one itself where it did not come last. */
  #lastBut(entry: Entry, entries: readonly Entry[]): Entry | undefined {
    return entries.at(-1) === entry ? entries.at(-2) : entries.at(-1);
  }

  /** The book as it is now, for asking at once: its parts come into being as they are asked for, and after the next `add` it must not be asked again. */
  get book(): Book {
    this.#book ??= this.#lazily();
    return this.#book;
  }

  #lazily(): Book {
    const entries = this.#entries;
    const current = (): Current => (this.#current ??= readCurrent(entries));
    const registers = (): Registers => (this.#registers ??= readRegisters(current()));
    const lots = (): Lots => (this.#lots ??= readLots(current(), registers()));
    const charges = (): Charges => (this.#charges ??= readCharges(current(), registers(), lots()));
    let whole: Book | null = null;
    const rest = (): Book => (whole ??= bookOf(entries, current(), registers(), lots(), charges()));
    return {
      entries,
      get current() {
        return current();
      },
      get registers() {
        return registers();
      },
      get lots() {
        return lots();
      },
      get charges() {
        return charges();
      },
      get runs() {
        return rest().runs;
      },
      get condensers() {
        return rest().condensers;
      },
      get movements() {
        return rest().movements;
      },
      get flags() {
        return rest().flags;
      },
    };
  }
}
