/**
 * Verifies what desks signed against the chain: every signature by its own key, the key from one to the next, and that the mark stands in the journal where
 * the signature says. Reads only. A desk that signed nothing is no fault.
 */
import { type Problem, problem } from '../../app/core/result.ts';
import type { CoveredDesk } from '../../app/papers/paper.ts';
import { signatureTexts } from '../../app/words/signatures.ts';
import type { Daybook } from './daybook-folder.ts';
import { onDisk } from './disk.ts';
import { fingerprintOf } from './sign-key.ts';
import { type DeskSignatures, holds, readSignatures, type SignedMark } from './sign-lines.ts';

/** Something wrong with a signature: the line of the journal it is about, where it says one. */
export interface SignatureFault {
  readonly desk: string;
  readonly line: number;
  readonly problem: Problem;
}

/** What a desk signed, as far as it holds. */
export interface DeskSigned {
  readonly desk: string;
  /** Signatures that hold. */
  readonly signatures: number;
  /** Lines the last of them covers. */
  readonly entries: number;
  /** When that was: a moment. */
  readonly signed: string;
  /** Fingerprint of the key of the first signature, 64 characters. */
  readonly key: string;
}

type Desks = Pick<Daybook, 'info' | 'desks' | 'entries'>;

/** The hash of each signed line, by desk and number, as the chain has it. */
function hashesOf(
  signatures: ReadonlyMap<string, DeskSignatures>,
  { entries }: Desks,
): (desk: string, n: number) => string | undefined {
  const wanted = new Set(
    [...signatures.values()].flatMap(({ desk, lines }) => lines.map(({ mark }) => `${desk} ${mark?.entries}`)),
  );
  const found = new Map<string, string>();
  for (const { desk, n, hash } of entries) if (wanted.has(`${desk} ${n}`)) found.set(`${desk} ${n}`, hash);
  return (desk, n) => found.get(`${desk} ${n}`);
}

/** Why a signed mark is not to be found in the chain; null where it is, or where that cannot be known because the chain is not read so far. */
function astray(mark: SignedMark, there: string | undefined, desk: Daybook['desks'][number] | undefined): Problem | null {
  const data = { desk: mark.desk, entries: mark.entries };
  if (there === mark.end_mark) return null;
  if (there !== undefined) return problem('signed-differs', '', data);
  // the broken or unread line is told by itself
  if (desk?.fault || desk?.newer || desk?.fork) return null;
  return problem('signed-gone', '', { ...data, here: desk?.entries ?? 0 });
}

/** Verifies every signature in a daybook's folder. */
export function checkSignatures(
  folder: string,
  daybook: Desks,
): { readonly faults: readonly SignatureFault[]; readonly desks: readonly DeskSigned[]; readonly torn: readonly string[] } {
  const read = onDisk(folder, () => readSignatures(folder));
  if (!read.ok) return { faults: read.problems.map((p) => ({ desk: '', line: 0, problem: p })), desks: [], torn: [] };
  const hashAt = hashesOf(read.value, daybook);
  const faults: SignatureFault[] = [];
  const signed: DeskSigned[] = [];
  for (const { desk, lines } of read.value.values()) {
    let first: SignedMark | null = null;
    let last: SignedMark | null = null;
    let count = 0;
    let key = '';
    const fault = (line: number, what: Problem) => void faults.push({ desk, line, problem: what });
    for (const { file, line, mark } of lines) {
      if (mark === null) {
        fault(0, problem('signature-unreadable', '', { desk, file, line }));
        continue;
      }
      const about = { desk, entries: mark.entries };
      if (mark.desk !== desk || mark.daybook !== daybook.info.id) {
        fault(mark.entries, problem('signature-astray', '', { ...about, file, line }));
        continue;
      }
      if (!holds(mark)) {
        fault(mark.entries, problem('signature-wrong', '', { ...about, file, line }));
        continue;
      }
      const why = astray(
        mark,
        hashAt(desk, mark.entries),
        daybook.desks.find((d) => d.desk === desk),
      );
      if (why) fault(mark.entries, why);
      first ??= mark;
      if (key !== '' && key !== mark.key)
        fault(mark.entries, problem('key-changed', '', { ...about, before: fingerprintOf(key), after: fingerprintOf(mark.key) }));
      key = mark.key;
      if (why) continue;
      count += 1;
      last = mark;
    }
    if (first && last)
      signed.push({ desk, signatures: count, entries: last.entries, signed: last.signed, key: fingerprintOf(first.key) });
  }
  const torn = [...read.value.values()].filter((d) => d.torn).map((d) => d.desk);
  return { faults, desks: signed, torn };
}

/**
 * The desks a paper covers, with the fingerprint of the key each signed with last. To print quickly only the last signature of a desk is verified here; one
 * that does not hold, or a key that changed, is told among the reservations.
 */
export function withKeys(folder: string, desks: readonly CoveredDesk[]): CoveredDesk[] {
  const read = onDisk(folder, () => readSignatures(folder));
  if (!read.ok) return [...desks];
  return desks.map((desk) => {
    const marks = (read.value.get(desk.desk)?.lines ?? []).flatMap(({ mark }) => (mark ? [mark] : []));
    const last = marks.at(-1);
    if (!last) return desk;
    const sound = holds(last) && last.desk === desk.desk && marks.every(({ key }) => key === last.key);
    return sound
      ? { ...desk, key: fingerprintOf(last.key), signed: last.entries }
      : { ...desk, leftOut: [...(desk.leftOut ?? []), signatureTexts.doubtful(desk.desk)] };
  });
}
