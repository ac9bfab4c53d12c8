/**
 * What a restored daybook holds, looked at in full: every desk's chain, the end marks the backup was made at, every piece of evidence by the hash it
 * is named by, every closing by its files and figures. Reads only.
 */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { BackupFindings } from '../../../app/contract.ts';
import { holdsMark } from '../../../app/core/book/closings.ts';
import { evidenceName } from '../../../app/core/entry.ts';
import { good, type Problem, problem, type Result } from '../../../app/core/result.ts';
import { checkClosings } from '../closing-check.ts';
import { closingFiles } from '../closing-files.ts';
import { evidenceFolder, readDaybook } from '../daybook-folder.ts';
import { onDisk } from '../disk.ts';
import { hasEvidence } from '../evidence.ts';
import type { Manifest } from './manifest.ts';
import { measured } from './snapshot.ts';

const evidenceFiles = (folder: string): readonly string[] =>
  existsSync(evidenceFolder(folder))
    ? readdirSync(evidenceFolder(folder)).filter((name) => evidenceName.safeParse(name).success)
    : [];

/** Looks at the daybook in `folder` that was restored from a backup with this manifest. Problems: those of `readDaybook`. */
export function findingsOf(folder: string, about: Manifest): Result<BackupFindings> {
  const read = readDaybook(folder);
  if (!read.ok) return read;
  const { desks, entries, info } = read.value;
  const faults: Problem[] = [];
  for (const { desk, fault, fork, missing } of desks) {
    if (fault) faults.push(problem('chain-broken', '', { desk, line: fault.line, cause: fault.cause }));
    for (const { from, to } of missing ?? []) faults.push(problem('lines-missing', '', { desk, line: from, to }));
    if (fork) faults.push(problem('desk-forked', '', { desk, line: fork.line }));
  }
  for (const mark of about.desks)
    if (mark.entries > 0 && !holdsMark(entries, mark))
      faults.push(problem('backup-mark', '', { desk: mark.desk, entries: mark.entries }));
  if (info.id !== about.daybook.id) faults.push(problem('backup-damaged', '', { file: 'daybook.json', where: 'id' }));
  const evidence = evidenceFiles(folder);
  for (const file of evidence) {
    const sum = onDisk(file, () => measured(join(evidenceFolder(folder), file)).sha256);
    if (!sum.ok || sum.value !== file.slice(0, 64)) faults.push(problem('evidence-changed', '', { file }));
  }
  const named = new Set(entries.flatMap((entry) => (entry.evidence ?? []).map(({ file }) => file)));
  for (const file of named) if (!hasEvidence(folder, file)) faults.push(problem('evidence-gone', '', { file }));
  const closings = checkClosings(folder, entries);
  for (const { code, data } of closings.faults) faults.push(problem(code, '', data));
  return good({
    name: info.name,
    made: about.made,
    entries: entries.length,
    desks: desks.map(({ desk, entries: n, endMark }) => ({ desk, entries: n, endMark })),
    evidence: evidence.length,
    closings: closingFiles(folder).length,
    files: about.files.length,
    bytes: about.files.reduce((sum, { bytes }) => sum + bytes, 0),
    faults,
  });
}
