/**
 * One window writes a daybook at a time. The browser's own locks tell: the first window holds the lock while it is open; a second one is told that
 * it may only read, and is told again when the first has gone.
 */

export interface Writing {
  /** Lets the lock go. */
  readonly release: () => void;
}

/**
 * Asks for the right to write. `heard` is called with false when another window holds it, and with true once it is ours (at once, or later).
 * A browser without locks counts as the only window.
 */
export function onlyWriter(locks: LockManager | undefined, id: string, heard: (ours: boolean) => void): Writing {
  if (!locks) {
    heard(true);
    return { release: () => {} };
  }
  const name = `retort-daybook-${id}`;
  const end = new AbortController();
  let letGo: () => void = () => {};
  const hold = () =>
    new Promise<void>((resolve) => {
      letGo = resolve;
      if (end.signal.aborted) resolve();
      else heard(true);
    });
  const wait = () => locks.request(name, { signal: end.signal }, hold);
  locks
    .request(name, { ifAvailable: true }, (lock) => {
      if (lock) return hold();
      heard(false);
      void wait().catch(() => {});
      return undefined;
    })
    .catch(() => {
      if (!end.signal.aborted) heard(true);
    });
  return {
    release: () => {
      end.abort();
      letGo();
    },
  };
}
