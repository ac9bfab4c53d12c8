/** The state of the page Find: what is looked for, what was found by whoever writes now, and each hit as a line that leads to its page. */
import type { Book } from '../../core/book/book.ts';
import { type Found, find, type Sought } from '../../core/book/find.ts';
import { type Findable, type FoundThing, readFindables } from '../../core/book/findable.ts';
import { maySee, rolesAt } from '../../core/book/may-see.ts';
import { entryOfCode } from '../../core/entry-code.ts';
import type { RegisterKind } from '../../core/kinds/index.ts';
import type { Daybook } from '../../daybook/book.svelte.ts';
import { dayText } from '../../words/dates.ts';
import { entryName, kindName } from '../../words/daybook-naming.ts';
import { roleNames } from '../../words/labels.ts';
import { findWords as words } from '../../words/screens-find.ts';
import { barHref } from '../bullion/hrefs.ts';
import { sentenceOf, shortened } from '../daybook/lines.svelte.ts';
import { entryOf } from '../daybook/links.ts';
import { chargeHref, entryHref, lotHref, registerHref } from '../shared/places.ts';
import { narrowed, nothingSought } from './address.ts';

/** Hits shown of each sort of thing, and where only one sort is asked for. */
export const shownOfEach = 6;
export const shownOfOne = 100;

const ready = new WeakMap<Book, readonly Findable[]>();

function findables(book: Book): readonly Findable[] {
  const before = ready.get(book);
  if (before) return before;
  const all = readFindables(book, { kind: kindName, role: (role) => roleNames[role], day: dayText });
  ready.set(book, all);
  return all;
}

export interface Hit {
  readonly key: string;
  readonly href: string;
  /** The link's own words. */
  readonly name: string;
  /** Said beside it. */
  readonly says: string;
  readonly struck: boolean;
}

/** A hit as a line. */
export function hitOf(book: Book, item: Findable): Hit {
  const { what, id, entry, label } = item;
  const reading = book.current.byId.get(entry) ?? null;
  const line = (href: string, name: string, says: string, key = id): Hit => ({
    key,
    href,
    name,
    says,
    struck: reading?.struck != null,
  });
  const entryPage = book.charges.all.has(entry) ? chargeHref(entry) : entryHref(entry);
  switch (what) {
    case 'lot':
      return line(lotHref(id), label, entryName(book, entry));
    case 'bar':
      return line(barHref(id), label, entryName(book, entry));
    case 'document':
      return line(entryHref(entry), label, entryName(book, entry), `${id} ${label}`);
    case 'evidence':
      return line(entryHref(entry), label || words.file, entryName(book, entry), `${id} ${item.marks.join()}`);
    case 'entry': {
      const kept = entryOf(book, entry);
      const sentence = kept ? shortened(sentenceOf(book, { entry: kept, reading })) : '';
      return line(entryPage, entryName(book, entry), sentence);
    }
    default: {
      const register: RegisterKind = what;
      return line(registerHref(register, id), label, words.stated(item.days.at(-1) ?? ''));
    }
  }
}

export interface HitGroup {
  readonly what: FoundThing;
  readonly total: number;
  readonly hits: readonly Hit[];
}

export class FindState {
  sought: Sought = $state.raw(nothingSought);
  readonly #daybook: Daybook;

  constructor(daybook: Daybook, sought: Sought) {
    this.#daybook = daybook;
    this.sought = sought;
  }

  /** What was found; null while nothing is asked. */
  readonly found: Found | null = $derived.by(() => {
    const { book, writer, clock } = this.#daybook;
    if (this.sought.words.trim() === '' && !narrowed(this.sought)) return null;
    const roles = rolesAt(book.registers, writer, clock.now());
    // the text of a code on a tag or label stands for its entry
    const sought = { ...this.sought, words: entryOfCode(this.sought.words) ?? this.sought.words };
    return find(findables(book), sought, (what) => maySee(roles, what), this.sought.what === '' ? shownOfEach : shownOfOne);
  });

  readonly groups: readonly HitGroup[] = $derived.by(() =>
    (this.found?.groups ?? []).map(({ what, total, hits }) => ({
      what,
      total,
      hits: hits.map((item) => hitOf(this.#daybook.book, item)),
    })),
  );
}
