import 'fake-indexeddb/auto';
import { afterEach, describe, expect, test } from 'vitest';
import { bad, problem } from '../../app/core/result.ts';
import { Daybook } from '../../app/daybook/book.svelte.ts';
import { openStore } from '../../app/daybook/drafts.ts';
import { bookId, clock, draftOf, keeper, testHost } from './house.ts';

const open: Daybook[] = [];

afterEach(async () => {
  for (const daybook of open.splice(0)) daybook.store.close();
  await new Promise((resolve) => {
    indexedDB.deleteDatabase(`retort-daybook-${bookId}`).onsuccess = resolve;
  });
});

async function begun(host = testHost(), locks?: LockManager) {
  const daybook = new Daybook({ host, clock, locks });
  open.push(daybook);
  await daybook.start();
  return daybook;
}

const goodScale = draftOf('scale-of-test', 'scale', { label: 'Bench', maximum: '3 kg', d: '0.01 g' });

describe('the open daybook', () => {
  test('its entries are read and folded into the book', async () => {
    const daybook = await begun(testHost([keeper, goodScale]));
    expect(daybook.ready).toBe(true);
    expect(daybook.entries.map((e) => e.n)).toEqual([1, 2]);
    expect([...daybook.book.registers.scale.keys()]).toEqual(['scale-of-test']);
    expect(daybook.people).toEqual([{ id: 'person-keeper', name: 'Keeper' }]);
  });

  test('a draft that is not right writes nothing and asks the host nothing', async () => {
    const host = testHost([keeper]);
    const daybook = await begun(host);
    const asked = host.asked.length;
    const answer = await daybook.keep(draftOf('scale-of-test', 'scale', { label: 'Bench', maximum: '3', d: '1 oz' }));
    expect(answer.ok).toBe(false);
    expect(answer.ok ? [] : answer.problems.map((p) => [p.code, p.field])).toEqual([
      ['mass-no-unit', 'body.maximum'],
      ['mass-bare-ounce', 'body.d'],
    ]);
    expect(host.asked.length).toBe(asked);
    expect(host.lines.length).toBe(1);
    expect(daybook.entries.length).toBe(1);
  });

  test('what the book’s rules refuse writes nothing either', async () => {
    const host = testHost([keeper]);
    const daybook = await begun(host);
    const answer = await daybook.keep(
      draftOf('scale-of-test', 'scale', { of: 'no-such-scale', label: 'Bench', maximum: '3 kg', d: '1 g' }),
    );
    expect(answer.ok ? [] : answer.problems.map((p) => [p.code, p.field])).toEqual([['unknown-id', 'body.of']]);
    expect(host.lines.length).toBe(1);
  });

  test('an entry is in the book only after the host has answered', async () => {
    const host = testHost([keeper]);
    const daybook = await begun(host);
    const keeping = daybook.keep(goodScale);
    expect(daybook.entries.length).toBe(1);
    expect(daybook.lastKept).toBeNull();
    const answer = await keeping;
    expect(answer.ok && answer.value.entry.n).toBe(2);
    expect(daybook.entries.length).toBe(2);
    expect(daybook.book.registers.scale.has('scale-of-test')).toBe(true);
    expect(daybook.lastKept?.endMark).toBe(daybook.open?.desks[0]?.endMark);
  });

  test('a host that falls silent keeps nothing in the window, and asking again keeps once', async () => {
    const host = testHost([keeper]);
    const daybook = await begun(host);
    host.silent = true;
    const first = await daybook.keep(goodScale);
    expect(first.ok ? '' : first.problems[0]?.code).toBe('host-silent');
    expect(daybook.entries.length).toBe(1);
    host.silent = false;
    await daybook.keep(goodScale);
    await daybook.keep(goodScale);
    expect(host.lines.length).toBe(2);
    expect(daybook.entries.length).toBe(2);
  });

  test('a daybook opened for reading keeps nothing', async () => {
    const host = testHost([keeper], false);
    const daybook = await begun(host);
    const answer = await daybook.keep(goodScale);
    expect(answer.ok ? '' : answer.problems[0]?.code).toBe('reading-only');
    expect(host.lines.length).toBe(1);
  });

  test('a host that falls silent while the entries are read can be asked again', async () => {
    const host = testHost([keeper]);
    const ask = host.ask;
    let silent = true;
    const daybook = new Daybook({
      host: {
        ask: async (question, body) => (question === 'entries' && silent ? bad(problem('host-silent', '')) : ask(question, body)),
      },
      clock,
    });
    open.push(daybook);
    await daybook.start();
    expect([daybook.ready, daybook.problems.map((p) => p.code)]).toEqual([false, ['host-silent']]);
    silent = false;
    await daybook.start();
    expect([daybook.ready, daybook.problems, daybook.entries.length]).toEqual([true, [], 1]);
  });

  test('who is writing is remembered for this daybook', async () => {
    const host = testHost([keeper]);
    const first = await begun(host);
    await first.write('person-keeper');
    first.store.close();
    const second = await begun(host);
    expect(second.writer).toBe('person-keeper');
  });

  test('a store of a newer program leaves the record usable and is told', async () => {
    const store = await openStore(bookId);
    if (!store.ok) throw new Error('the store opens');
    await store.value.saveSetting('store-format', 99);
    store.value.close();
    const host = testHost([keeper]);
    const daybook = await begun(host);
    expect(daybook.storeProblem?.code).toBe('store-newer');
    expect((await daybook.keep(goodScale)).ok).toBe(true);
  });
});

