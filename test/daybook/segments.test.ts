/** What this window has seen of the record: every entry is counted, drafts are never touched, and a record that fell behind is told. */
import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import { Dexie } from 'dexie';
import { afterEach, describe, expect, test } from 'vitest';
import type { Entry } from '../../app/core/entry.ts';
import { Daybook } from '../../app/daybook/book.svelte.ts';
import { openStore } from '../../app/daybook/drafts.ts';
import { byDesk, firstsOf, forEverybody, lineOf, packed, segmentSize, tellable, unpacked } from '../../app/daybook/segments.ts';
import { recordOlder } from '../../app/words/record-older.ts';
import { readJournal } from '../../main/host/journal.ts';
import { lineFor } from '../../main/host/line.ts';
import { note, now } from '../host/drafts.ts';
import { bookId, clock, testHost } from './house.ts';

/** Entries as a desk's journal has them, chained by the program. `words` makes another desk's or another history's. */
function chain(count: number, desk = 'desk-of-a-test', words = 'Note', before: readonly Entry[] = []): Entry[] {
  const made = [...before];
  for (let n = made.length + 1; n <= count; n++)
    made.push(lineFor(note(n, `${words} ${n}`), { desk, n, prev: made.at(-1)?.hash ?? '0'.repeat(64) }, now).entry);
  return made;
}

/** A host whose disk holds just these entries. */
function hostWith(entries: readonly Entry[]) {
  const host = testHost();
  host.lines.push(...entries);
  return host;
}

const open: Daybook[] = [];
const idle = async () => {};

/** A window on that host, with everything it wanted to store stored. */
async function windowOn(host: ReturnType<typeof testHost>, locks?: LockManager): Promise<Daybook> {
  const daybook = new Daybook({ host, clock, idle, locks });
  open.push(daybook);
  await daybook.start();
  await daybook.seen?.settle();
  return daybook;
}

/** What lies in the store: entries by desk, drafts, segments. */
async function stored() {
  const store = await openStore(bookId);
  if (!store.ok) throw new Error('not opened');
  const entries = new Map<string, number>();
  const keys = await store.value.segmentKeys();
  for (const [desk, first] of keys) {
    const lines = unpacked(await store.value.segment(desk, first));
    if (lines) entries.set(desk, (entries.get(desk) ?? 0) + lines.length);
  }
  const drafts = await store.value.drafts();
  store.value.close();
  return { entries: Object.fromEntries(entries), drafts: drafts.length, segments: keys.length };
}

/** Changes what is stored behind the window’s back. */
async function meddle(how: (raw: Dexie) => Promise<unknown>): Promise<void> {
  const raw = await new Dexie(`retort-daybook-${bookId}`).open();
  await how(raw);
  raw.close();
}

const draft = { form: 'scale', touched: now, content: { values: { label: 'Bench' } } };

function shut(daybook: Daybook): void {
  daybook.seen?.leave();
  daybook.store.close();
}

afterEach(async () => {
  for (const daybook of open.splice(0)) shut(daybook);
  await new Promise((resolve) => {
    indexedDB.deleteDatabase(`retort-daybook-${bookId}`).onsuccess = resolve;
  });
});

