/**
 * Signatures as they lie in a daybook: `signatures/<desk>.jsonl`, a line of canonical JSON for each end mark the desk signed. What is signed is that very
 * line without its member `signature`, so that anybody can cut it out and verify the rest. Reads only; it judges nothing about the chain.
 */
import { verify } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { id, moment } from '../../app/core/shapes.ts';
import { z } from '../../app/core/zod.ts';
import { canonicalText, isCanonical } from './canonical.ts';
import { publicKeyFrom } from './sign-key.ts';

const hash = z.string().regex(/^[0-9a-f]{64}$/);
/** Written in the one way that base64 has for these bytes. */
const base64 = z
  .string()
  .max(200)
  .refine((text) => text !== '' && Buffer.from(text, 'base64').toString('base64') === text);

/** One signed end mark. `entries` counts the lines it covers: all from the first to the one whose hash is `end_mark`. */
export const signedMark = z.strictObject({
  format: z.literal(1),
  daybook: z.string().min(1).max(80),
  desk: id,
  entries: z.number().int().min(1),
  end_mark: hash,
  /** When, by the clock of that machine: a moment. */
  signed: moment,
  /** The desk's public key: SubjectPublicKeyInfo in base64. */
  key: base64,
  /** Ed25519 over the line without this member, in base64. */
  signature: base64,
});
export type SignedMark = z.infer<typeof signedMark>;

export const signaturesFolder = (daybook: string): string => join(daybook, 'signatures');
export const signaturesPath = (daybook: string, desk: string): string => join(signaturesFolder(daybook), `${desk}.jsonl`);
const fileName = /^([a-z0-9][a-z0-9-]{5,63}?)(?:\.joined-[0-9a-f]+)?\.jsonl$/;

/** A line of a file of signatures: what it says, or null where it is no signature of this form. */
export interface SignatureLine {
  readonly file: string;
  /** Counted from 1 in its file. */
  readonly line: number;
  readonly mark: SignedMark | null;
}

/** What a desk signed, over all files that hold lines of it: by how much they cover. */
export interface DeskSignatures {
  readonly desk: string;
  readonly lines: readonly SignatureLine[];
  /** The last line of a file has no end: it was cut off, and is not among the lines. */
  readonly torn: boolean;
}

/** The bytes a signature is over. */
export const signedBytes = ({ signature: _, ...said }: SignedMark): Buffer => Buffer.from(canonicalText(said), 'utf8');

/** Whether the signature is that of its key over what the line says. */
export function holds(mark: SignedMark): boolean {
  const key = publicKeyFrom(mark.key);
  return key !== null && verify(null, signedBytes(mark), key, Buffer.from(mark.signature, 'base64'));
}

function readMark(text: string): SignedMark | null {
  try {
    const value: unknown = JSON.parse(text);
    const read = signedMark.safeParse(value);
    return read.success && isCanonical(text, value) ? read.data : null;
  } catch {
    return null;
  }
}

/** The names of the files of signatures in a daybook, with the desk each is of. */
export const signatureFiles = (daybook: string): readonly { readonly name: string; readonly desk: string }[] =>
  existsSync(signaturesFolder(daybook))
    ? readdirSync(signaturesFolder(daybook), { withFileTypes: true })
        .flatMap((file) => {
          const desk = fileName.exec(file.name)?.[1];
          return desk !== undefined && file.isFile() ? [{ name: file.name, desk }] : [];
        })
        .sort((a, b) => (a.name < b.name ? -1 : 1))
    : [];

/** Every whole line of a daybook's signatures as it stands, by desk; a line that lies in two files once. Throws when the disk does. */
export function signatureTexts(daybook: string): ReadonlyMap<string, readonly string[]> {
  const lines = new Map<string, string[]>();
  for (const { name, desk } of signatureFiles(daybook)) {
    const texts = readFileSync(join(signaturesFolder(daybook), name), 'utf8')
      .split('\n')
      .slice(0, -1);
    lines.set(desk, [...new Set([...(lines.get(desk) ?? []), ...texts])]);
  }
  return lines;
}

/** Every desk's signatures. Throws when the disk does. */
export function readSignatures(daybook: string): ReadonlyMap<string, DeskSignatures> {
  const found = new Map<string, { lines: SignatureLine[]; torn: boolean; seen: Set<string> }>();
  for (const { name, desk } of signatureFiles(daybook)) {
    const at = found.get(desk) ?? { lines: [], torn: false, seen: new Set<string>() };
    found.set(desk, at);
    const texts = readFileSync(join(signaturesFolder(daybook), name), 'utf8').split('\n');
    if (texts.pop() !== '') at.torn = true;
    texts.forEach((text, i) => {
      // the same line may lie in two files after two folders were joined
      if (at.seen.has(text)) return;
      at.seen.add(text);
      at.lines.push({ file: name, line: i + 1, mark: readMark(text) });
    });
  }
  return new Map(
    [...found].map(([desk, { lines, torn }]) => [
      desk,
      { desk, torn, lines: lines.sort((a, b) => (a.mark?.entries ?? 0) - (b.mark?.entries ?? 0)) },
    ]),
  );
}