/** The browser's locks, in memory: one holder for each name, the others wait their turn. */
function testLocks(): LockManager {
  const held = new Map<string, Promise<unknown>>();
  const request = async (name: string, options: LockOptions, work: (lock: Lock | null) => unknown) => {
    if (options.ifAvailable && held.has(name)) return work(null);
    while (held.has(name)) await held.get(name);
    const done = Promise.resolve(work({ name, mode: 'exclusive' }));
    const gone = done.finally(() => held.delete(name));
    held.set(name, gone);
    return gone;
  };
  return { request, query: async () => ({}) } as unknown as LockManager;
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 20));

describe('two windows on one daybook', () => {
  test('the second only reads, and takes over with what the first kept once it has gone', async () => {
    const locks = testLocks();
    const host = testHost([keeper]);
    const first = await begun(host, locks);
    const second = await begun(host, locks);
    await settled();
    expect([first.readingOnly, second.readingOnly]).toEqual([false, true]);
    expect((await second.keep(goodScale)).ok).toBe(false);
    expect((await first.keep(goodScale)).ok).toBe(true);
    expect(second.entries.length).toBe(1);
    // the first window is closed: its daybook is left
    const other = {
      ...host,
      ask: async () => ({ ok: true as const, value: { version: '0', recents: [], newIn: '', now: clock.now(), book: null } }),
    };
    Object.assign(first, { host: other });
    await first.close();
    await settled();
    expect(second.readingOnly).toBe(false);
    expect(second.entries.length).toBe(2);
  });

  test('a window that the host does not answer gives up the right to write, and asks for it again when the host is back', async () => {
    const locks = testLocks();
    const host = testHost([keeper]);
    const first = await begun(host, locks);
    const second = await begun(testHost([keeper]), locks);
    await settled();
    expect([first.elsewhere, second.elsewhere]).toEqual([false, true]);
    host.silent = true;
    await first.look();
    await settled();
    expect([first.reach, second.elsewhere]).toEqual(['silent', false]);
    host.silent = false;
    await first.look();
    await settled();
    expect([first.reach, first.elsewhere, second.elsewhere]).toEqual(['there', true, false]);
  });

  test('a window that a host started anew lets in no more gives up the right to write for good', async () => {
    const locks = testLocks();
    const host = testHost([keeper]);
    const first = await begun(host, locks);
    host.shut = true;
    expect((await first.keep(goodScale)).ok).toBe(false);
    expect([first.reach, first.readingOnly]).toEqual(['shut', true]);
    host.shut = false;
    const second = await begun(host, locks);
    await first.look();
    await settled();
    expect([first.reach, second.readingOnly]).toEqual(['shut', false]);
    expect((await second.keep(goodScale)).ok).toBe(true);
  });
});
