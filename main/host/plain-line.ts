/**
 * Looks over the bytes of a journal's line once, without making anything of them: whether they are plainly canonical JSON (RFC 8785), and where the
 * hash stands. It says yes only to what needs no second look: printable ASCII without escapes, members in strictly rising order, numbers written out
 * with at most fifteen digits. To everything else it says nothing, and the general reader judges: it must never say yes to a line that reader refuses.
 */

/** Where the line's own hash stands, as offsets into the bytes; `from` is −1 where there is no such member with another behind it. */
export interface HashMember {
  /** The first byte of `"hash":"…",`. */
  from: number;
  /** The byte after its comma. */
  to: number;
}

const [quote, backslash, comma, colon, minus, point] = [34, 92, 44, 58, 45, 46] as const;
const [openList, closeList, openObject, closeObject] = [91, 93, 123, 125] as const;
const [nought, nine] = [48, 57] as const;

/** Decimals of at most so many digits are printed as they are read (IEEE 754 doubles tell all of them apart). */
const mostDigits = 15;
/** Below a millionth the canonical form has an exponent. */
const mostNoughts = 5;
const deepest = 40;

/** −1: not plain. Otherwise the byte after the string that begins at `at`, quotes included. */
function afterString(bytes: Uint8Array, at: number, end: number): number {
  if (bytes[at] !== quote) return -1;
  for (let i = at + 1; i < end; i++) {
    const byte = bytes[i] as number;
    if (byte === quote) return i + 1;
    if (byte === backslash || byte < 32 || byte > 126) return -1;
  }
  return -1;
}

/** The byte after a plain number; −1 for any other. */
function afterNumber(bytes: Uint8Array, from: number, end: number): number {
  let at = bytes[from] === minus ? from + 1 : from;
  const first = at;
  while (at < end && (bytes[at] as number) >= nought && (bytes[at] as number) <= nine) at++;
  let digits = at - first;
  if (digits === 0) return -1;
  const none = bytes[first] === nought;
  if (none && digits > 1) return -1;
  if (bytes[at] !== point) return digits > mostDigits || (none && first > from) ? -1 : at;
  const places = ++at;
  while (at < end && (bytes[at] as number) >= nought && (bytes[at] as number) <= nine) at++;
  digits += at - places;
  if (at === places || digits > mostDigits || bytes[at - 1] === nought) return -1;
  let noughts = 0;
  while (bytes[places + noughts] === nought) noughts++;
  return none && noughts > mostNoughts ? -1 : at;
}

function afterWord(bytes: Uint8Array, at: number, word: string): number {
  for (let i = 0; i < word.length; i++) if (bytes[at + i] !== word.charCodeAt(i)) return -1;
  return at + word.length;
}

function afterValue(bytes: Uint8Array, at: number, end: number, depth: number): number {
  const byte = bytes[at];
  if (byte === quote) return afterString(bytes, at, end);
  if (byte === openObject) return afterObject(bytes, at, end, depth, null);
  if (byte === openList) return afterList(bytes, at, end, depth);
  if (byte === 116) return afterWord(bytes, at, 'true');
  if (byte === 102) return afterWord(bytes, at, 'false');
  if (byte === 110) return afterWord(bytes, at, 'null');
  return afterNumber(bytes, at, end);
}

function afterList(bytes: Uint8Array, from: number, end: number, depth: number): number {
  if (depth > deepest) return -1;
  if (bytes[from + 1] === closeList) return from + 2;
  for (let at = from + 1; at < end; ) {
    at = afterValue(bytes, at, end, depth + 1);
    if (at < 0) return -1;
    if (bytes[at] === closeList) return at + 1;
    if (bytes[at] !== comma) return -1;
    at++;
  }
  return -1;
}

/** Whether the name at `a` stands before the one at `b`. */
function rises(bytes: Uint8Array, a: number, aEnd: number, b: number, bEnd: number): boolean {
  const least = Math.min(aEnd - a, bEnd - b);
  for (let i = 0; i < least; i++) {
    const step = (bytes[b + i] as number) - (bytes[a + i] as number);
    if (step !== 0) return step > 0;
  }
  return aEnd - a < bEnd - b;
}

const isHash = (bytes: Uint8Array, at: number): boolean =>
  bytes[at] === 104 && bytes[at + 1] === 97 && bytes[at + 2] === 115 && bytes[at + 3] === 104;

function afterObject(bytes: Uint8Array, from: number, end: number, depth: number, hash: HashMember | null): number {
  if (depth > deepest) return -1;
  if (bytes[from + 1] === closeObject) return from + 2;
  let [last, lastEnd] = [-1, -1];
  for (let at = from + 1; at < end; ) {
    const name = at + 1;
    const value = afterString(bytes, at, end);
    if (value < 0 || bytes[value] !== colon) return -1;
    const nameEnd = value - 1;
    if (last >= 0 && !rises(bytes, last, lastEnd, name, nameEnd)) return -1;
    [last, lastEnd] = [name, nameEnd];
    const next = afterValue(bytes, value + 1, end, depth + 1);
    if (next < 0) return -1;
    if (hash !== null && nameEnd - name === 4 && isHash(bytes, name) && bytes[next] === comma) {
      hash.from = at;
      hash.to = next + 1;
    }
    if (bytes[next] === closeObject) return next + 1;
    if (bytes[next] !== comma) return -1;
    at = next + 1;
  }
  return -1;
}

/**
 * Whether the bytes from `start` up to `end` are plainly the canonical form of one object; puts where its hash stands into `hash`.
 * False: they may be so all the same, and the general reader has to tell.
 */
export function isPlain(bytes: Uint8Array, start: number, end: number, hash: HashMember): boolean {
  hash.from = -1;
  hash.to = -1;
  return bytes[start] === openObject && afterObject(bytes, start, end, 0, hash) === end;
}
