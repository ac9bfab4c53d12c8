/**
 * The order in which corrections of one entry are taken up. A clock that was set back must not let an older correction win, so what the record itself
 * says comes first: a correction follows the one it names, and the lines of one desk follow their numbers. Only between these does writing decide.
 */
import type { Entry } from '../entry.ts';

const follows = (a: Entry, b: Entry): boolean => a.body.corrects === b.id || (a.desk === b.desk && a.n > b.n);

/** The corrections of one entry, each after all that it follows; `written` holds them by writing. A ring, which no desk can write, keeps that order. */
export function inTrail(written: readonly Entry[]): readonly Entry[] {
  const left = [...written];
  const taken: Entry[] = [];
  while (left.length > 0) {
    const at = left.findIndex((one) => !left.some((other) => other !== one && follows(one, other)));
    taken.push(...left.splice(Math.max(at, 0), 1));
  }
  return taken;
}
