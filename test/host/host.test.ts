/** The host keeps what the window hands it, once and only after checking, and says what it cannot do without telling more than it should. */
import { appendFileSync, existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { mostEvidenceBytes, mostQuestionBytes, openBook, questions, state } from '../../app/contract.ts';
import { read } from '../../app/core/read.ts';
import type { z } from '../../app/core/zod.ts';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { appendEntry, journalPath } from '../../main/host/journal-writer.ts';
import { aHost, bookIn, codesIn, origin } from './a-host.ts';
import { keeper, note, now } from './drafts.ts';

const png = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1, 2, 3]);
const octets = { 'content-type': 'application/octet-stream' };

describe('opening', () => {
  it('makes a daybook by name in the documents folder, and answers the state the contract describes', async () => {
    const { ask, options } = aHost();
    const before = await ask('state');
    expect(before).toMatchObject({
      ok: true,
      value: { book: null, recents: [], now, newIn: options.documents, version: '0.1.0' },
    });
    const opened = await ask('open', { make: 'Upper battery' });
    expect(read(state as z.ZodType<unknown>, opened.ok && opened.value).ok).toBe(true);
    expect(bookIn(opened)).toMatchObject({
      name: 'Upper battery',
      folder: join(options.documents, 'Upper battery'),
      writable: true,
      notices: [],
    });
    expect(existsSync(join(options.documents, 'Upper battery', 'daybook.json'))).toBe(true);
  });

  it('makes none where one of that name lies', async () => {
    const { ask } = aHost();
    await ask('open', { make: 'Upper battery' });
    expect(await ask('open', { make: 'Upper battery' })).toMatchObject({
      ok: false,
      problems: [{ code: 'folder-not-empty', field: 'make' }],
    });
    expect(bookIn(await ask('state')).name).toBe('Upper battery');
  });

  it('opens a recent one by its key, never by a path', async () => {
    const { ask } = aHost();
    const folder = bookIn(await ask('open', { make: 'First' })).folder;
    await ask('open', { make: 'Second' });
    const listed = await ask('state');
    const recents = (listed.ok ? listed.value.recents : []) as { key: string; name: string }[];
    expect(recents.map((r) => r.name)).toEqual(['Second', 'First']);
    expect(bookIn(await ask('open', { recent: recents[1]!.key })).name).toBe('First');
    expect(codesIn(await ask('open', { recent: folder }))).toEqual(['unknown-recent']);
    expect(codesIn(await ask('open', { folder }))).not.toEqual([]);
    rmSync(folder, { recursive: true });
    expect(codesIn(await ask('open', { recent: recents[1]!.key }))).toEqual(['recent-missing']);
  });

  it('by folder works from outside the page, and says when there is no daybook', async () => {
    const { host, ask, options } = aHost();
    await ask('open', { make: 'First' });
    expect(await host.openFolder(options.home)).toMatchObject({ ok: false, problems: [{ code: 'not-a-daybook' }] });
    expect(bookIn(await ask('state'))).toMatchObject({ name: 'First', writable: true });
    const opened = await host.openFolder(join(options.documents, 'First'));
    expect(read(openBook as z.ZodType<unknown>, opened.ok && opened.value).ok).toBe(true);
  });

  it('of one that another window holds is for reading only, and names the process', async () => {
    const first = aHost();
    const { folder } = bookIn(await first.ask('open', { make: 'Shared' }));
    const second = aHost({ home: first.options.home });
    const opened = await second.host.openFolder(folder);
    expect(opened).toMatchObject({
      ok: true,
      value: { writable: false, notices: [{ code: 'elsewhere-open', detail: expect.stringContaining(`${process.pid} `) }] },
    });
    expect(await second.ask('keep', note(1))).toMatchObject({
      ok: false,
      problems: [{ code: 'elsewhere-open', data: { pid: process.pid } }],
    });
    await first.ask('close');
    expect(await second.host.openFolder(folder)).toMatchObject({ ok: true, value: { writable: true, notices: [] } });
  });

  it('of one with a broken chain is for reading only, and nothing on disk changes', async () => {
    const { ask, host } = aHost();
    const { folder, ownDesk } = bookIn(await ask('open', { make: 'Broken' }));
    for (let i = 1; i <= 3; i++) await ask('keep', note(i));
    await ask('close');
    const path = journalPath(folder, ownDesk);
    writeFileSync(path, readFileSync(path, 'utf8').replace('Note 2', 'Note 8'));
    const before = readFileSync(path);
    const opened = await host.openFolder(folder);
    expect(opened).toMatchObject({
      ok: true,
      value: { writable: false, notices: [{ code: 'broken-chain', desk: ownDesk, line: 2 }] },
    });
    expect(codesIn(await ask('keep', note(4)))).toEqual(['chain-broken']);
    expect(readFileSync(path)).toEqual(before);
  });

  it('of one with a newer format is for reading only', async () => {
    const { ask, host } = aHost();
    const { folder } = bookIn(await ask('open', { make: 'Newer' }));
    await ask('close');
    const path = join(folder, 'daybook.json');
    writeFileSync(path, JSON.stringify({ ...(JSON.parse(readFileSync(path, 'utf8')) as object), format: 7 }));
    expect(await host.openFolder(folder)).toMatchObject({
      ok: true,
      value: { writable: false, notices: [{ code: 'newer-format', detail: '7' }] },
    });
    expect(codesIn(await ask('keep', note(1)))).toEqual(['newer-format']);
  });

  it('of one with a torn tail of our own sets it aside, says so, and keeps on', async () => {
    const { ask, host } = aHost();
    const { folder, ownDesk } = bookIn(await ask('open', { make: 'Torn' }));
    await ask('keep', note(1));
    await ask('close');
    const path = journalPath(folder, ownDesk);
    // a line that was never answered as kept
    appendFileSync(path, '{"body":{"text":"Note');
    await host.openFolder(folder);
    const told = bookIn(await ask('state'));
    expect(told).toMatchObject({
      writable: true,
      notices: [{ code: 'torn-line', desk: ownDesk, line: 2 }],
      desks: [{ entries: 1 }],
    });
    expect(await ask('keep', note(3))).toMatchObject({ ok: true, value: { entry: { n: 2 }, desk: { entries: 2 } } });
  });
});

