/**
 * The window in a browser on this machine: serves the host on the loopback address and nowhere else. Lets in only whoever was given the one-time
 * address, and refuses what does not name this address exactly: another Host (DNS rebinding), another Origin, strange paths, other methods.
 */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { bad, good, problem, type Result } from '../app/core/result.ts';
import { diskProblem, errorCode } from './host/disk.ts';
import type { Host } from './host/host.ts';
import { openInstallation } from './host/installation.ts';
import { type Gate, makeGate } from './host/one-time-key.ts';
import { plainPage } from './host/plain-page.ts';
import { failed, refusal } from './host/replies.ts';
import { requestFrom, send } from './host/web.ts';

const loopback = '127.0.0.1';

export interface LoopbackOptions {
  /** The port that must be used; left out: the installation's own where it is free, else any. */
  readonly port?: number;
  /** The installation's state folder: it remembers the port, since another port is another origin and would hide drafts. */
  readonly home: string;
  /** How long a request may take to send its head, and all of it, in milliseconds. */
  readonly patienceMs?: { readonly head: number; readonly whole: number };
}

export interface Loopback {
  readonly origin: string;
  readonly port: number;
  /** The one-time address to print or open. */
  readonly address: string;
  /** Another one-time address; one that was not used yet stops working. */
  readonly newAddress: () => string;
  readonly close: () => Promise<void>;
}

/** Plain paths only: no dots but in names, no double strokes, nothing encoded, no backslash. */
const plainPath = /^(\/[A-Za-z0-9_-][A-Za-z0-9._-]*)*\/?(\?key=[A-Za-z0-9_-]*)?$/;

/** The answer to one request, and before it everything that turns it away. */
async function answerTo(incoming: IncomingMessage, host: Host, gate: Gate, port: number): Promise<Response> {
  const origin = `http://${loopback}:${port}`;
  const { url = '', method = '', headers } = incoming;
  if (headers.host !== `${loopback}:${port}`) return plainPage('wrong-host', 403);
  if (!plainPath.test(url)) return plainPage('bad-path', 400);
  if (method !== 'GET' && method !== 'POST') return plainPage('wrong-method', 405, { allow: 'GET, POST' });
  const { pathname, searchParams } = new URL(url, origin);
  if (pathname === '/enter') {
    if (method !== 'GET') return plainPage('wrong-method', 405, { allow: 'GET' });
    const cookie = gate.enter(searchParams.get('key') ?? '');
    // whoever is in already, and came back by the old address, is where they wanted to be
    if (cookie === null && !gate.knows(headers.cookie ?? '')) return plainPage('key-used', 403);
    return new Response(null, {
      status: 303,
      headers: {
        location: '/',
        ...(cookie === null ? {} : { 'set-cookie': cookie }),
        'cache-control': 'no-store',
        'referrer-policy': 'no-referrer',
      },
    });
  }
  if (!gate.knows(headers.cookie ?? '')) return method === 'GET' ? plainPage('no-key', 403) : refusal(problem('no-session', ''));
  return host.answer(requestFrom(incoming, origin), origin);
}

/** Listens on a port of the loopback address; 0 for any. */
function listen(server: Server, port: number): Promise<Result<number>> {
  return new Promise((resolve) => {
    const onError = (error: Error) => {
      const taken = errorCode(error) === 'EADDRINUSE' || errorCode(error) === 'EACCES';
      resolve(bad(taken ? problem('port-taken', 'port', { port }) : diskProblem(error, `${loopback}:${port}`)));
    };
    server.once('error', onError);
    server.listen({ port, host: loopback, exclusive: true }, () => {
      server.off('error', onError);
      const address = server.address();
      resolve(good(typeof address === 'object' && address ? address.port : port));
    });
  });
}

/** Serves the host in a browser on this machine until it is closed. */
export async function serveLoopback(host: Host, options: LoopbackOptions): Promise<Result<Loopback>> {
  const installation = openInstallation(options.home);
  if (!installation.ok) return installation;
  let serve = (_incoming: IncomingMessage, outgoing: ServerResponse) => void outgoing.destroy();
  const { head, whole } = options.patienceMs ?? { head: 10_000, whole: 60_000 };
  const limits = {
    maxHeaderSize: 16_384,
    headersTimeout: head,
    requestTimeout: whole,
    // node looks after them only twice a minute by itself
    connectionsCheckingInterval: Math.min(head, 5000),
    insecureHTTPParser: false,
  };
  const server = createServer(limits, (incoming, outgoing) => serve(incoming, outgoing));
  const remembered = installation.value.port();
  let at = await listen(server, options.port ?? remembered ?? 0);
  // the remembered port belongs to another window just now: take any, and keep remembering the first
  if (!at.ok && options.port === undefined) at = await listen(server, 0);
  if (!at.ok) return at;
  const port = at.value;
  if (options.port === undefined && remembered === null) installation.value.rememberPort(port);

  const gate = makeGate(port);
  const origin = `http://${loopback}:${port}`;
  serve = (incoming, outgoing) => {
    answerTo(incoming, host, gate, port)
      .catch((error: unknown) => refusal(failed(error)))
      .then((response) => send(response, incoming, outgoing))
      .catch(() => outgoing.destroy());
  };
  const newAddress = () => `${origin}/enter?key=${gate.newKey()}`;
  const close = () =>
    new Promise<void>((resolve) => {
      server.close(() => resolve());
      server.closeAllConnections();
    });
  return good({ origin, port, address: newAddress(), newAddress, close });
}
