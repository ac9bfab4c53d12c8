/**
 * The lines of the daybook: every entry in order, the newest day first, found by kind, writer, day, mark and text, a page at a time. Only the
 * lines of the page that is shown are put into words, so that a long book stays quick.
 */
import type { Book } from '../../core/book/book.ts';
import type { Reading } from '../../core/book/current.ts';
import type { Entry } from '../../core/entry.ts';
import { isKind } from '../../core/kinds/index.ts';
import { clockOf, dayOf, minutesOf } from '../../core/time.ts';
import type { Daybook } from '../../daybook/book.svelte.ts';
import { daybookWords } from '../../words/daybook.ts';
import { entryLine } from '../../words/daybook-line.ts';
import { kindName, writerOf } from '../../words/daybook-naming.ts';
import { everything, type Finding } from './address.ts';
import { type Mark, marksOf, wantsALook } from './marks.ts';

/** Lines on a page. */
export const linesPerPage = 60;

/** An entry and how it reads; the reading is null for a kind not understood here. */
export interface Kept {
  readonly entry: Entry;
  readonly reading: Reading | null;
}

export interface Line {
  readonly id: string;
  readonly day: string;
  /** "09:20", "about 09:20" or "day only". */
  readonly time: string;
  readonly kind: string;
  readonly text: string;
  readonly by: string | null;
  readonly marks: readonly Mark[];
  readonly struck: boolean;
}

/** The lines of one day. */
export interface Day {
  readonly day: string;
  readonly lines: readonly Line[];
}

const happenedOf = ({ entry, reading }: Kept): string => reading?.happened ?? entry.happened;

const ordered = new WeakMap<Book, readonly Kept[]>();

/** All entries, the one that happened last first. */
export function newestFirst(book: Book): readonly Kept[] {
  const before = ordered.get(book);
  if (before) return before;
  const all: Kept[] = [
    ...[...book.current.byId.values()].map((reading) => ({ entry: reading.entry, reading })),
    ...book.current.notUnderstood.map((entry) => ({ entry, reading: null })),
  ];
  const keyed = all.map((kept, i) => ({ kept, i, day: dayOf(happenedOf(kept)), at: minutesOf(happenedOf(kept)) ?? 0 }));
  // by the calendar day on the wall first, so that a day is never split by two offsets; the book's own order decides between equals
  keyed.sort((a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : b.at - a.at || b.i - a.i));
  const result = keyed.map(({ kept }) => kept);
  ordered.set(book, result);
  return result;
}

const sentences = new WeakMap<Book, Map<string, string>>();

/** The sentence of an entry; of a kind not understood, its text as it stands. */
export function sentenceOf(book: Book, { entry, reading }: Kept): string {
  let known = sentences.get(book);
  if (!known) {
    known = new Map();
    sentences.set(book, known);
  }
  const before = known.get(entry.id);
  if (before !== undefined) return before;
  const text = reading ? entryLine(book, reading) : JSON.stringify(entry.body).slice(0, 400);
  known.set(entry.id, text);
  return text;
}

/** The beginning of a long text, cut between words. */
export function shortened(text: string, most = 320): string {
  if (text.length <= most) return text;
  const cut = text.lastIndexOf(' ', most);
  return `${text.slice(0, cut > most / 2 ? cut : most)} …`;
}

function stringsIn(value: unknown, into: string[]): void {
  if (typeof value === 'string') into.push(value);
  else if (Array.isArray(value)) for (const item of value) stringsIn(item, into);
  else if (value !== null && typeof value === 'object') for (const item of Object.values(value)) stringsIn(item, into);
}

const folded = (text: string): string => text.toLowerCase().replace(/[\u00a0\u202f]/g, ' ');

/** Whether the words stand in its sentence, in what was ever written in it, or in its hash or number. */
function holdsText(book: Book, kept: Kept, wanted: string): boolean {
  if (folded(sentenceOf(book, kept)).includes(wanted)) return true;
  const own: string[] = [kept.entry.hash, kept.entry.id];
  stringsIn(kept.entry.body, own);
  return own.some((text) => folded(text).includes(wanted));
}

/** The entries that are looked for. */
export function found(book: Book, finding: Finding): readonly Kept[] {
  const wanted = folded(finding.text.trim());
  return newestFirst(book).filter((kept) => {
    const { entry, reading } = kept;
    if (finding.kind === 'unknown' ? isKind(entry.kind) : finding.kind !== '' && entry.kind !== finding.kind) return false;
    if (finding.by !== '' && entry.by !== finding.by) return false;
    if (finding.until !== '' && dayOf(happenedOf(kept)) > finding.until) return false;
    if (finding.marked && !wantsALook(marksOf(book, entry, reading))) return false;
    return wanted === '' || holdsText(book, kept, wanted);
  });
}

/** A line for the eye. */
export function lineOf(book: Book, kept: Kept): Line {
  const { entry, reading } = kept;
  const happened = happenedOf(kept);
  const clock = clockOf(happened);
  return {
    id: entry.id,
    day: dayOf(happened),
    time: entry.timing === 'day' ? daybookWords.noTime : entry.timing === 'about' ? daybookWords.about(clock) : clock,
    kind: kindName(entry.kind),
    text: sentenceOf(book, kept),
    by: writerOf(book, entry.by, entry.happened),
    marks: marksOf(book, entry, reading),
    struck: reading?.struck != null,
  };
}

/** Lines grouped by the day they stand under, in their order. */
export function byDay(lines: readonly Line[]): readonly Day[] {
  const days: { day: string; lines: Line[] }[] = [];
  for (const line of lines) {
    const last = days.at(-1);
    if (last?.day === line.day) last.lines.push(line);
    else days.push({ day: line.day, lines: [line] });
  }
  return days;
}

/** The state of the room's list. */
export class Lines {
  finding: Finding = $state.raw(everything);
  readonly #daybook: Daybook;

  constructor(daybook: Daybook) {
    this.#daybook = daybook;
  }

  readonly found: readonly Kept[] = $derived.by(() => found(this.#daybook.book, this.finding));

  get count(): number {
    return this.found.length;
  }
  get all(): number {
    const { current } = this.#daybook.book;
    return current.byId.size + current.notUnderstood.length;
  }
  get pages(): number {
    return Math.max(1, Math.ceil(this.count / linesPerPage));
  }
  /** The page shown: one past the end shows the last. */
  get page(): number {
    return Math.min(this.finding.page, this.pages);
  }
  readonly days: readonly Day[] = $derived.by(() => {
    const from = (this.page - 1) * linesPerPage;
    return byDay(this.found.slice(from, from + linesPerPage).map((kept) => lineOf(this.#daybook.book, kept)));
  });

  /** Changes what is looked for; the first page is shown again. */
  look(change: Partial<Finding>): void {
    this.finding = { ...this.finding, page: 1, ...change };
  }
}
