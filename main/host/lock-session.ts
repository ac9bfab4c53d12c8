/**
 * Whether the host hands over what is in the open daybook. Where nobody has a passphrase it always does. Where somebody has, it does only after one was
 * given, as that person, until it is locked again or nothing was asked for longer than the window's idle time. It is no encryption: whoever can read the
 * folder needs no host.
 */
import type { LockState } from '../../app/contract.ts';
import { bad, good, type Problem, problem, type Result } from '../../app/core/result.ts';
import { type LockSettings, lockSettingsPath, noLock, readLockSettings, writeLockSettings } from './lock-settings.ts';
import { hashOf, matches } from './passphrase-hash.ts';

/** Shortest passphrase, in characters. */
const leastLetters = 8;
/** Wrong ones that cost no waiting, and the longest wait in seconds: it doubles from two. */
const freeTries = 3;
const longestWait = 300;
/** The window locks itself by its own clock; this much later the host does so alone, in milliseconds. */
const graceMs = 60_000;

const waitAfter = (times: number): number => (times < freeTries ? 0 : Math.min(longestWait, 2 ** (times - freeTries + 1)));

export interface SessionLock {
  /** A daybook was opened: locked where somebody has a passphrase. */
  readonly opened: (daybookId: string) => void;
  readonly closed: () => void;
  /** As the window is told; undefined while no daybook is open. */
  readonly told: () => LockState | undefined;
  /** Why nothing is handed over now; null where it is. Counts as a sign of life. */
  readonly refusal: () => Problem | null;
  readonly lock: () => void;
  /** Problems: `no-passphrase`, `passphrase-wrong`, `passphrase-wait`. */
  readonly unlock: (person: string, passphrase: string) => Promise<Result<null>>;
  readonly lockAfter: (minutes: number | null) => Result<null>;
  /** Sets, changes or (null) takes away. Problems: `passphrase-short`, and those of `unlock` for the one it had before. */
  readonly setPassphrase: (
    person: string,
    name: string,
    before: string | undefined,
    after: string | null,
  ) => Promise<Result<null>>;
  /** Whom it was unlocked as; null where nobody has a passphrase. */
  readonly as: () => string | null;
  /** Whether somebody may write in this person's name now: not in that of one who has a passphrase and did not give it. */
  readonly mayWriteAs: (person: string) => boolean;
}

/** `millis` is a clock in milliseconds. */
export function sessionLock(home: string, millis: () => number): SessionLock {
  let daybook: string | null = null;
  let settings: LockSettings = noLock;
  let spoiled: Problem | null = null;
  let open = false;
  let person: string | null = null;
  let heard = millis();
  let last: Promise<unknown> = Promise.resolve();

  /** One after another: two tries at once are two tries. */
  const inTurn = <T>(act: () => Promise<Result<T>>): Promise<Result<T>> => {
    const turn = last.then(act);
    last = turn.catch(() => undefined);
    return turn;
  };
  const guarded = (): boolean => settings.people.length > 0 || spoiled !== null;
  const kept = (id: string) => settings.people.find((one) => one.person === id)?.passphrase;

  const change = (next: Partial<LockSettings>): Result<null> => {
    if (spoiled) return bad(spoiled);
    if (daybook === null) return bad(problem('no-daybook-open', ''));
    const whole = { ...settings, ...next };
    const written = writeLockSettings(home, daybook, whole);
    if (written.ok) settings = whole;
    return written;
  };

  const waitSeconds = (): number => {
    const { times, at } = settings.wrong;
    // a clock that was set back must not make the wait longer than it is
    const since = Math.max(0, millis() - at) / 1000;
    return Math.max(0, Math.ceil(Math.min(waitAfter(times), waitAfter(times) - since)));
  };

  const lock = (): void => {
    open = false;
    person = null;
  };

  const look = (): void => {
    const now = millis();
    if (open && guarded() && settings.idleMinutes !== null && now - heard > settings.idleMinutes * 60_000 + graceMs) lock();
  };

  /** Whether it is theirs. A wrong one is counted on the disk, so that starting the program again gives no new tries. */
  const tried = async (id: string, passphrase: string, field: string): Promise<Result<null>> => {
    if (spoiled) return bad(spoiled);
    const theirs = kept(id);
    if (!theirs) return bad(problem('no-passphrase', 'person'));
    const wait = waitSeconds();
    if (wait > 0) return bad(problem('passphrase-wait', field, { seconds: wait }));
    if (await matches(passphrase, theirs)) return settings.wrong.times === 0 ? good(null) : change({ wrong: noLock.wrong });
    const counted = change({ wrong: { times: settings.wrong.times + 1, at: millis() } });
    if (!counted.ok) return counted;
    const seconds = waitSeconds();
    return bad(problem('passphrase-wrong', field, { seconds }));
  };

  return {
    opened: (id) => {
      if (id === daybook) return;
      daybook = id;
      const read = readLockSettings(home, id);
      settings = read.ok ? read.value : noLock;
      spoiled = read.ok ? null : (read.problems[0] ?? null);
      person = null;
      open = !guarded();
      heard = millis();
    },
    closed: () => {
      daybook = null;
      settings = noLock;
      spoiled = null;
      lock();
    },
    told: () => {
      if (daybook === null) return undefined;
      look();
      return {
        locked: guarded() && !open,
        idleMinutes: settings.idleMinutes,
        people: settings.people.map(({ person: id, name }) => ({ person: id, name })),
        as: person,
        waitSeconds: waitSeconds(),
        file: lockSettingsPath(home, daybook),
        spoiled: spoiled !== null,
        reads: false,
      };
    },
    refusal: () => {
      look();
      heard = millis();
      return daybook !== null && guarded() && !open ? problem('session-locked', '') : null;
    },
    lock: () => {
      if (guarded()) lock();
    },
    unlock: (id, passphrase) =>
      inTurn(async () => {
        const right = await tried(id, passphrase, 'passphrase');
        if (!right.ok) return right;
        open = true;
        person = id;
        heard = millis();
        return good(null);
      }),
    lockAfter: (minutes) => change({ idleMinutes: minutes }),
    setPassphrase: (id, name, before, after) =>
      inTurn(async () => {
        if (after !== null && [...after].length < leastLetters)
          return bad(problem('passphrase-short', 'after', { least: leastLetters }));
        if (kept(id)) {
          const right = await tried(id, before ?? '', 'before');
          if (!right.ok) return right;
        } else if (after === null) return bad(problem('no-passphrase', 'person'));
        const others = settings.people.filter((one) => one.person !== id);
        const wasFirst = settings.people.length === 0;
        const people = after === null ? others : [...others, { person: id, name, passphrase: await hashOf(after) }];
        const done = change({ people });
        if (!done.ok) return done;
        if (wasFirst) person = id;
        if (people.length === 0) person = null;
        open = true;
        return done;
      }),
    as: () => person,
    mayWriteAs: (id) => id === person || !kept(id),
  };
}
