/** What no browser would send, written to the loopback port byte by byte: refused, cut off, and never answered as if it were a question. */
import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Loopback, serveLoopback } from '../../main/loopback.ts';
import { type AHost, aHost, bookIn } from './a-host.ts';
import { note } from './drafts.ts';
import { printOf } from './mutate.ts';

let made: AHost;
let loopback: Loopback;
/** Stands for the head lines of whoever is in, which are known once the server runs. */
const own = '[own]';
let ownLines: string;
let folder: string;

/** Sends bytes as they are and answers all that came back until the other side hung up, or `ms` went by. */
function raw(bytes: string, ms = 4000): Promise<{ text: string; hungUp: boolean }> {
  return new Promise((resolve) => {
    let text = '';
    const socket = connect(loopback.port, '127.0.0.1', () =>
      socket.write(Buffer.from(bytes.replaceAll(own, ownLines), 'latin1')),
    );
    const timer = setTimeout(() => {
      resolve({ text, hungUp: false });
      socket.destroy();
    }, ms);
    socket.on('data', (part: Buffer) => {
      text += part.toString('latin1');
    });
    socket.on('error', () => undefined);
    socket.on('close', () => {
      clearTimeout(timer);
      resolve({ text, hungUp: true });
    });
  });
}

const statuses = (text: string) => [...text.matchAll(/^HTTP\/1\.1 (\d+)/gm)].map((m) => Number(m[1]));
const asked = (more: string, body = '', method = 'POST', path = '/ask/keep') =>
  `${method} ${path} HTTP/1.1\r\n${own}${more}\r\n${body}`;
const keep = JSON.stringify(note(7));

beforeAll(async () => {
  made = aHost();
  const got = await serveLoopback(made.host, { home: made.options.home, patienceMs: { head: 600, whole: 1200 } });
  if (!got.ok) throw new Error('it does not listen');
  loopback = got.value;
  const entered = await fetch(loopback.address, { redirect: 'manual' });
  const cookie = entered.headers.get('set-cookie')!.split(';')[0]!;
  const host = `127.0.0.1:${loopback.port}`;
  ownLines = `Host: ${host}\r\nCookie: ${cookie}\r\nOrigin: ${loopback.origin}\r\nContent-Type: application/json\r\n`;
  folder = bookIn(await made.ask('open', { make: 'Battery' })).folder;
});
afterAll(() => loopback.close());

describe('one request that could be read as two', () => {
  const whole = `Content-Length: ${keep.length}\r\n`;
  const hidden = `0\r\n\r\n${asked(`${whole}Connection: close\r\n`, keep)}`;

  it.each([
    ['with two lengths', asked(`Content-Length: 2\r\n${whole}`, keep)],
    ['with two lengths in one line', asked(`Content-Length: 2, ${keep.length}\r\n`, keep)],
    ['with a length and pieces', asked(`Content-Length: 4\r\nTransfer-Encoding: chunked\r\n`, hidden)],
    ['with pieces and a length', asked(`Transfer-Encoding: chunked\r\nContent-Length: 4\r\n`, hidden)],
    ['with a length that is signed', asked(`Content-Length: +${keep.length}\r\n`, keep)],
    ['with a length that is no number', asked(`Content-Length: 0x10\r\n`, keep)],
    ['in pieces of a strange coding', asked('Transfer-Encoding: chunked, identity\r\n', hidden)],
    ['with a blank before the colon', asked(`Content-Length : ${keep.length}\r\n`, keep)],
    ['with a folded line', asked(`X-One: a\r\n\tContent-Length: 0\r\nTransfer-Encoding : chunked\r\n`, hidden)],
    ['with a length of a piece that is no number', asked('Transfer-Encoding: chunked\r\n', `zz\r\n${keep}\r\n0\r\n\r\n`)],
    ['with a bare line feed for its ends', `POST /ask/keep HTTP/1.1\n${own}Content-Length : 2\n\n${keep}`],
    ['to two hosts', `POST /ask/keep HTTP/1.1\r\nHost: example.org\r\n${own}${whole}\r\n${keep}`],
  ])('%s is refused and keeps nothing', async (_, bytes) => {
    const before = printOf(folder);
    const { text } = await raw(bytes);
    expect(statuses(text).filter((status) => status < 400)).toEqual([]);
    expect(printOf(folder)).toBe(before);
  });

  it('is one where it is whole, so that the refusals above are no accident', async () => {
    const { text } = await raw(asked('Content-Length: 2\r\nConnection: close\r\n', '{}', 'POST', '/ask/state'));
    expect(statuses(text)).toEqual([200]);
  });
});

