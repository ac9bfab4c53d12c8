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

const holds = (item: Findable, word: string): boolean =>
  item.text.includes(word) || (word.length >= markLength && item.marks.some((mark) => mark.startsWith(word)));

/** How near a hit is: called just so, called so at its beginning, each word begins one of its name, all stand in its name, they stand elsewhere. */
function nearness({ called }: Findable, words: readonly string[], whole: string): number {
  if (called === whole) return 0;
  if (called.startsWith(whole)) return 1;
  if (words.every((word) => ` ${called}`.includes(` ${word}`))) return 2;
  return words.every((word) => called.includes(word)) ? 3 : 4;
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
      near = [[], [], [], [], []];
      byThing.set(item.what, near);
    }
    near[nearness(item, words, whole)]?.push(item);
  }
  const groups = [...byThing].map(([what, near]) => {
    const hits = near.flat();
    return { what, total: hits.length, hits: hits.slice(0, most) };
  });
  return { groups, total: groups.reduce((sum, { total }) => sum + total, 0), lookedIn, withheld: [...withheld].sort() };
}
