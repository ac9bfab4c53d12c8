/** Nobody gets in at the loopback address but the browser that was given its key, and nothing gets out but what that browser asked for. */
import { request } from 'node:http';
import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { afterAll, describe, expect, it } from 'vitest';
import { mostQuestionBytes } from '../../app/contract.ts';
import { type Loopback, serveLoopback } from '../../main/loopback.ts';
import { aHost, bookIn, codesIn } from './a-host.ts';
import { note } from './drafts.ts';
import { temporaryFolder } from './folder.ts';

const serving: Loopback[] = [];
afterAll(async () => {
  for (const loopback of serving) await loopback.close();
});

async function serve(more: { port?: number; home?: string } = {}) {
  const made = aHost();
  const loopback = await serveLoopback(made.host, { home: made.options.home, ...more });
  if (!loopback.ok) throw new Error(JSON.stringify(loopback.problems));
  serving.push(loopback.value);
  return { ...made, ...loopback.value };
}

interface Sent {
  readonly status: number;
  readonly headers: Record<string, string | string[] | undefined>;
  readonly text: string;
}

/** A request as written: unlike fetch it changes neither path nor headers. */
function send(
  port: number,
  path: string,
  init: { method?: string; headers?: Record<string, string>; body?: string | Buffer } = {},
): Promise<Sent> {
  return new Promise((resolve, reject) => {
    const outgoing = request(
      { host: '127.0.0.1', port, path, method: init.method ?? 'GET', headers: init.headers ?? {}, agent: false },
      (answer) => {
        const parts: Buffer[] = [];
        answer.on('data', (part: Buffer) => parts.push(part));
        answer.on('end', () =>
          resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text: Buffer.concat(parts).toString('utf8') }),
        );
      },
    );
    outgoing.on('error', reject);
    outgoing.end(init.body);
  });
}

const pathOf = (address: string) => address.slice(address.indexOf('/enter'));

/** Goes in by the one-time address and answers the headers of a window that is in. */
async function enter({ port, address, origin }: Loopback): Promise<Record<string, string>> {
  const entered = await send(port, pathOf(address));
  const cookie = String(entered.headers['set-cookie']).split(';')[0]!;
  return { cookie, origin, 'content-type': 'application/json' };
}

const post = (port: number, path: string, headers: Record<string, string>, body: string | Buffer = '{}') =>
  send(port, path, { method: 'POST', headers, body });

describe('the one-time address', () => {
  it('is exchanged once for a cookie that no script and no other site can use, and leads to the window', async () => {
    const loopback = await serve();
    expect(loopback.address).toMatch(new RegExp(`^http://127\\.0\\.0\\.1:${loopback.port}/enter\\?key=[A-Za-z0-9_-]{43}$`));
    const entered = await send(loopback.port, pathOf(loopback.address));
    expect([entered.status, entered.headers.location]).toEqual([303, '/']);
    expect(String(entered.headers['set-cookie'])).toMatch(
      new RegExp(`^daybook-${loopback.port}=[A-Za-z0-9_-]{43}; HttpOnly; SameSite=Strict; Path=/$`),
    );
    const cookie = String(entered.headers['set-cookie']).split(';')[0]!;
    expect(await send(loopback.port, '/', { headers: { cookie } })).toMatchObject({
      status: 200,
      text: expect.stringContaining('window'),
    });
  });

  it('is refused the second time, with a page that says what to do', async () => {
    const loopback = await serve();
    await enter(loopback);
    const again = await send(loopback.port, pathOf(loopback.address));
    expect(again).toMatchObject({ status: 403, text: expect.stringContaining('start it again') });
    expect(again.headers['set-cookie']).toBeUndefined();
  });

  it('leads whoever is in already back to the window, and gives no second session', async () => {
    const loopback = await serve();
    const { cookie = '' } = await enter(loopback);
    const again = await send(loopback.port, pathOf(loopback.address), { headers: { cookie } });
    expect([again.status, again.headers.location, again.headers['set-cookie']]).toEqual([303, '/', undefined]);
    const other = await send(loopback.port, pathOf(loopback.address), { headers: { cookie: `${cookie}x` } });
    expect(other.status).toBe(403);
  });

  it('gives way to a newer one', async () => {
    const loopback = await serve();
    const newer = loopback.newAddress();
    expect((await send(loopback.port, pathOf(loopback.address))).status).toBe(403);
    expect((await send(loopback.port, pathOf(newer))).status).toBe(303);
  });

  it.each(['', '?key=', '?key=wrong', `?key=${'A'.repeat(43)}`])('is not /enter%s', async (query) => {
    const loopback = await serve();
    expect((await send(loopback.port, `/enter${query}`)).status).toBe(403);
    expect((await send(loopback.port, pathOf(loopback.address))).status).toBe(303);
  });
});

