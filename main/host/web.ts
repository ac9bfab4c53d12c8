/** Node's http and the web's Request and Response, turned into each other. A body that is not wanted any more is not read any further. */
import type { IncomingMessage, ServerResponse } from 'node:http';

/** The body as a stream. Cancelling it stops reading but leaves the connection, so that the refusal can still be sent. */
function bodyOf(incoming: IncomingMessage): ReadableStream<Uint8Array> {
  let over = false;
  return new ReadableStream<Uint8Array>({
    start(stream) {
      const end = (act: () => void) => () => {
        if (!over) act();
        over = true;
      };
      incoming.on('data', (part: Buffer) => {
        if (over) return;
        stream.enqueue(part);
        if ((stream.desiredSize ?? 0) <= 0) incoming.pause();
      });
      incoming.on(
        'end',
        end(() => stream.close()),
      );
      incoming.on(
        'error',
        end(() => stream.error(new Error('the body broke off'))),
      );
      incoming.on(
        'close',
        end(() => stream.error(new Error('the body broke off'))),
      );
      incoming.pause();
    },
    pull() {
      incoming.resume();
    },
    cancel() {
      over = true;
      incoming.pause();
    },
  });
}

/** The request as the host takes it. `origin` is our own, whatever the request calls us. */
export function requestFrom(incoming: IncomingMessage, origin: string): Request {
  const headers = new Headers();
  for (const [name, value] of Object.entries(incoming.headers)) {
    if (typeof value === 'string') headers.set(name, value);
  }
  const method = incoming.method ?? 'GET';
  const init: RequestInit & { duplex: 'half' } = { method, headers, duplex: 'half' };
  if (method === 'POST') init.body = bodyOf(incoming) as unknown as RequestInit['body'];
  return new Request(`${origin}${incoming.url ?? '/'}`, init);
}

/** Sends an answer. Where the question was not read to its end the connection is closed behind it. */
export async function send(response: Response, incoming: IncomingMessage, outgoing: ServerResponse): Promise<void> {
  const bytes = Buffer.from(await response.arrayBuffer());
  for (const [name, value] of response.headers) outgoing.setHeader(name, value);
  outgoing.setHeader('content-length', bytes.length);
  const unread = !incoming.complete;
  if (unread) outgoing.setHeader('connection', 'close');
  outgoing.statusCode = response.status;
  outgoing.end(bytes, () => {
    if (unread) incoming.destroy();
  });
}
