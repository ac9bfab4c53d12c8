/**
 * Evidence kept beside the book: pictures and documents, each named by the SHA-256 of its bytes. What a file is, its content says, never its
 * sender. A file that no longer has the hash it is named by is not handed out.
 */
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { evidenceName } from '../../app/core/entry.ts';
import { bad, good, problem, type Result } from '../../app/core/result.ts';
import { sha256 } from './canonical.ts';
import { evidenceFolder } from './daybook-folder.ts';
import { diskProblem, makeFolder, writeWhole } from './disk.ts';

/** First bytes of the formats that are taken: PNG (ISO/IEC 15948, 5.2), JPEG (ITU-T T.81, B.1.1.3: start of image), PDF (ISO 32000-1, 7.5.2). */
const formats = [
  { ending: 'png', type: 'image/png', first: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a] },
  { ending: 'jpg', type: 'image/jpeg', first: [0xff, 0xd8, 0xff] },
  { ending: 'pdf', type: 'application/pdf', first: [0x25, 0x50, 0x44, 0x46, 0x2d] },
] as const;

/** Keeps a file and answers its name, after it is flushed to disk. Keeping the same bytes again answers the same name. */
export function keepEvidence(daybook: string, bytes: Uint8Array): Result<string> {
  const format = formats.find(({ first }) => first.every((byte, i) => bytes[i] === byte));
  if (!format) return bad(problem('evidence-kind', ''));
  const file = `${sha256(bytes)}.${format.ending}`;
  const folder = evidenceFolder(daybook);
  const path = join(folder, file);
  try {
    if (!hasEvidence(daybook, file) || sha256(readFileSync(path)) !== file.slice(0, 64)) {
      makeFolder(folder);
      writeWhole(path, bytes);
    }
    return good(file);
  } catch (error) {
    return bad(diskProblem(error, path));
  }
}

/** Whether a file of this name lies in the daybook. Names that are no evidence names never do. */
export function hasEvidence(daybook: string, file: string): boolean {
  if (!evidenceName.safeParse(file).success) return false;
  return statSync(join(evidenceFolder(daybook), file), { throwIfNoEntry: false })?.isFile() ?? false;
}

/** The bytes of a kept file and its media type; null when there is none of that name. */
export function evidenceAt(daybook: string, file: string): Result<{ bytes: Uint8Array; type: string }> | null {
  if (!hasEvidence(daybook, file)) return null;
  const path = join(evidenceFolder(daybook), file);
  try {
    const bytes = readFileSync(path);
    if (sha256(bytes) !== file.slice(0, 64)) return bad(problem('evidence-changed', '', { file }));
    return good({ bytes, type: formats.find(({ ending }) => file.endsWith(ending))?.type ?? 'application/octet-stream' });
  } catch (error) {
    return bad(diskProblem(error, path));
  }
}
