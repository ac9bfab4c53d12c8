/**
 * Who may in at the loopback address: a one-time key in the printed address, exchanged once for a session in a cookie. Both are random, live in
 * memory only, and are compared in constant time.
 */
import { randomBytes, timingSafeEqual } from 'node:crypto';

const secret = (): string => randomBytes(32).toString('base64url');

function equal(a: string, b: string): boolean {
  const [left, right] = [Buffer.from(a), Buffer.from(b)];
  return left.length === right.length && timingSafeEqual(left, right);
}

export interface Gate {
  /** A new one-time key; earlier keys that were not used stop working. */
  readonly newKey: () => string;
  /** Exchanges the key, once, for the `Set-Cookie` line of a session; null when it is not the key or was used. */
  readonly enter: (key: string) => string | null;
  /** Whether this `Cookie` header carries a session of ours. */
  readonly knows: (cookies: string) => boolean;
}

/** A gate for the window at this port. The cookie carries the port in its name: cookies are shared between ports of one host. */
export function makeGate(port: number): Gate {
  const cookie = `daybook-${port}`;
  const sessions = new Set<string>();
  let key: string | null = null;
  return {
    newKey: () => {
      key = secret();
      return key;
    },
    enter: (given) => {
      if (key === null || !equal(given, key)) return null;
      key = null;
      const session = secret();
      sessions.add(session);
      return `${cookie}=${session}; HttpOnly; SameSite=Strict; Path=/`;
    },
    knows: (cookies) =>
      cookies.split(';').some((pair) => {
        const [name = '', value = ''] = pair.trim().split('=', 2);
        return name === cookie && [...sessions].some((session) => equal(value, session));
      }),
  };
}
