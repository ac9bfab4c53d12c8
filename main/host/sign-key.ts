/**
 * The key a desk signs with (Ed25519, RFC 8032): made once, kept in the installation's state folder and never in a daybook, readable by its user alone.
 * A key that is there and cannot be read is never replaced: another key in its place would pass for this desk.
 */
import { createHash, createPrivateKey, createPublicKey, generateKeyPairSync, type KeyObject, randomBytes } from 'node:crypto';
import { existsSync, linkSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { bad, good, problem, type Result } from '../../app/core/result.ts';
import { errorCode, flushFolder, makeFolder, onDisk, writeWhole } from './disk.ts';

export interface DeskKey {
  readonly secret: KeyObject;
  /** The public half as it stands beside every signature: its SubjectPublicKeyInfo (RFC 8410) in base64. */
  readonly key: string;
}

/** Where a desk's key lies. A desk's id has the shape of an id, so it names a file in that folder and nowhere else. */
export const keyPath = (home: string, desk: string): string => join(home, 'keys', `${desk}.pem`);

const publicOf = (secret: KeyObject): string =>
  createPublicKey(secret).export({ format: 'der', type: 'spki' }).toString('base64');

/** The public key in this text, or null where it is none of this sort. */
export function publicKeyFrom(key: string): KeyObject | null {
  try {
    const read = createPublicKey({ key: Buffer.from(key, 'base64'), format: 'der', type: 'spki' });
    return read.asymmetricKeyType === 'ed25519' ? read : null;
  } catch {
    return null;
  }
}

/** A public key's fingerprint: the SHA-256 of its bytes, 64 characters. */
export const fingerprintOf = (key: string): string => createHash('sha256').update(Buffer.from(key, 'base64')).digest('hex');

function readKey(path: string): Result<DeskKey> {
  const read = onDisk(path, () => readFileSync(path, 'utf8'));
  if (!read.ok) return read;
  try {
    const secret = createPrivateKey(read.value);
    if (secret.asymmetricKeyType === 'ed25519') return good({ secret, key: publicOf(secret) });
  } catch {
    // told below: what stands there is no key
  }
  return bad(problem('key-unreadable', '', { path }));
}

/** The desk's key if it was made before; null where none is. Problems: `key-unreadable`, those of the disk. */
export function keyMade(home: string, desk: string): Result<DeskKey | null> {
  const path = keyPath(home, desk);
  return existsSync(path) ? readKey(path) : good(null);
}

/** The desk's key, made on first use: whole, even when two processes want it at once. Problems: `key-unreadable`, those of the disk. */
export function keyOfDesk(home: string, desk: string): Result<DeskKey> {
  const path = keyPath(home, desk);
  if (!existsSync(path)) {
    const made = onDisk(path, () => {
      const folder = join(home, 'keys');
      makeFolder(folder, 0o700);
      const aside = `${path}.${randomBytes(6).toString('hex')}`;
      const { privateKey } = generateKeyPairSync('ed25519');
      writeWhole(aside, privateKey.export({ format: 'pem', type: 'pkcs8' }), 0o600);
      try {
        linkSync(aside, path);
      } catch (error) {
        // a file system without links
        if (errorCode(error) !== 'EEXIST' && !existsSync(path)) renameSync(aside, path);
      }
      rmSync(aside, { force: true });
      flushFolder(folder);
    });
    if (!made.ok) return made;
  }
  return readKey(path);
}
