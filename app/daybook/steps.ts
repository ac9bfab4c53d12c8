/**
 * What stood in a form before each change, so that a change can be taken back until the entry is kept. Typing on in one field is one step. Plain data
 * only; nothing here is stored.
 */

/** Steps that are remembered: more than a form has fields. */
const most = 60;

/** Where two values first differ, as a path of member names; null where they do not. */
export function changedAt(before: unknown, after: unknown, path = ''): string | null {
  if (Object.is(before, after)) return null;
  if (!isHolder(before) || !isHolder(after) || Array.isArray(before) !== Array.isArray(after)) return path;
  const [own, other] = [Object.keys(before), Object.keys(after)];
  // a row that came or went is a change of its list
  if (own.length !== other.length) return `${path}/${own.length > other.length ? 'less' : 'more'} ${other.length}`;
  for (const key of own) {
    const found = Object.hasOwn(after, key) ? changedAt(before[key], after[key], `${path}/${key}`) : `${path}/${key}`;
    if (found !== null) return found;
  }
  return null;
}

const isHolder = (value: unknown): value is Record<string, unknown> => value !== null && typeof value === 'object';

export class Steps<T> {
  #list: T[] = [];
  #now: T;
  #at: string | null = null;

  /** `now`: what stands in the form when it is shown. */
  constructor(now: T) {
    this.#now = now;
  }

  get count(): number {
    return this.#list.length;
  }

  /** Notes what stands there now. A change where the last one was goes with it into one step. */
  note(now: T): void {
    const at = changedAt(this.#now, now);
    if (at === null) return;
    if (at !== this.#at) this.#list = [...this.#list, this.#now].slice(-most);
    this.#at = at;
    this.#now = now;
  }

  /** What stood there before the last step, which is then forgotten; null where there was none. */
  back(): T | null {
    const before = this.#list.pop();
    if (before === undefined) return null;
    this.#now = before;
    this.#at = null;
    return before;
  }
}