describe('a segment', () => {
  test('holds a thousand lines, and its lines are those of the journal to the byte', () => {
    const entries = chain(2_300);
    expect(firstsOf(entries.length)).toEqual([1, 1_001, 2_001]);
    const rows = firstsOf(entries.length).map((first) => packed('desk-of-a-test', entries, first));
    expect(rows.map((row) => unpacked(row)?.length)).toEqual([segmentSize, segmentSize, 300]);
    const journal = readJournal(Buffer.from(rows.map((row) => row.text).join('')), 'desk-of-a-test');
    expect([journal.entries.length, journal.fault, journal.endMark]).toEqual([2_300, undefined, rows.at(-1)?.end]);
  });

  test('gives every golden line back to the byte, in whatever order its members came', () => {
    const golden = readFileSync(new URL('../golden/desk-golden.jsonl', import.meta.url), 'utf8')
      .trimEnd()
      .split('\n');
    expect(golden.length).toBeGreaterThan(10);
    for (const line of golden) {
      const members = Object.entries(JSON.parse(line) as Record<string, unknown>).reverse();
      expect(lineOf(Object.fromEntries(members) as unknown as Entry)).toBe(line);
    }
  });

  test('that was cut, mixed up or changed in its chain is not taken', () => {
    const row = packed('desk-of-a-test', chain(5), 1);
    const lines = row.text.split('\n');
    for (const text of [
      row.text.slice(0, -1),
      row.text.slice(0, row.text.length / 2),
      `${lines.slice(1).join('\n')}`,
      `${[lines[1], lines[0], ...lines.slice(2)].join('\n')}`,
      `${lines.slice(0, 4).join('\n')}\n`,
      '',
      'nothing of ours\n',
    ])
      expect(unpacked({ ...row, text })).toBeNull();
    for (const other of [null, 7, {}, { ...row, end: '0' }, { ...row, desk: 'desk-other' }, { ...row, first: 2 }])
      expect(unpacked(other)).toBeNull();
  });

  test('of several desks are packed apart, and what does not follow on without a gap is left out', () => {
    const [one, two] = [chain(3, 'desk-one'), chain(2, 'desk-two')];
    const desks = byDesk([two[1]!, one[0]!, one[2]!, two[0]!]);
    expect([...desks].map(([desk, list]) => [desk, list.map((e) => e.n)])).toEqual([
      ['desk-two', [1, 2]],
      ['desk-one', [1]],
    ]);
  });
});

