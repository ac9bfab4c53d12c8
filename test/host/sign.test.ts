/**
 * Signatures of end marks: what is signed and when, what `check` says of it, and the same bytes held against OpenSSL (outside reference: its pkeyutl, as
 * the machine has it) and against the key and signature of RFC 8032, 7.1, test 3.
 */
import { spawnSync } from 'node:child_process';
import { createPrivateKey, createPublicKey, sign } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fingerprintText } from '../../app/words/signatures.ts';
import { verifySignatures } from '../../app/words/verify.ts';
import { canonicalText, sha256 } from '../../main/host/canonical.ts';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { openInstallation } from '../../main/host/installation.ts';
import { type OpenDaybook, openDaybook } from '../../main/host/open-daybook.ts';
import { checkSignatures, withKeys } from '../../main/host/sign-check.ts';
import { signEndMark } from '../../main/host/sign-end-mark.ts';
import { fingerprintOf, keyOfDesk, keyPath, publicKeyFrom } from '../../main/host/sign-key.ts';
import { holds, readSignatures, type SignedMark, signaturesPath, signedBytes } from '../../main/host/sign-lines.ts';
import { called } from '../terminal/called.ts';
import { aHost, bookIn } from './a-host.ts';
import { keeper, note, now } from './drafts.ts';
import { temporaryFolder } from './folder.ts';

interface Signed {
  readonly home: string;
  readonly folder: string;
  readonly desk: string;
  readonly path: string;
  readonly book: OpenDaybook;
  readonly lines: () => SignedMark[];
  readonly check: () => Promise<{ code: number | null; faults: { desk: string; line: number; problem: string }[] }>;
}

/** A daybook of three entries whose desk has signed after the first and after the third. */
async function signed(): Promise<Signed> {
  const host = aHost();
  const { folder, ownDesk: desk } = bookIn(await host.ask('open', { make: 'Upper Battery' }));
  await host.ask('close');
  const { home } = host.options;
  const installation = openInstallation(home);
  if (!installation.ok) throw new Error('no installation');
  const opened = openDaybook(folder, installation.value);
  if (!opened.ok) throw new Error('no daybook');
  const book = opened.value;
  for (const [draft, after] of [
    [keeper, true],
    [note(1), false],
    [note(2), true],
  ] as const) {
    if (!book.keep(draft as never, now).ok) throw new Error('not kept');
    if (after && !book.sign(now).ok) throw new Error('not signed');
  }
  const path = signaturesPath(folder, desk);
  return {
    home,
    folder,
    desk,
    path,
    book,
    lines: () =>
      readFileSync(path, 'utf8')
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line) as SignedMark),
    check: async () => {
      const { code, out } = await called(['check', folder, '--json']);
      return { code, ...(JSON.parse(out) as { faults: { desk: string; line: number; problem: string }[] }) };
    },
  };
}

const written = (marks: readonly SignedMark[]) => marks.map((mark) => `${canonicalText(mark)}\n`).join('');

describe('a desk', () => {
  it('signs its end mark once, with a key that only its user may read and that lies outside the daybook', async () => {
    const { home, folder, desk, lines, book } = await signed();
    expect(lines().map(({ entries }) => entries)).toEqual([1, 3]);
    expect(book.sign(now).ok).toBe(true);
    expect(lines().length).toBe(2);
    if (process.platform !== 'win32') expect(statSync(keyPath(home, desk)).mode & 0o777).toBe(0o600);
    expect(keyPath(home, desk).startsWith(folder)).toBe(false);
    const [first, last] = lines();
    expect(first?.key).toBe(last?.key);
    expect(last?.end_mark).toBe(book.describe().desks[0]?.endMark);
  });

  it('without an entry has nothing to sign', () => {
    const home = temporaryFolder();
    const end = { daybook: 'daybook-one', desk: 'desk-of-none', entries: 0, endMark: '' };
    expect(signEndMark(home, temporaryFolder(), end, now)).toEqual({ ok: true, value: null });
    expect(existsSync(keyPath(home, 'desk-of-none'))).toBe(false);
  });

  it('whose key is gone goes on as a new desk, so that one desk has one key for all its life', async () => {
    const { home, folder, desk, book, check } = await signed();
    book.close();
    rmSync(keyPath(home, desk));
    const host = aHost({ home });
    const opened = await host.host.openFolder(folder);
    const now = opened.ok ? opened.value : null;
    expect(now?.ownDesk).not.toBe(desk);
    expect(now?.notices).toContainEqual({ code: 'new-desk', desk, detail: 'key-lost' });
    expect(await check()).toMatchObject({ code: 0, faults: [] });
  });

  it('with a key that cannot be read signs nothing, keeps the key’s file as it is, and says so', async () => {
    const { home, desk, book, lines } = await signed();
    writeFileSync(keyPath(home, desk), 'spoiled');
    book.keep(note(3) as never, now);
    const answer = book.sign(now);
    expect(answer.ok ? [] : answer.problems.map((p) => p.code)).toEqual(['key-unreadable']);
    expect(readFileSync(keyPath(home, desk), 'utf8')).toBe('spoiled');
    expect(lines().length).toBe(2);
    expect(book.describe().notices.map((n) => n.code)).toContain('not-signed');
  });
});