describe('keeping', () => {
  it('answers with the entry as it stands on disk, and its desk’s new end mark', async () => {
    const { ask } = aHost();
    const { folder, ownDesk } = bookIn(await ask('open', { make: 'Battery' }));
    const kept = await ask('keep', keeper);
    expect(read(questions.keep.reply as z.ZodType<unknown>, kept.ok && kept.value).ok).toBe(true);
    const onDisk = readDaybook(folder);
    if (!kept.ok || !onDisk.ok) throw new Error('not kept');
    expect(kept.value.entry).toEqual(onDisk.value.entries[0]);
    expect(kept.value.desk).toEqual({ desk: ownDesk, entries: 1, endMark: onDisk.value.desks[0]?.endMark });
    expect(bookIn(await ask('state')).desks).toEqual([kept.value.desk]);
  });

  it('a known id again answers with the entry kept first, and writes nothing', async () => {
    const { ask } = aHost();
    const { folder, ownDesk } = bookIn(await ask('open', { make: 'Battery' }));
    const first = await ask('keep', note(1));
    await ask('keep', note(2));
    const bytes = readFileSync(journalPath(folder, ownDesk));
    const again = await ask('keep', note(1, 'other words'));
    expect(again.ok && again.value.entry).toEqual(first.ok && first.value.entry);
    expect(readFileSync(journalPath(folder, ownDesk))).toEqual(bytes);
  });

  it('many at once, some twice, gives one unbroken chain with each of them once', async () => {
    const { ask } = aHost();
    const { folder } = bookIn(await ask('open', { make: 'Battery' }));
    const asked = Array.from({ length: 60 }, (_, i) => note(1 + (i % 40)));
    const answers = await Promise.all(asked.map((draft) => ask('keep', draft)));
    expect(answers.every((answer) => answer.ok)).toBe(true);
    const onDisk = readDaybook(folder);
    expect(onDisk).toMatchObject({ ok: true, value: { notices: [] } });
    expect(onDisk.ok && new Set(onDisk.value.entries.map((e) => e.id)).size).toBe(40);
    expect(onDisk.ok && onDisk.value.entries.length).toBe(40);
  });

  it('refuses what cannot be meant with every reason, and writes nothing', async () => {
    const { ask } = aHost();
    const { folder } = bookIn(await ask('open', { make: 'Battery' }));
    const { happened: _, ...undated } = note(1);
    expect(await ask('keep', undated)).toMatchObject({ ok: false, problems: [{ code: 'missing', field: 'happened' }] });
    expect(await ask('keep', { ...note(1), body: { text: 7 } })).toMatchObject({ ok: false, problems: [{ field: 'body.text' }] });
    expect(await ask('keep', { ...note(1), by: 'nobody-known', body: { text: 'x', about: 'no-entry-here' } })).toMatchObject({
      ok: false,
      problems: [{ field: 'by' }, { code: 'unknown-id', field: 'body.about' }],
    });
    expect(await ask('keep', { ...note(1), kind: 'moon-phase' })).toMatchObject({
      ok: false,
      problems: [{ code: 'unknown-kind' }],
    });
    expect(readdirSync(join(folder, 'desks'))).toEqual([]);
  });

  it('without an open daybook is a problem', async () => {
    expect(codesIn(await aHost().ask('keep', note(1)))).toEqual(['no-daybook-open']);
  });

  it('sees what another desk wrote meanwhile', async () => {
    const { ask, post } = aHost();
    const { folder } = bookIn(await ask('open', { make: 'Battery' }));
    await ask('keep', note(1));
    appendEntry(folder, 'desk-other', note(2), now);
    expect(await ask('keep', { ...note(3), body: { text: 'an answer', about: 'note-000002' } })).toMatchObject({ ok: true });
    const lines = (await (await post('/ask/entries', '{}')).text()).trim().split('\n');
    expect(lines.map((line) => (JSON.parse(line) as { id: string }).id).sort()).toEqual([
      'note-000001',
      'note-000002',
      'note-000003',
    ]);
  });

  it('stops when another desk’s journal turns out to be broken', async () => {
    const { ask } = aHost();
    const { folder } = bookIn(await ask('open', { make: 'Battery' }));
    writeFileSync(journalPath(folder, 'desk-other'), '{}\n');
    expect(codesIn(await ask('keep', note(1)))).toEqual(['chain-broken']);
    expect(bookIn(await ask('state'))).toMatchObject({
      writable: false,
      notices: [{ code: 'broken-chain', desk: 'desk-other' }],
    });
  });

  it('stops when its own journal was changed behind its back', async () => {
    const { ask } = aHost();
    const { folder, ownDesk } = bookIn(await ask('open', { make: 'Battery' }));
    await ask('keep', note(1));
    rmSync(journalPath(folder, ownDesk));
    expect((await ask('keep', note(2))).ok).toBe(false);
    expect(existsSync(journalPath(folder, ownDesk))).toBe(false);
  });
});

