/**
 * Canonical JSON and its hash: the one form in which an entry is written down and hashed. Must never write a second form of the same value.
 * Source: RFC 8785 (JSON Canonicalization Scheme), by the `canonicalize` package; SHA-256 by Node.
 */
import * as nodeCrypto from 'node:crypto';
import serialize from 'canonicalize';

/** The canonical text of a JSON value (RFC 8785). Throws on what JSON cannot say (NaN, half a surrogate pair, nothing at all). */
export function canonicalText(value: unknown): string {
  const text = serialize(value);
  if (text === undefined) throw new TypeError('a value without a canonical form');
  return text;
}

/** Members in UTF-16 order at every depth. Walked without making lists: every line of a journal passes here. */
function inOrder(value: unknown): boolean {
  if (value === null || typeof value !== 'object') return true;
  if (Array.isArray(value)) {
    for (const item of value) if (!inOrder(item)) return false;
    return true;
  }
  let before = '';
  // what JSON.parse gives has no members but its own
  for (const key in value) {
    if (key < before || !inOrder((value as Record<string, unknown>)[key])) return false;
    before = key;
  }
  return true;
}

/**
 * True when `text` is the canonical form of `value`, which must be what `JSON.parse(text)` gave. The engine's own writer is tried first, ten
 * times faster: it differs from the canonical form only in the order of members and in half surrogate pairs, and both are looked for.
 */
export function isCanonical(text: string, value: unknown): boolean {
  if (!text.includes('\\ud') && JSON.stringify(value) === text && inOrder(value)) return true;
  try {
    return canonicalText(value) === text;
  } catch {
    return false;
  }
}

const one = nodeCrypto.hash as typeof nodeCrypto.hash | undefined;

/** SHA-256 in small hexadecimal digits; text is taken as UTF-8. */
export const sha256: (data: string | Uint8Array) => string = one
  ? (data) => one('sha256', data, 'hex')
  : (data) => nodeCrypto.createHash('sha256').update(data).digest('hex');