describe('check', () => {
  it('says of every desk how far it has signed, and with which key', async () => {
    const { folder, desk, lines } = await signed();
    const key = fingerprintOf(lines()[0]!.key);
    const text = await called(['check', folder]);
    expect([text.code, text.out.includes(`key ${fingerprintText(key)}`), text.out.includes('All 2 signatures hold.')]).toEqual([
      0,
      true,
      true,
    ]);
    const json = await called(['check', folder, '--json']);
    expect(JSON.parse(json.out).desks).toMatchObject([{ desk, entries: 3, key, signatures: 2, signed_entries: 3 }]);
  });

  it('names any signature of which a character was changed, whichever', async () => {
    const { folder, path } = await signed();
    const sound = readFileSync(path, 'utf8');
    const daybook = readDaybook(folder);
    if (!daybook.ok) throw new Error('not read');
    const line = sound.slice(0, sound.indexOf('\n'));
    let found = 0;
    for (let at = 0; at < line.length; at++) {
      const other = line[at] === '1' ? '2' : '1';
      writeFileSync(path, `${line.slice(0, at)}${other}${line.slice(at + 1)}${sound.slice(line.length)}`);
      const { faults } = checkSignatures(folder, daybook.value);
      if (faults.length === 0) throw new Error(`a change at character ${at} was not found: ${line.slice(at - 20, at + 20)}`);
      found += 1;
    }
    expect(found).toBe(line.length);
  });

  it('finds a journal that was written anew behind its signatures, and one that was cut', async () => {
    const { folder, desk, check } = await signed();
    const journal = join(folder, 'desks', `${desk}.jsonl`);
    const lines = readFileSync(journal, 'utf8').trimEnd().split('\n');
    writeFileSync(journal, `${lines.slice(0, 2).join('\n')}\n`);
    expect(await check()).toMatchObject({ code: 1, faults: [{ desk, line: 3 }] });
    // all of it anew, with hashes that fit
    let prev = '0'.repeat(64);
    const anew = lines.map((line) => {
      const { hash: _, ...entry } = JSON.parse(line) as Record<string, unknown>;
      const next = { ...entry, prev, written: '2026-03-15T09:00:00+13:00' };
      prev = sha256(canonicalText(next));
      return canonicalText({ ...next, hash: prev });
    });
    writeFileSync(journal, `${anew.join('\n')}\n`);
    const { code, faults } = await check();
    expect([code, faults.map((f) => f.line)]).toEqual([1, [1, 3]]);
    expect(faults[0]?.problem).toContain('written anew');
  });

  it('names a key that changed, with both fingerprints', async () => {
    const { folder, desk, book, path, lines, check } = await signed();
    const elsewhere = temporaryFolder();
    const { endMark, entries } = book.describe().desks[0]!;
    const other = signEndMark(elsewhere, temporaryFolder(), { daybook: book.describe().id, desk, entries, endMark }, now);
    if (!other.ok || !other.value) throw new Error('not signed');
    const [first] = lines();
    writeFileSync(path, written([first!, other.value]));
    const { code, faults } = await check();
    expect([code, faults.length, faults[0]?.line]).toEqual([1, 1, 3]);
    for (const { key } of [first!, other.value]) expect(faults[0]?.problem).toContain(fingerprintText(fingerprintOf(key)));
    expect(withKeys(folder, [{ desk, entries, endMark }])[0]).toMatchObject({
      leftOut: [expect.stringContaining('key changed')],
    });
  });

  it('names a signature of another daybook or another desk, which verifies by itself', async () => {
    const { home, desk, path, lines, check } = await signed();
    const [, last] = lines();
    const strange = signEndMark(home, temporaryFolder(), { daybook: 'another', desk, entries: 3, endMark: last!.end_mark }, now);
    if (!strange.ok || !strange.value) throw new Error('not signed');
    expect(holds(strange.value)).toBe(true);
    writeFileSync(path, written([last!, strange.value]));
    expect(await check()).toMatchObject({ code: 1, faults: [{ desk, line: 3 }] });
  });

  it('takes a line without its end for a notice, and the next signature takes its place', async () => {
    const { path, book, check, lines } = await signed();
    writeFileSync(path, `${readFileSync(path, 'utf8')}{"daybook":"cut of`);
    expect(await check()).toMatchObject({ code: 0, faults: [], notices: [{ notice: expect.stringContaining('cut off') }] });
    book.keep(note(3) as never, now);
    expect(book.sign(now).ok).toBe(true);
    expect(lines().map(({ entries }) => entries)).toEqual([1, 3, 4]);
  });
});

