/** Why a daybook opens for reading only: what of its record or its folder speaks against writing, and the notice that says so. */
import { accessSync, constants, existsSync } from 'node:fs';
import type { Notice } from '../../app/contract.ts';
import { type Problem, problem } from '../../app/core/result.ts';
import type { Daybook } from './daybook-folder.ts';
import { onDisk } from './disk.ts';
import { desksFolder, journalPath } from './journal-writer.ts';

/** Why a daybook that was read cannot be written as `own`; null when nothing in it speaks against it. */
export function unfit({ info, desks, notices }: Daybook, own: string): Problem | null {
  for (const { desk, fault, newer, missing } of desks) {
    if (fault) return problem('chain-broken', '', { desk, line: fault.line, cause: fault.cause });
    if (newer) return problem('newer-format', '', { desk, line: newer.line, format: newer.format });
    // lines of another desk may still be on their way; our own were written here
    const [gap] = missing ?? [];
    if (desk === own && gap) return problem('chain-broken', '', { desk, line: gap.from, cause: 'line-missing' });
  }
  return notices.some((n) => n.code === 'newer-format') ? problem('newer-format', '', { format: info.format }) : null;
}

/** Why the folder cannot be written, as far as the system tells before trying. */
export function unwritable(folder: string, desk: string): Problem | null {
  const paths = [existsSync(desksFolder(folder)) ? desksFolder(folder) : folder, journalPath(folder, desk)];
  for (const path of paths) {
    const may = onDisk(path, () => (existsSync(path) ? accessSync(path, constants.W_OK) : undefined));
    if (!may.ok) return may.problems[0] ?? null;
  }
  return null;
}

/** The notice a refusal to write is shown as; the broken chain and the newer format already have theirs. */
export function noticeOf({ code, data = {} }: Problem): Notice[] {
  if (code === 'chain-broken' && data.cause === 'line-missing')
    return [{ code: 'broken-chain', desk: String(data.desk), line: Number(data.line), detail: 'line-missing' }];
  if (code === 'chain-broken' || code === 'newer-format') return [];
  if (code === 'elsewhere-open') return [{ code, detail: `${data.pid} ${data.host}` }];
  return [{ code: 'not-writable', detail: code }];
}
