/**
 * Find: words looked for in the whole book. Every word must stand in what is found; case and accents do not count. Lots and labels come first, entries
 * last. What whoever asks may not see is not looked in, and nothing tells how much of it would have been found.
 */
import type { Findable, FoundThing } from './findable.ts';
import { folded, wordsOf } from './fold.ts';
import type { Hidden } from './may-see.ts';

/** What is looked for. Empty: no matter. */
export interface Sought {
  readonly words: string;
  readonly what: FoundThing | '';
  /** The kind of entry that tells of it. */
  readonly kind: string;
  /** First and last day, ISO. */
  readonly from: string;
  readonly to: string;
}

export interface FoundGroup {
  readonly what: FoundThing;
  /** How many were found; `hits` are the first of them. */
  readonly total: number;
  readonly hits: readonly Findable[];
}

export interface Found {
  /** In reading order; those with nothing in them are left out. */
  readonly groups: readonly FoundGroup[];
  readonly total: number;
  /** How many things and entries were looked in, whatever the filters left of them. */
  readonly lookedIn: number;
  /** What this book holds that is not for whoever asks: it was not looked in. */
  readonly withheld: readonly Hidden[];
}

/** A word this long may be the beginning of an id, a hash or the name of a file. */
const markLength = 8;

/** One Latin letter, or one or two figures: inside a word it says nothing. The letter has to stand alone, the figures to begin a number. */
const slight = /^(?:[a-z]|[0-9]{1,2})$/;
/** Whether what stands beside a word belongs to it: letter by letter, figure by figure ("B7" holds both). */
const joins = (word: string, beside: string): boolean => (/[0-9]/.test(word) ? /[0-9]/ : /[\p{L}\p{M}]/u).test(beside);

/** Where a word of its own stands in a text from a place on; −1: nowhere. */
function ownWord(text: string, word: string, from: number): number {
  for (let at = text.indexOf(word, from); at >= 0; at = text.indexOf(word, at + 1))
    if (!joins(word, text.charAt(at - 1)) && (/[0-9]/.test(word) || !joins(word, text.charAt(at + word.length)))) return at;
  return -1;
}
const place = (text: string, word: string, from = 0): number =>
  slight.test(word) ? ownWord(text, word, from) : text.indexOf(word, from);

const holds = (item: Findable, word: string): boolean =>
  place(item.text, word) >= 0 || (word.length >= markLength && item.marks.some((mark) => mark.startsWith(word)));

/** Whether the words stand in a text one after the other, whatever lies between. */
function inOrder(text: string, words: readonly string[]): boolean {
  let from = 0;
  for (const word of words) {
    const at = place(text, word, from);
    if (at < 0) return false;
    from = at + word.length;
  }
  return true;
}

/** How near a hit can be, from the nearest: the last is that the words stand in it somewhere. */
const nearnesses = 9;

/**
 * How near a hit is: called just so or by that id, called so at its beginning, the words as they were written begin within its name, each word begins one of
 * its name, all stand in its name; then what is told of it: the words as written, the words in order, the words anywhere.
 */
function nearness({ called, text, marks }: Findable, words: readonly string[], whole: string): number {
  if (words.length === 0 || called === whole || marks.includes(whole)) return 0;
  if (called.startsWith(whole) && !joins(whole.slice(-1), called.charAt(whole.length))) return 1;
  if (called.startsWith(whole)) return 2;
  if (called.includes(` ${whole}`)) return 3;
  if (words.every((word) => ` ${called}`.includes(` ${word}`))) return 4;
  if (words.every((word) => place(called, word) >= 0)) return 5;
  if (place(text, whole) >= 0) return 6;
  return inOrder(text, words) ? 7 : 8;
}

/** Looks through all there is. `sees`: whether who asks may see what is not for everybody; `most`: hits handed out of each sort of thing. */
export function find(all: readonly Findable[], sought: Sought, sees: (what: Hidden) => boolean, most: number): Found {
  const words = wordsOf(sought.words);
  const whole = folded(sought.words).trim();
  const seen = { 'bar-place': sees('bar-place'), 'personal-air': sees('personal-air') };
  const byThing = new Map<FoundThing, Findable[][]>();
  let lookedIn = 0;
  const withheld = new Set<Hidden>();
  for (const item of all) {
    if (item.hidden !== null && !seen[item.hidden]) {
      withheld.add(item.hidden);
      continue;
    }
    lookedIn++;
    if (sought.what !== '' && item.what !== sought.what) continue;
    if (sought.kind !== '' && item.kind !== sought.kind) continue;
    if (!item.days.some((day) => (sought.from === '' || day >= sought.from) && (sought.to === '' || day <= sought.to))) continue;
    if (!words.every((word) => holds(item, word))) continue;
    let near = byThing.get(item.what);
    if (!near) {
      near = Array.from({ length: nearnesses }, () => []);
      byThing.set(item.what, near);
    }
    near[nearness(item, words, whole)]?.push(item);
  }
  const sorts = [...byThing].map(([what, near]) => {
    const hits = near.flat();
    return { what, total: hits.length, hits: hits.slice(0, most), just: (near[0]?.length ?? 0) > 0 };
  });
  // what is called just so is what was meant: its sort of thing comes first
  const groups = sorts.sort((a, b) => Number(b.just) - Number(a.just)).map(({ just: _, ...group }) => group);
  return { groups, total: groups.reduce((sum, { total }) => sum + total, 0), lookedIn, withheld: [...withheld].sort() };
}
