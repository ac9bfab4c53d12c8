/** A page names no path: no question has a field for one, a question that brings one is refused, and a file that is handed out cannot act as a page. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { questions } from '../../app/contract.ts';
import { draft } from '../../app/core/entry.ts';
import { kinds } from '../../app/core/kinds/index.ts';
import { z } from '../../app/core/zod.ts';
import { aHost, bookIn, codesIn } from './a-host.ts';
import { note } from './drafts.ts';

/** Every member name in a schema, at any depth. */
function namesIn(schema: z.ZodType): Set<string> {
  const found = new Set<string>();
  const walk = (value: unknown): void => {
    if (value === null || typeof value !== 'object') return;
    const { properties } = value as { properties?: Record<string, unknown> };
    if (properties && typeof properties === 'object') for (const name of Object.keys(properties)) found.add(name);
    for (const inner of Object.values(value)) walk(inner);
  };
  walk(z.toJSONSchema(schema, { unrepresentable: 'any', io: 'input' }));
  return found;
}

const pathLike = /^(path|dir|directory|folder|url|uri|href|src|location|root|cwd|dest|destination|filename|target)$/i;

describe('a question', () => {
  it('asks with no field that could hold a path', () => {
    const asked = Object.values(questions).flatMap(({ ask }) => (ask === 'bytes' ? [] : [...namesIn(ask as z.ZodType)]));
    expect(new Set(asked)).toContain('recent');
    expect(asked.filter((name) => pathLike.test(name))).toEqual([]);
    const entries = [...namesIn(draft), ...Object.values(kinds).flatMap((kind) => [...namesIn(kind as z.ZodType)])];
    // a file of an entry is evidence, and evidence is named by its hash
    expect(entries).toContain('file');
    expect(entries.filter((name) => pathLike.test(name))).toEqual([]);
  });

  it.each(['path', 'dir', 'folder', 'file', 'url', 'out', 'home', '../x'])('with a field “%s” beside is refused', async (key) => {
    const { post } = aHost();
    const bodies: Readonly<Record<string, string>> = {
      state: '',
      close: '',
      entries: '',
      open: '"make":"Battery",',
      paper: '"name":"mercury-account",',
      keep: `${JSON.stringify(note(1)).slice(1, -1)},`,
    };
    for (const [question, members] of Object.entries(bodies)) {
      const answer = await post(`/ask/${question}`, `{${members}${JSON.stringify(key)}:"/etc/passwd"}`);
      const said = (await answer.json()) as { ok: boolean };
      expect([question, said.ok], JSON.stringify(said)).toEqual([question, false]);
    }
  });

  it.each([
    '/etc/passwd',
    '../../etc',
    '..\\..\\windows',
    'C:\\windows',
    'file:///etc',
    '//host/share',
    '~/x',
    '%2e%2e%2fx',
    'a\u0000b',
  ])('to make a daybook called %j makes one plain folder in the documents folder, or none', async (name) => {
    const { ask, options } = aHost();
    const made = await ask('open', { make: name });
    if (made.ok) {
      const { folder } = bookIn(made);
      expect(join(options.documents, readdirSync(options.documents)[0]!)).toBe(folder);
      expect(folder.slice(options.documents.length + 1)).not.toMatch(/[/\\:.]/);
    } else expect(readdirSync(options.documents)).toEqual([]);
    expect(codesIn(await ask('open', { recent: name }))).toEqual(['unknown-recent']);
    expect(existsSync(join(options.documents, '..', 'etc'))).toBe(false);
  });
});

describe('a file handed out', () => {
  const octets = { 'content-type': 'application/octet-stream' };
  const page = '<html><script>alert(1)</script>';
  const files = [
    ['image/png', Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), Buffer.from(page)])],
    ['image/jpeg', Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0]), Buffer.from(page)])],
    ['application/pdf', Buffer.from(`%PDF-1.7\n${page}`)],
  ] as const;

  it.each(files)('as %s is never guessed to be a page, runs nothing and frames nowhere', async (type, bytes) => {
    const { ask, post, get } = aHost();
    await ask('open', { make: 'Battery' });
    const { value } = (await (await post('/ask/evidence', bytes, octets)).json()) as { value: { file: string } };
    const { headers } = await get(`/evidence/${value.file}`);
    expect(headers.get('content-type')).toBe(type);
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('content-security-policy')).toMatch(/default-src 'none'.*frame-ancestors 'none'; sandbox$/);
    expect(headers.get('x-frame-options')).toBe('DENY');
    if (type === 'application/pdf') expect(headers.get('content-disposition')).toBe(`attachment; filename="${value.file}"`);
  });

  it.each([
    ['a drawing', '<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>'],
    ['a drawing behind a mark of text', '\ufeff<svg/>'],
    ['a page that calls itself a picture', `${page}\u0089PNG`],
    ['a picture with a page before it', `<!--\u0089PNG\r\n\u001a\n-->`],
    ['a PDF that does not begin as one', ` %PDF-1.7 ${page}`],
    ['a GIF', 'GIF89a/*'],
  ])('is never %s', async (_, text) => {
    const { ask, post } = aHost();
    await ask('open', { make: 'Battery' });
    const answer = await post('/ask/evidence', Buffer.from(text, 'latin1'), { ...octets, 'x-file-name': 'seal.png' });
    expect(codesIn((await answer.json()) as { ok: boolean })).toEqual(['evidence-kind']);
  });
});
