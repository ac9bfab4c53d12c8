/** Backups for tests: a small daybook and a backup of it made by the job alone, and the files of a folder by their paths in it. */
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Result } from '../../app/core/result.ts';
import { type Job, type Jobs, runJob } from '../../main/host/backup/jobs.ts';
import { aHost, bookIn } from './a-host.ts';
import { keeper, note, now } from './drafts.ts';
import { temporaryFolder } from './folder.ts';

/** The value, or the problems as an error. */
export function valueIn<T>(answer: Result<unknown>): T {
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer.value as T;
}

/** Every plain file below a folder, by its path in it, as hexadecimal text of its bytes. */
export function filesBelow(folder: string): Record<string, string> {
  const files: Record<string, string> = {};
  for (const one of readdirSync(folder, { withFileTypes: true, recursive: true })) {
    const path = join(one.parentPath, one.name);
    if (one.isFile()) files[path.slice(folder.length + 1)] = readFileSync(path).toString('hex');
  }
  return files;
}

export const job = (one: Job): Promise<Result<unknown>> => runJob(one);

/** A closed daybook of three entries, and the order for a backup of it into an empty folder. */
export async function readyToBackUp(more: Partial<Jobs['backup']['order']> = {}) {
  const a = aHost();
  const book = bookIn(await a.ask('open', { make: 'Test Battery' }));
  for (const draft of [keeper, note(1), note(2)]) valueIn(await a.ask('keep', draft));
  const { desks } = bookIn(await a.ask('state'));
  await a.host.close();
  const into = join(temporaryFolder(), 'backups');
  mkdirSync(into);
  const order: Jobs['backup']['order'] = {
    folder: book.folder,
    daybook: { id: book.id, name: book.name },
    ownDesk: book.ownDesk,
    desks,
    into,
    sealing: { how: 'none' },
    now,
    why: 'asked',
    program: '0.1.0',
    // the work of a passphrase is small here, which the format allows
    logN: 12,
    ...more,
  };
  return { order, asides: temporaryFolder(), folder: book.folder, into: order.into };
}

/** The same, with the backup made. */
export async function backedUp(more: Partial<Jobs['backup']['order']> = {}) {
  const ready = await readyToBackUp(more);
  const { file } = valueIn<Jobs['backup']['done']>(await job({ job: 'backup', asides: ready.asides, order: ready.order }));
  return { ...ready, file, path: join(ready.into, file) };
}