describe('outside', () => {
  it('the signature is that of RFC 8032, 7.1, test 3, and its key is read as it stands there', () => {
    // from memory of the RFC's text: secret key, public key, message, signature
    const seed = 'c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7';
    const pub = 'fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025';
    const wanted =
      '6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a';
    const secret = createPrivateKey({
      key: Buffer.from(`302e020100300506032b657004220420${seed}`, 'hex'),
      format: 'der',
      type: 'pkcs8',
    });
    const spki = createPublicKey(secret).export({ format: 'der', type: 'spki' });
    expect(spki.subarray(-32).toString('hex')).toBe(pub);
    expect(sign(null, Buffer.from('af82', 'hex'), secret).toString('hex')).toBe(wanted);
    expect(publicKeyFrom(spki.toString('base64'))?.asymmetricKeyType).toBe('ed25519');
    expect(publicKeyFrom('bm8ga2V5')).toBeNull();
  });

  it('OpenSSL verifies the very line without its signature, and refuses it with another', async () => {
    const { home, desk, lines } = await signed();
    const at = temporaryFolder();
    const [first, last] = lines();
    const verified = (said: Buffer, signature: string) => {
      writeFileSync(join(at, 'said'), said);
      writeFileSync(join(at, 'mark'), Buffer.from(signature, 'base64'));
      writeFileSync(join(at, 'key.der'), Buffer.from(last!.key, 'base64'));
      spawnSync('openssl', ['pkey', '-pubin', '-inform', 'DER', '-in', 'key.der', '-out', 'key.pem'], { cwd: at });
      const args = ['pkeyutl', '-verify', '-pubin', '-inkey', 'key.pem', '-rawin', '-in', 'said', '-sigfile', 'mark'];
      return spawnSync('openssl', args, { cwd: at, encoding: 'utf8' }).status;
    };
    const { signature, ...said } = last!;
    expect(verified(Buffer.from(canonicalText(said)), signature)).toBe(0);
    expect(verified(Buffer.from(canonicalText({ ...said, entries: 4 })), signature)).toBe(1);
    expect(verified(signedBytes(last!), first!.signature)).toBe(1);
    // and the key as OpenSSL reads it from its file is the one that was published
    const shown = spawnSync('openssl', ['pkey', '-in', keyPath(home, desk), '-pubout', '-outform', 'DER']);
    expect(shown.stdout.toString('base64')).toBe(last!.key);
    const key = keyOfDesk(home, desk);
    expect(key.ok && key.value.key).toBe(last!.key);
  });

  it('the script for outsiders verifies an export with OpenSSL alone, and names the line that is not the signed one', async () => {
    const { folder, desk, lines } = await signed();
    const out = join(temporaryFolder(), 'away');
    expect((await called(['export', folder, '--out', out])).code).toBe(0);
    writeFileSync(join(out, 'signatures.sh'), verifySignatures);
    const run = () =>
      spawnSync('sh', ['signatures.sh', `signatures-${desk}.jsonl`, `journal-${desk}.jsonl`], { cwd: out, encoding: 'utf8' });
    const key = fingerprintOf(lines()[0]!.key);
    const fine = run();
    expect([fine.status, fine.stdout.match(new RegExp(`signed up to line \\d with the key ${key}`, 'g'))?.length]).toEqual([
      0, 2,
    ]);
    const manifest = JSON.parse(readFileSync(join(out, 'manifest.json'), 'utf8'));
    expect(manifest.end_marks).toMatchObject([{ desk, entries: 3, signed_entries: 3, key }]);
    expect(readFileSync(join(out, 'VERIFY.md'), 'utf8')).toContain(key);
    const journal = join(out, `journal-${desk}.jsonl`);
    const text = readFileSync(journal, 'utf8').trimEnd().split('\n');
    writeFileSync(journal, `${[text[0], text[1], text[1]].join('\n')}\n`);
    const unlike = run();
    expect([unlike.status, unlike.stdout.includes('line 3 of')]).toEqual([1, true]);
    writeFileSync(journal, `${text.join('\n')}\n`);
    const file = join(out, `signatures-${desk}.jsonl`);
    writeFileSync(file, readFileSync(file, 'utf8').replace('"entries":1', '"entries":2'));
    expect(run().status).toBe(1);
  });
});

it('signatures travel with a folder that is joined, once', async () => {
  const one = await signed();
  const other = join(temporaryFolder(), 'other');
  mkdirSync(other);
  one.book.close();
  spawnSync('cp', ['-r', `${one.folder}/.`, other]);
  renameSync(join(one.folder, 'signatures'), join(temporaryFolder(), 'moved'));
  const joined = await called(['join', one.folder, other]);
  expect([joined.code, joined.out]).toEqual([0, 'signatures: 2\n']);
  expect(readSignatures(one.folder)).toEqual(readSignatures(other));
  expect((await called(['join', one.folder, other])).out).toContain('nothing');
});