describe('an address', () => {
  it.each([
    '/../../etc/passwd',
    '/assets/../../etc/passwd',
    '/%2e%2e/%2e%2e/etc/passwd',
    '/..%2f..%2fetc/passwd',
    '/..%5c..%5cwindows',
    '/..\\..\\windows',
    '//127.0.0.1/',
    '///etc/passwd',
    '/%00/etc/passwd',
    '/\u0000',
    '/assets/start.js\u0000.png',
    'http://127.0.0.1/etc/passwd',
    'file:///etc/passwd',
    'etc/passwd',
    '/\u00e9\u00ff',
    `/${'a/'.repeat(4000)}`,
    `/${'a'.repeat(20_000)}`,
  ])('that plays a trick is refused (%#)', async (path) => {
    const { text } = await raw(asked('Connection: close\r\n', '', 'GET', path));
    expect(statuses(text).length).toBeLessThanOrEqual(1);
    expect(statuses(text)[0] ?? 400).toBeGreaterThanOrEqual(400);
    expect(text).not.toMatch(/root:|access-control/i);
  });

  it('for another server behind this one is not reached', async () => {
    for (const bytes of [
      `CONNECT example.org:443 HTTP/1.1\r\n${own}\r\n`,
      asked('Upgrade: websocket\r\nConnection: Upgrade\r\n', '', 'GET', '/nowhere'),
    ])
      expect(statuses((await raw(bytes, 2500)).text).filter((s) => s < 400)).toEqual([]);
  });

  it.each([
    'GET / HTTP/0.9\r\n\r\n',
    'GET /\r\n\r\n',
    '\u0016\u0003\u0001\u0002\u0000\u0001',
    'PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n',
    '\u0000'.repeat(64),
  ])('in a language that is not ours is hung up on (%#)', async (bytes) => {
    const { text, hungUp } = await raw(bytes);
    expect([statuses(text).filter((s) => s < 400), hungUp]).toEqual([[], true]);
  });
});

describe('a request that does not come to its end', () => {
  it.each([
    ['head', () => `POST /ask/keep HTTP/1.1\r\n${own}X-Slow: `],
    ['body', () => asked(`Content-Length: ${keep.length}\r\n`, keep.slice(0, 20))],
    ['pieces', () => asked('Transfer-Encoding: chunked\r\n', '5\r\n{"id"\r\n')],
  ])('in its %s is cut off, keeps nothing and leaves the server well', async (_, bytes) => {
    const before = printOf(folder);
    const { text, hungUp } = await raw(bytes(), 8000);
    expect([hungUp, statuses(text).filter((s) => s < 400)]).toEqual([true, []]);
    expect(printOf(folder)).toBe(before);
    expect((await made.ask('state')).ok).toBe(true);
  });
});

describe('headers of every answer', () => {
  it('never open it to another origin, and carry a policy without an unsafe word', async () => {
    const requests = [
      asked('Connection: close\r\n', '', 'GET', '/'),
      asked('Connection: close\r\n', '', 'GET', '/nowhere'),
      asked('Connection: close\r\n', '', 'OPTIONS', '/ask/state'),
      asked('Connection: close\r\nContent-Length: 1\r\n', '{', 'POST', '/ask/state'),
      asked('Connection: close\r\nContent-Length: 2\r\n', '{}', 'POST', '/ask/state'),
      asked('Connection: close\r\n', '', 'GET', '/..'),
      `GET / HTTP/1.1\r\nHost: example.org\r\nOrigin: http://example.org\r\nConnection: close\r\n\r\n`,
      `GET /enter?key=no HTTP/1.1\r\nHost: 127.0.0.1:${loopback.port}\r\nConnection: close\r\n\r\n`,
    ];
    for (const bytes of requests) {
      const head = (await raw(bytes)).text.split('\r\n\r\n')[0]!;
      expect(head).not.toMatch(/access-control|server:|x-powered-by/i);
      expect(head).toMatch(/content-security-policy: default-src 'none'/i);
      expect(head).not.toMatch(/unsafe/);
      expect(head).toMatch(/x-content-type-options: nosniff/i);
    }
  });
});