describe('the index of a window', () => {
  test('is absent: it is packed from the record, desk by desk, after the book is shown', async () => {
    const daybook = await windowOn(hostWith([...chain(1_205), ...chain(7, 'desk-two')]));
    expect([daybook.ready, daybook.entries.length, daybook.seen?.missing]).toEqual([true, 1_212, []]);
    expect(await stored()).toEqual({ entries: { 'desk-of-a-test': 1_205, 'desk-two': 7 }, drafts: 0, segments: 3 });
  });

  test('waits for an idle window: the book is there before anything of it is stored', async () => {
    const gate: { open: () => void } = { open: () => {} };
    const waiting = new Promise<void>((resolve) => {
      gate.open = resolve;
    });
    const daybook = new Daybook({ host: hostWith(chain(20)), clock, idle: () => waiting });
    open.push(daybook);
    await daybook.start();
    expect([daybook.ready, daybook.entries.length]).toEqual([true, 20]);
    expect((await stored()).segments).toBe(0);
    gate.open();
    await daybook.seen?.settle();
    expect((await stored()).entries).toEqual({ 'desk-of-a-test': 20 });
  });

  test('holds an entry kept in this window, and nothing of one that was refused', async () => {
    const daybook = await windowOn(hostWith(chain(3)));
    expect((await daybook.keep(note(4))).ok).toBe(true);
    await daybook.seen?.settle();
    // the small host of this test chains with marks of its own: the count of stored end marks tells
    const store = await openStore(bookId);
    const row = store.ok ? ((await store.value.segment('desk-of-a-test', 1)) as { text: string; end: string }) : null;
    if (store.ok) store.value.close();
    expect([row?.text.split('\n').length, row?.end]).toEqual([5, daybook.entries.at(-1)?.hash]);
  });

  test('is behind: what is missing is added', async () => {
    shut(await windowOn(hostWith(chain(990))));
    const daybook = await windowOn(hostWith(chain(2_010)));
    expect(daybook.seen?.missing).toEqual([]);
    expect(await stored()).toEqual({ entries: { 'desk-of-a-test': 2_010 }, drafts: 0, segments: 3 });
  });

  test.each<[string, (raw: Dexie) => Promise<unknown>]>([
    ['a row cut short', (raw) => raw.table('segments').update(['desk-of-a-test', 1], { text: '{"n":1}' })],
    ['rows that are something else', (raw) => raw.table('segments').put({ desk: 'desk-of-a-test', first: 1, text: 5 })],
    [
      'a row at a number where none begins',
      (raw) => raw.table('segments').put({ desk: 'desk-of-a-test', first: 500, end: '', text: '' }),
    ],
    ['its first segment gone', (raw) => raw.table('segments').delete(['desk-of-a-test', 1])],
    ['all of it deleted', (raw) => raw.table('segments').clear()],
  ])('is damaged (%s): it is packed anew, every entry is in it and the draft stays', async (_, damage) => {
    const first = await windowOn(hostWith(chain(1_500)));
    await first.store.saveDraft(draft);
    shut(first);
    await meddle(damage);
    const daybook = await windowOn(hostWith(chain(1_500)));
    expect([daybook.entries.length, daybook.seen?.missing, (await daybook.store.draft('scale'))?.content]).toEqual([
      1_500,
      [],
      draft.content,
    ]);
    expect(await stored()).toEqual({ entries: { 'desk-of-a-test': 1_500 }, drafts: 1, segments: 2 });
  });

  test('cannot be read or written: the record is shown and kept in all the same', async () => {
    const failing = async () => {
      throw new Error('the store fails');
    };
    const daybook = new Daybook({
      host: hostWith(chain(3)),
      clock,
      idle,
      openStore: async (name) => {
        const store = await openStore(name);
        return store.ok
          ? { ok: true, value: { ...store.value, segmentKeys: failing, segment: failing, saveSegment: failing } }
          : store;
      },
    });
    open.push(daybook);
    await daybook.start();
    await daybook.seen?.settle();
    expect([daybook.entries.length, daybook.seen?.missing]).toEqual([3, []]);
    expect((await daybook.keep(note(4))).ok).toBe(true);
    expect(daybook.entries.length).toBe(4);
  });

  test('of a store without segments is made beside the drafts that were there', async () => {
    const old = new Dexie(`retort-daybook-${bookId}`);
    old.version(1).stores({ drafts: 'form', settings: 'key' });
    await old.table('settings').put({ key: 'store-format', value: 1 });
    await old.table('drafts').put(draft);
    old.close();
    await windowOn(hostWith(chain(4)));
    expect(await stored()).toEqual({ entries: { 'desk-of-a-test': 4 }, drafts: 1, segments: 1 });
  });

  test('of a newer store is not touched, and the window says so', async () => {
    shut(await windowOn(hostWith(chain(5))));
    await meddle((raw) => raw.table('settings').put({ key: 'store-format', value: 99 }));
    const daybook = await windowOn(hostWith(chain(9)));
    expect([daybook.entries.length, daybook.seen, daybook.storeProblem?.code]).toEqual([9, null, 'store-newer']);
    await meddle(async (raw) => {
      const [row] = await raw.table('segments').toArray();
      expect(unpacked(row)?.length).toBe(5);
    });
  });

  test('is not written by a window that only reads', async () => {
    const locks = {
      request: async (_: string, { ifAvailable }: LockOptions, work: (lock: null) => unknown) =>
        ifAvailable ? work(null) : new Promise(() => {}),
    } as unknown as LockManager;
    const daybook = await windowOn(hostWith(chain(5)), locks);
    await daybook.seen?.settle();
    expect([daybook.elsewhere, (await stored()).segments]).toEqual([true, 0]);
  });
});

/** Two notes, a bar put in a place, that entry corrected and the correction struck, and a last note. Invented. */
function withPlaces(): Entry[] {
  const bar = (place: string) => ({ bar: 'melt-one/2', place, seal: 'S 12', present: ['person-one'] });
  const bodies: readonly [kind: string, body: Record<string, unknown>][] = [
    ['bar-kept', bar('the strong box')],
    ['correction', { corrects: 'entry-3', body: bar('the strong room'), reason: 'a slip' }],
    ['strike', { strikes: 'entry-4', reason: 'the strong box after all' }],
  ];
  const made = chain(2);
  for (const [kind, body] of bodies) {
    const n = made.length + 1;
    const draft = { ...note(n, ''), id: `entry-${n}`, kind, body };
    made.push(lineFor(draft as never, { desk: 'desk-of-a-test', n, prev: made.at(-1)!.hash }, now).entry);
  }
  return chain(6, 'desk-of-a-test', 'Note', made);
}

