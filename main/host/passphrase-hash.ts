/**
 * A passphrase as it is kept: never itself, only its scrypt (RFC 7914) with a salt of its own and the costs it was made with. Costs are those of common
 * practice for a passphrase somebody types (N 2^17, r 8, p 1: 128 MB and some tenths of a second here).
 */
import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { z } from '../../app/core/zod.ts';

export const hashed = z.strictObject({
  /** Salt and derived key in base64; costs as RFC 7914 names them. */
  salt: z.string().min(16).max(200),
  key: z.string().min(16).max(200),
  N: z
    .number()
    .int()
    .min(1024)
    .max(2 ** 20),
  r: z.number().int().min(1).max(16),
  p: z.number().int().min(1).max(16),
});
export type Hashed = z.infer<typeof hashed>;

const costs = { N: 2 ** 17, r: 8, p: 1 };
const keyBytes = 32;

// the same letters may come composed or not, by keyboard and system
const bytesOf = (passphrase: string): Buffer => Buffer.from(passphrase.normalize('NFKC'), 'utf8');

const derived = (passphrase: string, { salt, N, r, p }: Omit<Hashed, 'key'>): Promise<Buffer> =>
  new Promise((resolve, reject) => {
    const maxmem = 256 * N * r + 2 ** 20;
    scrypt(bytesOf(passphrase), Buffer.from(salt, 'base64'), keyBytes, { N, r, p, maxmem }, (error, key) =>
      error ? reject(error) : resolve(key),
    );
  });

/** What is kept of a passphrase. */
export async function hashOf(passphrase: string): Promise<Hashed> {
  const made = { ...costs, salt: randomBytes(16).toString('base64') };
  return { ...made, key: (await derived(passphrase, made)).toString('base64') };
}

/** Whether this is the passphrase: compared in constant time. */
export async function matches(passphrase: string, kept: Hashed): Promise<boolean> {
  const [ours, theirs] = [Buffer.from(kept.key, 'base64'), await derived(passphrase, kept)];
  return ours.length === theirs.length && timingSafeEqual(ours, theirs);
}
