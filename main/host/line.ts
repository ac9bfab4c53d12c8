/**
 * One line of a journal: how an entry is written, and how a line that is already there is verified. The rule of the chain (canonical bytes, hash,
 * desk, number, `prev`) holds for every format number, so a damaged line is never taken for one of a newer program; only what a line may say
 * changes with the format. Method: design of the record, section 3; RFC 8785; SHA-256.
 */
import { type Draft, type Entry, entry as entrySchema, formatNumber } from '../../app/core/entry.ts';
import { bodyProblems, isKind } from '../../app/core/kinds/index.ts';
import { problemsIn } from '../../app/core/read.ts';
import type { Problem } from '../../app/core/result.ts';
import { isId } from '../../app/core/shapes.ts';
import { isMoment } from '../../app/core/time.ts';
import { canonicalText, isCanonical, sha256 } from './canonical.ts';

/** Where the next line of a desk goes: the desk, its number from 1, and the hash of the line before it. */
export interface Place {
  readonly desk: string;
  readonly n: number;
  readonly prev: string;
}

/** What can be wrong with a complete line. */
export const lineCauses = [
  'not-text',
  'not-json',
  'not-canonical',
  'wrong-hash',
  'wrong-desk',
  'wrong-number',
  'wrong-prev',
  'not-an-entry',
  'line-end',
] as const;
export type LineCause = (typeof lineCauses)[number];

/** A verified line, one a newer program wrote (its chain holds, its content is left alone), or why it cannot be one. */
export type LineRead =
  | { readonly is: 'entry'; readonly entry: Entry }
  | { readonly is: 'newer'; readonly format: number }
  | { readonly is: 'fault'; readonly cause: LineCause; readonly problems: readonly Problem[] };

/** The entry a draft becomes at its place, and its line without the newline. `written` is the machine's clock, a moment with offset. */
export function lineFor(draft: Draft, place: Place, written: string): { entry: Entry; line: string } {
  const bare = { ...draft, format: formatNumber, desk: place.desk, n: place.n, prev: place.prev, written };
  const line = canonicalText({ ...bare, hash: sha256(canonicalText(bare)) });
  return { entry: JSON.parse(line) as Entry, line };
}

const fault = (cause: LineCause, problems: readonly Problem[] = []): LineRead => ({ is: 'fault', cause, problems });

/** The hash a canonical line should carry. */
function hashOf(text: string, value: Readonly<Record<string, unknown>>): string {
  // in a canonical line of ours nothing behind the top-level hash has a member of that name: cutting it out gives the hashed bytes
  const member = `"hash":${JSON.stringify(value.hash)},`;
  const at = text.lastIndexOf(member);
  const cut = at < 0 ? '' : sha256(text.slice(0, at) + text.slice(at + member.length));
  if (cut === value.hash) return cut;
  const { hash: _, ...bare } = value;
  return sha256(canonicalText(bare));
}

/**
 * Whether an envelope is plainly one of ours, without anything optional: its place in the chain was verified already. False: the schema has to tell.
 * It must never say yes to what the schema refuses (`test/host/plain-line.test.ts`).
 */
function isPlainEnvelope(line: Readonly<Record<string, unknown>>): boolean {
  const { by, id, kind, happened, written, body } = line;
  return (
    Object.keys(line).length === 11 &&
    line.format === formatNumber &&
    typeof id === 'string' &&
    isId(id) &&
    (by === null || (typeof by === 'string' && isId(by))) &&
    typeof kind === 'string' &&
    isKind(kind) &&
    typeof happened === 'string' &&
    isMoment(happened) &&
    typeof written === 'string' &&
    (written === happened || isMoment(written)) &&
    typeof body === 'object' &&
    body !== null &&
    !Array.isArray(body)
  );
}

/**
 * Verifies the text of one complete line (without its newline) against the place it stands in.
 * @param plain The hash its bytes have, where they were found to be plainly canonical (`plain-line.ts`). Given only by a reader that began with the
 * desk's first line and verified every line up to this one; a line by itself gets null.
 */
export function readLine(text: string, place: Place, plain: string | null = null): LineRead {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return fault('not-json');
  }
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return fault('not-json');
  const line = value as Record<string, unknown>;
  if (plain === null && !isCanonical(text, line)) return fault('not-canonical');
  if ((plain ?? hashOf(text, line)) !== line.hash) return fault('wrong-hash');
  if (line.desk !== place.desk) return fault('wrong-desk');
  if (line.n !== place.n) return fault('wrong-number');
  if (line.prev !== place.prev) return fault('wrong-prev');
  if (typeof line.format === 'number' && Number.isSafeInteger(line.format) && line.format > formatNumber) {
    return { is: 'newer', format: line.format };
  }
  // a journal read from its first line on has held the desk's name against the schema there, and the chain carries number and hashes on
  if (plain === null || place.n <= 1 || !isPlainEnvelope(line)) {
    const outer = problemsIn(entrySchema, line);
    if (outer.length > 0) return fault('not-an-entry', outer);
  }
  // what every line repeats is held once: a large journal is a fifth smaller in memory for it
  line.desk = place.desk;
  line.prev = place.prev;
  if (line.written === line.happened) line.written = line.happened;
  const entry = line as unknown as Entry;
  const { kind, body } = entry;
  // the schemas only look and change nothing, so the line itself is the entry, members in the order they stand on disk
  // a kind this program does not know was written by a newer one: it is carried
  const inner = isKind(kind) ? bodyProblems(kind, body) : [];
  return inner.length > 0 ? fault('not-an-entry', inner) : { is: 'entry', entry };
}