describe('the entries and papers', () => {
  it('come as one line of JSON each, as kept', async () => {
    const { ask, post } = aHost();
    await ask('open', { make: 'Battery' });
    const kept = [await ask('keep', keeper), await ask('keep', note(1))];
    const answer = await post('/ask/entries', '{}');
    expect(answer.headers.get('content-type')).toMatch(/^application\/jsonl/);
    const lines = (await answer.text()).split('\n');
    expect(lines.pop()).toBe('');
    expect(lines.map((line) => JSON.parse(line) as unknown)).toEqual(kept.map((k) => k.ok && k.value.entry));
  });

  it('a paper is made from all entries and comes as PDF bytes', async () => {
    const { ask, post } = aHost();
    await ask('open', { make: 'Battery' });
    await ask('keep', note(1));
    const answer = await post('/ask/paper', '{"name":"run-sheet","id":"charge-000001"}');
    expect(answer.headers.get('content-type')).toBe('application/pdf');
    expect(await answer.text()).toBe('%PDF-Battery run-sheet charge-000001 1 1');
  });
});

describe('evidence', () => {
  it('is kept under the hash of its bytes, handed out as it was, and may be named by an entry', async () => {
    const { ask, post, get } = aHost();
    const { folder } = bookIn(await ask('open', { make: 'Battery' }));
    const answer = (await (await post('/ask/evidence', png, octets)).json()) as { value: { file: string } };
    expect(answer.value.file).toMatch(/^[0-9a-f]{64}\.png$/);
    expect(readdirSync(join(folder, 'evidence'))).toEqual([answer.value.file]);
    const shown = await get(`/evidence/${answer.value.file}`);
    expect(shown.headers.get('content-type')).toBe('image/png');
    expect(Buffer.from(await shown.arrayBuffer())).toEqual(png);
    expect((await ask('keep', { ...note(1), evidence: [answer.value] })).ok).toBe(true);
    expect(await (await post('/ask/evidence', png, octets)).json()).toEqual({ ok: true, value: answer.value });
  });

  it.each([
    ['a page', Buffer.from('<html><script>x</script>')],
    ['a drawing that could run', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>')],
    ['nothing', Buffer.alloc(0)],
    ['half a signature', png.subarray(0, 7)],
  ])('is not %s, whatever its sender calls it', async (_, bytes) => {
    const { ask, post } = aHost();
    const { folder } = bookIn(await ask('open', { make: 'Battery' }));
    expect(codesIn((await (await post('/ask/evidence', bytes, octets)).json()) as { ok: boolean })).toEqual(['evidence-kind']);
    expect(readdirSync(join(folder, 'evidence'))).toEqual([]);
  });

  it('that was changed on disk is not handed out, and one that is not there cannot be named', async () => {
    const { ask, post, get } = aHost();
    const { folder } = bookIn(await ask('open', { make: 'Battery' }));
    const { value } = (await (await post('/ask/evidence', png, octets)).json()) as { value: { file: string } };
    writeFileSync(join(folder, 'evidence', value.file), 'changed');
    expect((await get(`/evidence/${value.file}`)).status).toBe(409);
    const none = `${'0'.repeat(64)}.png`;
    expect((await get(`/evidence/${none}`)).status).toBe(404);
    expect(await ask('keep', { ...note(1), evidence: [{ file: none }] })).toMatchObject({
      problems: [{ code: 'evidence-missing', field: 'evidence[0].file' }],
    });
  });

  it('larger than the limit is cut off', async () => {
    const { post } = aHost();
    const answer = await post('/ask/evidence', Buffer.concat([png, Buffer.alloc(mostEvidenceBytes)]), octets);
    expect([answer.status, codesIn((await answer.json()) as { ok: boolean })]).toEqual([413, ['body-too-large']]);
  });
});

describe('being asked', () => {
  it('serves the window’s own files and nothing else of its folder', async () => {
    const { get } = aHost();
    expect(await (await get('/')).text()).toContain('window');
    expect((await get('/assets/start.js')).headers.get('content-type')).toMatch(/^text\/javascript/);
    for (const path of [
      '/assets/secret.key',
      '/assets/',
      '/package.json',
      '/evidence/../daybook.json',
      '/assets/..%2findex.html',
      '/ask/state',
    ])
      expect([404, 405], path).toContain((await get(path)).status);
  });

  it('says so in plain words where the window is not built', async () => {
    const answer = await aHost({ windowFolder: null }).get('/');
    expect([answer.status, await answer.text()]).toEqual([503, expect.stringContaining('has not been built')]);
  });

  it('lets a page load only its own files, and shares nothing with other origins', async () => {
    const { get, post } = aHost();
    const window = (await get('/')).headers;
    expect(window.get('content-security-policy')).toMatch(
      /default-src 'none'; script-src 'self';.*require-trusted-types-for 'script'; trusted-types svelte-trusted-html$/,
    );
    expect(window.get('content-security-policy')).not.toMatch(/unsafe|\*|https?:/);
    for (const answer of [await get('/'), await get('/nowhere'), await post('/ask/state', '{}'), await post('/ask/none', '{}')]) {
      expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
      expect(answer.headers.get('referrer-policy')).toBe('no-referrer');
      expect(answer.headers.get('cache-control')).toBe('no-store');
      expect(answer.headers.get('cross-origin-opener-policy')).toBe('same-origin');
      expect(answer.headers.get('cross-origin-resource-policy')).toBe('same-origin');
      expect([...answer.headers.keys()].filter((name) => name.startsWith('access-control'))).toEqual([]);
    }
  });

  it.each([
    'http://127.0.0.1:4712',
    'http://localhost:4711',
    'https://127.0.0.1:4711',
    'null',
    `${origin}.example`,
    `${origin}/`,
    '',
  ])('refuses a question from the origin “%s”', async (other) => {
    const { post } = aHost();
    const answer = await post('/ask/open', '{"make":"Battery"}', { origin: other });
    expect([answer.status, codesIn((await answer.json()) as { ok: boolean })]).toEqual([403, ['foreign-origin']]);
  });

  it.each([
    ['malformed JSON', '{"make":', {}, 400, 'not-json'],
    ['bytes that are no text', Buffer.from([0x22, 0xff, 0x22]), {}, 400, 'not-json'],
    ['an empty body', '', {}, 400, 'not-json'],
    ['JSON under another type', '{}', { 'content-type': 'text/plain' }, 415, 'body-type'],
    ['a form', 'a=1', { 'content-type': 'application/x-www-form-urlencoded' }, 415, 'body-type'],
    ['more than the limit', `"${'x'.repeat(mostQuestionBytes)}"`, {}, 413, 'body-too-large'],
  ])('refuses %s', async (_, body, headers, status, code) => {
    const answer = await aHost().post('/ask/state', body, headers as Record<string, string>);
    expect([answer.status, codesIn((await answer.json()) as { ok: boolean })]).toEqual([status, [code]]);
  });

  it('stops reading at the limit, even where no length was announced', async () => {
    let sent = 0;
    const endless = new ReadableStream<Uint8Array>({
      pull: (stream) => {
        sent += 65_536;
        stream.enqueue(new Uint8Array(65_536).fill(0x20));
      },
    });
    const { host } = aHost();
    const request = new Request(`${origin}/ask/state`, {
      method: 'POST',
      body: endless,
      duplex: 'half',
      headers: { origin, 'content-type': 'application/json' },
    } as RequestInit);
    expect((await host.answer(request, origin)).status).toBe(413);
    expect(sent).toBeLessThan(mostQuestionBytes + 10 * 65_536);
  });

  it('knows no question that is not in the contract, not even one every object has', async () => {
    const { post } = aHost();
    for (const name of ['none', 'toString', '__proto__', 'constructor', 'state/', ''])
      expect((await post(`/ask/${name}`, '{}')).status, name).toBe(404);
    expect((await post('/', '{}')).status).toBe(405);
  });

  it.each(['PUT', 'DELETE', 'OPTIONS', 'HEAD', 'PATCH'])('does not answer to %s', async (method) => {
    const { host } = aHost();
    expect((await host.answer(new Request(`${origin}/ask/state`, { method, headers: { origin } }), origin)).status).toBe(405);
  });

  it('says of an unforeseen error its code and nothing of its message or place', async () => {
    const { ask, post } = aHost({
      print: () => Promise.reject(new RangeError('the secret path /home/keeper')),
    });
    await ask('open', { make: 'Battery' });
    const answer = await post('/ask/paper', '{"name":"run-sheet"}');
    expect([answer.status, await answer.text()]).toEqual([
      500,
      JSON.stringify({ ok: false, problems: [{ code: 'host-failed', field: '', data: { detail: 'RangeError' } }] }),
    ]);
  });

  it('that came after closing is refused, and the lock is free', async () => {
    const { ask, host, options } = aHost();
    const { folder } = bookIn(await ask('open', { make: 'Battery' }));
    await host.close();
    expect(codesIn(await ask('keep', note(1)))).toEqual(['host-closed']);
    const next = await aHost({ home: options.home }).host.openFolder(folder);
    expect(next).toMatchObject({ ok: true, value: { writable: true } });
  });

  it('says what is wrong when the installation’s folder cannot be used', async () => {
    const home = join(aHost().options.home, 'file');
    writeFileSync(home, '');
    expect(codesIn(await aHost({ home }).ask('state'))).toEqual(['not-a-folder']);
  });
});
