/**
 * Sealing a backup in the open age format (age-encryption.org/v1), to a key (X25519) or with a passphrase (scrypt), and opening it again. The
 * format is the library's; what is sealed here opens with any program for it, and the other way round.
 */
import { Decrypter, Encrypter, generateX25519Identity, identityToRecipient } from 'age-encryption';
import { bad, good, problem, type Result } from '../../../app/core/result.ts';

/** How backups of a daybook are sealed. */
export type Sealing =
  | { readonly how: 'none' }
  | { readonly how: 'recipient'; readonly recipient: string }
  | { readonly how: 'passphrase'; readonly passphrase: string };

/** What opens a sealed backup. */
export interface Opener {
  readonly passphrase?: string | undefined;
  /** A secret key, as it stands in its file. */
  readonly identity?: string | undefined;
}

export type HowSealed = 'none' | 'key' | 'passphrase' | 'armored';

type Bytes = ReadableStream<Uint8Array>;

/** A new pair: the secret key is for its owner alone, the other is all a machine needs to seal. */
export async function newKeyPair(): Promise<{ identity: string; recipient: string }> {
  const identity = await generateX25519Identity();
  return { identity, recipient: await identityToRecipient(identity) };
}

/** A recipient's key as it is written ("age1…", X25519); `backup-recipient` where it is none. */
export function recipientFrom(text: string): Result<string> {
  const recipient = text.trim();
  try {
    if (!/^age1[a-z0-9]{58}$/.test(recipient)) throw new Error('not of this kind');
    new Encrypter().addRecipient(recipient);
    return good(recipient);
  } catch {
    return bad(problem('backup-recipient', 'recipient'));
  }
}

/** The secret key in a text, which may be a whole key file with its remarks; `backup-identity` where there is none. */
export function identityFrom(text: string): Result<string> {
  const found = /AGE-SECRET-KEY-1[A-Z0-9]{58}/.exec(text.toUpperCase())?.[0];
  try {
    if (found === undefined) throw new Error('none there');
    new Decrypter().addIdentity(found);
    return good(found);
  } catch {
    return bad(problem('backup-identity', 'identity'));
  }
}

/** Tells from the first bytes of a file how it is sealed. */
export function howSealed(first: Uint8Array): HowSealed {
  const head = Buffer.from(first.subarray(0, 60)).toString('latin1');
  if (head.startsWith('-----BEGIN AGE ENCRYPTED FILE-----')) return 'armored';
  if (!head.startsWith('age-encryption.org/')) return 'none';
  return head.includes('\n-> scrypt ') ? 'passphrase' : 'key';
}

/**
 * Seals a stream, and answers with it what opens it once more for reading it back. For a key that is a second one made for this file alone and
 * forgotten afterwards, since the secret key is not on this machine. `logN` is the work of the passphrase: the library's own where left out.
 */
export async function sealed(stream: Bytes, sealing: Sealing, logN?: number): Promise<{ stream: Bytes; opener: Opener }> {
  if (sealing.how === 'none') return { stream, opener: {} };
  const sealer = new Encrypter();
  if (sealing.how === 'passphrase') {
    sealer.setPassphrase(sealing.passphrase);
    if (logN !== undefined) sealer.setScryptWorkFactor(logN);
    return { stream: await sealer.encrypt(stream), opener: { passphrase: sealing.passphrase } };
  }
  const once = await newKeyPair();
  sealer.addRecipient(sealing.recipient);
  sealer.addRecipient(once.recipient);
  return { stream: await sealer.encrypt(stream), opener: { identity: once.identity } };
}

/** Opens a sealed stream. Problems: `backup-needs-key`, `backup-needs-passphrase`, `backup-wrong-key`, `backup-armored`, `backup-damaged`. */
export async function opened(stream: Bytes, how: HowSealed, opener: Opener, file: string): Promise<Result<Bytes>> {
  if (how === 'none') return good(stream);
  if (how === 'armored') return bad(problem('backup-armored', 'from', { file }));
  const { passphrase = '', identity = '' } = opener;
  if (how === 'passphrase' && passphrase === '') return bad(problem('backup-needs-passphrase', 'passphrase'));
  if (how === 'key' && identity.trim() === '') return bad(problem('backup-needs-key', 'identity'));
  const reader = new Decrypter();
  if (how === 'passphrase') reader.addPassphrase(passphrase);
  else {
    const key = identityFrom(identity);
    if (!key.ok) return key;
    reader.addIdentity(key.value);
  }
  try {
    return good(await reader.decrypt(stream));
  } catch (error) {
    const wrong = error instanceof Error && /no identity matched/.test(error.message);
    if (wrong) return bad(problem('backup-wrong-key', how === 'key' ? 'identity' : 'passphrase', { how }));
    return bad(problem('backup-damaged', 'from', { file, where: 'seal' }));
  }
}