/** All that lies in the segments, as text. */
async function storedText(): Promise<string> {
  let text = '';
  await meddle(async (raw) => {
    text = JSON.stringify(await raw.table('segments').toArray());
  });
  return text;
}

describe('what is not for everybody', () => {
  test('is not stored by a window that may see it: its lines keep number and hash alone', async () => {
    const daybook = await windowOn(hostWith(withPlaces()));
    expect(JSON.stringify(daybook.entries)).toContain('strong box');
    expect(await stored()).toMatchObject({ entries: { 'desk-of-a-test': 6 } });
    const text = await storedText();
    expect(text).toContain('Note 6');
    expect(text).not.toContain('strong');
  });

  test('is counted and never handed out where the record on disk lacks it', async () => {
    shut(await windowOn(hostWith(withPlaces())));
    const [missing] = (await windowOn(hostWith(withPlaces().slice(0, 2)))).seen?.missing ?? [];
    expect(missing?.lines.map(({ n, withheld }) => [n, withheld])).toEqual([
      [3, true],
      [4, true],
      [5, true],
      [6, false],
    ]);
    expect(tellable(missing!.lines).map(({ line }) => line)).toEqual([lineOf(withPlaces()[5]!)]);
    const said = { desk: 'desk-of-a-test', count: 4, from: 3, lastWritten: now, differs: false, withheld: 3 };
    expect(recordOlder.withheldSays(said)).toContain('3 entries of these tell what is not for everybody');
    expect(recordOlder.save(said)).toBe('Save the other 1 entry as a file');
    expect(recordOlder.saved('a.jsonl', said)).toContain('its numbers have gaps');
    expect(recordOlder.saved('a.jsonl', { withheld: 0 })).not.toContain('gaps');
  });

  test('is the same in the store whoever unlocked: lines that came without their body are counted, not handed out', async () => {
    shut(await windowOn(hostWith(forEverybody(withPlaces()))));
    const text = await storedText();
    const [missing] = (await windowOn(hostWith(withPlaces().slice(0, 2)))).seen?.missing ?? [];
    expect(tellable(missing?.lines ?? []).map(({ n }) => n)).toEqual([6]);
    shut(open.pop()!);
    await meddle((raw) => raw.table('segments').clear());
    shut(await windowOn(hostWith(withPlaces())));
    expect(await storedText()).toBe(text);
  });

  test('goes from a segment stored before a correction made it so', async () => {
    const air = (n: number, kind: string, body: Record<string, unknown>, prev: string) =>
      lineFor({ ...note(n, ''), id: `entry-${n}`, kind, body } as never, { desk: 'desk-of-a-test', n, prev }, now).entry;
    const first = air(1, 'air-reading', { sample: 'area', note: 'beside the retort' }, '0'.repeat(64));
    const full = chain(segmentSize, 'desk-of-a-test', 'Note', [first]);
    shut(await windowOn(hostWith(full)));
    expect(await storedText()).toContain('beside the retort');
    const body = { corrects: 'entry-1', body: { sample: 'personal' }, reason: 'worn by somebody' };
    shut(await windowOn(hostWith([...full, air(segmentSize + 1, 'correction', body, full.at(-1)!.hash)])));
    expect(await storedText()).not.toContain('beside the retort');
    expect((await stored()).entries).toEqual({ 'desk-of-a-test': segmentSize + 1 });
  });

  test('goes with the segments of an older store, and the draft stays', async () => {
    const old = new Dexie(`retort-daybook-${bookId}`);
    old.version(1).stores({ drafts: 'form', settings: 'key' });
    old.version(2).stores({ drafts: 'form', settings: 'key', segments: '[desk+first]' });
    await old.table('settings').put({ key: 'store-format', value: 2 });
    await old.table('drafts').put(draft);
    await old.table('segments').put(packed('desk-of-a-test', withPlaces(), 1));
    old.close();
    expect(await storedText()).toContain('strong box');
    const store = await openStore(bookId);
    if (store.ok) store.value.close();
    expect(await stored()).toEqual({ entries: {}, drafts: 1, segments: 0 });
    await windowOn(hostWith(withPlaces()));
    expect(await storedText()).not.toContain('strong');
  });
});