describe('without having entered', () => {
  it('there is no page, no file, no evidence and no answer', async () => {
    const { port, origin } = await serve();
    for (const path of ['/', '/assets/start.js', `/evidence/${'0'.repeat(64)}.png`, '/nowhere'])
      expect(await send(port, path), path).toMatchObject({ status: 403, text: expect.stringContaining('needs its key') });
    const asked = await post(port, '/ask/state', { origin, 'content-type': 'application/json' });
    expect([asked.status, codesIn(JSON.parse(asked.text) as { ok: boolean })]).toEqual([403, ['no-session']]);
  });

  it('a cookie that is made up, empty or another port’s does not help', async () => {
    const [one, two] = [await serve(), await serve()];
    const { cookie = '' } = await enter(one);
    const value = cookie.split('=')[1];
    for (const tried of [`daybook-${two.port}=`, `daybook-${two.port}=${'A'.repeat(43)}`, cookie, `daybook-${two.port}=${value}`])
      expect((await send(two.port, '/', { headers: { cookie: tried } })).status, tried).toBe(403);
    expect((await send(one.port, '/', { headers: { cookie: `other=1; ${cookie}; last=2` } })).status).toBe(200);
  });
});

describe('having entered', () => {
  it('the window works: opens, keeps, reads', async () => {
    const loopback = await serve();
    const headers = await enter(loopback);
    const opened = JSON.parse((await post(loopback.port, '/ask/open', headers, '{"make":"Battery"}')).text) as Parameters<
      typeof bookIn
    >[0];
    expect(bookIn(opened).name).toBe('Battery');
    const kept = await post(loopback.port, '/ask/keep', headers, JSON.stringify(note(1, 'Ünï')));
    expect(JSON.parse(kept.text)).toMatchObject({ ok: true, value: { entry: { n: 1 } } });
    expect((await post(loopback.port, '/ask/entries', headers)).text).toContain('Ünï');
  });

  it.each(['localhost', 'LOCALHOST', '127.0.0.1', '127.0.0.1:1', '[::1]', 'daybook.example', '127.0.0.1.example', '0.0.0.0'])(
    'a request to the host %s is refused, key and cookie or not',
    async (host) => {
      const loopback = await serve();
      const named = /:\d+$/.test(host) || host === '127.0.0.1' ? host : `${host}:${loopback.port}`;
      expect((await send(loopback.port, pathOf(loopback.address), { headers: { host: named } })).status).toBe(403);
      const headers = await enter(loopback);
      expect((await send(loopback.port, '/', { headers: { ...headers, host: named } })).status).toBe(403);
      expect((await post(loopback.port, '/ask/state', { ...headers, host: named })).status).toBe(403);
    },
  );

  it('a question from any other origin, or from none, is refused', async () => {
    const loopback = await serve();
    const { origin, ...headers } = await enter(loopback);
    const others = [
      'null',
      'http://localhost',
      `http://localhost:${loopback.port}`,
      `https://127.0.0.1:${loopback.port}`,
      'http://127.0.0.1',
      `${origin}0`,
    ];
    for (const other of others)
      expect((await post(loopback.port, '/ask/state', { ...headers, origin: other })).status, other).toBe(403);
    expect((await post(loopback.port, '/ask/state', headers)).status).toBe(403);
    expect((await post(loopback.port, '/ask/state', { ...headers, origin: origin! })).status).toBe(200);
  });

  it.each(['PUT', 'DELETE', 'PATCH', 'OPTIONS', 'HEAD', 'TRACE', 'PROPFIND'])('%s is not answered', async (method) => {
    const loopback = await serve();
    const answer = await send(loopback.port, '/ask/state', { method, headers: await enter(loopback) });
    expect([answer.status, answer.headers.allow]).toEqual([405, 'GET, POST']);
    expect(Object.keys(answer.headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
  });

  it.each([
    '/../daybook.json',
    '/assets/../index.html',
    '/%2e%2e/%2e%2e/etc/passwd',
    '/assets/%2e%2e%2findex.html',
    '/assets\\start.js',
    '//example.org/',
    '/assets//start.js',
    '/./',
    '/evidence/..%5cdaybook.json',
    '/%00',
    '/assets/start.js%00.png',
    '/assets/start.js;x',
    'http://example.org/',
    '*',
    '/.hidden',
    '/?key=%',
  ])('the path %s is refused', async (path) => {
    const loopback = await serve();
    expect((await send(loopback.port, path, { headers: await enter(loopback) })).status).toBe(400);
  });

  it('malformed JSON and other types of body are refused', async () => {
    const loopback = await serve();
    const headers = await enter(loopback);
    expect((await post(loopback.port, '/ask/state', headers, '{"a":')).status).toBe(400);
    expect((await post(loopback.port, '/ask/state', { ...headers, 'content-type': 'text/plain' })).status).toBe(415);
  });

  it('a body that announces too much is refused unread, and one that turns out too long is cut off', async () => {
    const loopback = await serve();
    const headers = await enter(loopback);
    const announced = await post(loopback.port, '/ask/state', headers, Buffer.alloc(mostQuestionBytes + 1, 0x20)).catch(
      () => null,
    );
    expect([413, undefined]).toContain(announced?.status);

    const { status, sent } = await endless(loopback.port, headers);
    expect(status).toContain('413');
    expect(sent).toBeLessThan(mostQuestionBytes * 20);
    expect((await post(loopback.port, '/ask/state', headers)).status).toBe(200);
  });

  it('a body that breaks off leaves nothing kept and the server well', async () => {
    const loopback = await serve();
    const headers = await enter(loopback);
    await post(loopback.port, '/ask/open', headers, '{"make":"Battery"}');
    const body = JSON.stringify(note(1));
    await new Promise<void>((resolve) => {
      const socket = connect(loopback.port, '127.0.0.1', () => {
        const head = Object.entries({ host: `127.0.0.1:${loopback.port}`, ...headers, 'content-length': body.length + 10 });
        socket.write(`POST /ask/keep HTTP/1.1\r\n${head.map(([k, v]) => `${k}: ${v}\r\n`).join('')}\r\n${body}`, () =>
          socket.destroy(),
        );
      });
      socket.on('close', () => resolve());
    });
    expect((await post(loopback.port, '/ask/entries', headers)).text).toBe('');
  });
});

/** Sends a body in pieces without end and without a length, until the other side answers or hangs up. */
function endless(port: number, headers: Record<string, string>): Promise<{ status: string; sent: number }> {
  return new Promise((resolve) => {
    let status = '';
    let sent = 0;
    const piece = Buffer.concat([Buffer.from('10000\r\n'), Buffer.alloc(0x10000, 0x20), Buffer.from('\r\n')]);
    const socket = connect(port, '127.0.0.1', () => {
      const head = Object.entries({ host: `127.0.0.1:${port}`, ...headers, 'transfer-encoding': 'chunked' });
      socket.write(`POST /ask/state HTTP/1.1\r\n${head.map(([k, v]) => `${k}: ${v}\r\n`).join('')}\r\n`);
      const more = () => {
        while (!socket.destroyed && sent < mostQuestionBytes * 20) {
          sent += 0x10000;
          if (!socket.write(piece)) return;
        }
      };
      socket.on('drain', more);
      more();
    });
    socket.on('data', (part: Buffer) => {
      status ||= part.toString('latin1').split('\r\n')[0]!;
    });
    socket.on('error', () => undefined);
    socket.on('close', () => resolve({ status, sent }));
  });
}

describe('the port', () => {
  it('listens on the loopback address only', async () => {
    const { port } = await serve();
    const others = Object.values(networkInterfaces()).flatMap((list) =>
      (list ?? []).filter((a) => !a.internal && a.family === 'IPv4'),
    );
    for (const { address } of others) {
      const reached = await new Promise((resolve) => {
        const socket = connect({ port, host: address, timeout: 2000 }, () => resolve(true));
        for (const event of ['error', 'timeout'] as const) socket.on(event, () => resolve(false));
      });
      expect(reached, address).toBe(false);
    }
  });

  it('is the same at the next start, so that drafts are found again', async () => {
    const home = temporaryFolder();
    const first = await serve({ home });
    await first.close();
    expect((await serve({ home })).port).toBe(first.port);
  });

  it('is another while the first is in use, and the first again afterwards', async () => {
    const home = temporaryFolder();
    const first = await serve({ home });
    const second = await serve({ home });
    expect(second.port).not.toBe(first.port);
    await first.close();
    await second.close();
    expect((await serve({ home })).port).toBe(first.port);
  });

  it('that was asked for and is taken is a problem, not another port', async () => {
    const { port, host, options } = await serve();
    expect(await serveLoopback(host, { port, home: options.home })).toMatchObject({
      ok: false,
      problems: [{ code: 'port-taken', data: { port } }],
    });
  });
});
