/** The window's own lock: when it comes down by itself, what it waits for, whom it tells, and what opens it. Clock and waiting are the test's own. */
import { expect, test } from 'vitest';
import { problem } from '../../app/core/result.ts';
import type { Daybook } from '../../app/daybook/book.svelte.ts';
import { SessionLock } from '../../app/daybook/session-lock.svelte.ts';

/** A daybook as far as the lock asks it: open or not, with its passphrases and its idle time; what it was told stands in `told`. */
function around({ people = ['keeper'], idleMinutes = 10 as number | null, open = true } = {}) {
  const told: string[] = [];
  const daybook = {
    open: open ? {} : null,
    locked: false,
    state: { lock: { people, idleMinutes } },
    lock: async () => {
      told.push('lock');
      daybook.locked = true;
    },
    unlock: async (person: string, passphrase: string) => {
      told.push(`unlock ${person}`);
      if (passphrase !== 'right words') return [problem('wrong-passphrase', 'passphrase')];
      daybook.locked = false;
      return [];
    },
  };
  let now = 0;
  const waits: number[] = [];
  const lock = new SessionLock(
    daybook as unknown as Daybook,
    () => now,
    async (ms) => {
      // whatever is told before the drafts are safe is told too early
      told.push(`waited, covered ${lock.shown}`);
      waits.push(ms);
    },
  );
  return { daybook, told, waits, lock, later: (minutes: number) => (now += minutes * 60_000) };
}

test('it comes down after the idle time and not before, and every touch begins it anew', async () => {
  const { lock, later } = around({ people: [] });
  later(9.9);
  lock.look();
  expect(lock.locked).toBe(false);
  lock.touch();
  later(9.9);
  lock.look();
  expect(lock.locked).toBe(false);
  later(0.1);
  lock.look();
  expect(lock.locked).toBe(true);
});

test('without an idle time, or with no daybook open, it never comes down by itself', () => {
  for (const { lock, later } of [around({ idleMinutes: null }), around({ open: false })]) {
    later(100_000);
    lock.look();
    expect([lock.shown, lock.locked]).toEqual([false, false]);
  }
});

test('where somebody has a passphrase the page is covered first, drafts have time to be saved, and then the host is told', async () => {
  const { lock, told, waits } = around();
  await lock.lock();
  expect(told).toEqual(['waited, covered true', 'lock']);
  expect(waits[0]).toBeGreaterThan(300);
  // a key pressed on the cover opens nothing
  lock.goOn();
  expect([lock.locked, lock.shown]).toEqual([true, true]);
});

test('where nobody has one it only covers the page, and going on uncovers it with the idle time begun anew', async () => {
  const { lock, told, later } = around({ people: [] });
  later(11);
  lock.look();
  expect([lock.locked, told]).toEqual([true, []]);
  lock.goOn();
  lock.look();
  expect(lock.locked).toBe(false);
});

test('a wrong passphrase and none at all are told and leave it closed; the right one opens it', async () => {
  const { lock, told, later } = around();
  await lock.lock();
  expect(await lock.open('', 'right words')).toBe(false);
  expect([lock.problems.map((p) => p.code), told.includes('unlock ')]).toEqual([['no-passphrase'], false]);
  expect(await lock.open('keeper', 'wrong')).toBe(false);
  expect([lock.locked, lock.problems.map((p) => p.code)]).toEqual([true, ['wrong-passphrase']]);
  later(60);
  expect(await lock.open('keeper', 'right words')).toBe(true);
  lock.look();
  expect([lock.locked, lock.problems, lock.looking]).toEqual([false, [], false]);
});

test('a second passphrase is not looked at while the first is', async () => {
  const { lock, told } = around();
  await lock.lock();
  const [first, second] = await Promise.all([lock.open('keeper', 'right words'), lock.open('keeper', 'wrong')]);
  expect([first, second]).toEqual([true, false]);
  expect(told.filter((one) => one.startsWith('unlock'))).toHaveLength(1);
});