describe('a record on disk that is older than what the window has seen', () => {
  test('is told with desk, number and last day; nothing of it is overwritten, and the lines complete the journal', async () => {
    const all = chain(1_250);
    shut(await windowOn(hostWith([...all, ...chain(3, 'desk-two')])));
    const old = all.slice(0, 1_240);
    const daybook = await windowOn(hostWith([...old, ...chain(3, 'desk-two')]));
    const missing = daybook.seen?.missing ?? [];
    expect(missing.map(({ desk, lines, differs }) => [desk, lines.length, lines[0]?.n, differs])).toEqual([
      ['desk-of-a-test', 10, 1_241, false],
    ]);
    const said = recordOlder.says({
      desk: 'desk-of-a-test',
      count: 10,
      from: 1_241,
      lastWritten: now,
      differs: false,
      withheld: 0,
    });
    expect(said).toContain('10 entries of desk desk-of-a-test, from number 1241, last written 2026-03-14 at 09:30');
    const file = missing[0]!.lines.map(({ line }) => `${line}\n`).join('');
    const disk = old.map((entry) => `${lineOf(entry)}\n`).join('');
    expect(readJournal(Buffer.from(disk + file), 'desk-of-a-test').entries).toHaveLength(1_250);
    expect((await stored()).entries).toEqual({ 'desk-of-a-test': 1_250, 'desk-two': 3 });
    // and again at the next start, until somebody says what counts
    shut(daybook);
    expect((await windowOn(hostWith(old))).seen?.missing.map((m) => [m.desk, m.lines.length])).toEqual([
      ['desk-of-a-test', 10],
      ['desk-two', 3],
    ]);
  });

  test('whose next entry is another one is told as different from that number on', async () => {
    shut(await windowOn(hostWith(chain(12))));
    const daybook = await windowOn(hostWith(chain(15, 'desk-of-a-test', 'Other', chain(10))));
    expect(daybook.seen?.missing.map(({ lines, differs }) => [lines.map((l) => l.n), differs])).toEqual([[[11, 12], true]]);
    await daybook.keep(note(16));
    await daybook.seen?.settle();
    expect((await stored()).entries).toEqual({ 'desk-of-a-test': 12 });
  });

  test('counts once a person says so: the index is packed anew from it, and the draft stays', async () => {
    const first = await windowOn(hostWith(chain(12)));
    await first.store.saveDraft(draft);
    shut(first);
    const daybook = await windowOn(hostWith(chain(10)));
    expect(daybook.seen?.missing[0]?.lines.length).toBe(2);
    await daybook.seen?.goByDisk();
    expect(daybook.seen?.missing).toEqual([]);
    expect(await stored()).toEqual({ entries: { 'desk-of-a-test': 10 }, drafts: 1, segments: 1 });
  });

  test('is no longer told once the newer copy is back', async () => {
    shut(await windowOn(hostWith(chain(12))));
    const host = hostWith(chain(10));
    const daybook = await windowOn(host);
    expect(daybook.seen?.missing[0]?.lines.length).toBe(2);
    host.lines.push(...chain(12).slice(10));
    await daybook.reload();
    await daybook.seen?.settle();
    expect([daybook.seen?.missing, daybook.entries.length]).toEqual([[], 12]);
  });

  test('is not told where another window has kept something meanwhile: the record is asked again first', async () => {
    shut(await windowOn(hostWith(chain(12))));
    const host = hostWith(chain(12));
    let asked = 0;
    const behind = {
      ...host,
      ask: async (question: never, body: never) => {
        const answer = await host.ask(question, body);
        if (question !== 'entries' || ++asked > 1 || !answer.ok) return answer;
        const text = new TextDecoder()
          .decode(answer.value as unknown as Uint8Array)
          .split('\n')
          .slice(0, 10);
        return { ok: true, value: new TextEncoder().encode(`${text.join('\n')}\n`) };
      },
    } as unknown as typeof host;
    const daybook = await windowOn(behind);
    expect([asked, daybook.seen?.missing, daybook.entries.length]).toEqual([2, [], 12]);
  });
});
