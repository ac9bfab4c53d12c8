/**
 * The way back from a backup, question by question: a file is brought or picked, looked into, and restored beside everything else as a new desk.
 * Nothing that is there is written over, and until the restored folder has its name nothing has changed.
 */
import { randomBytes } from 'node:crypto';
import { existsSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { AskOf, HostState, ReplyOf } from '../../../app/contract.ts';
import { bad, good, type Problem, problem, type Result } from '../../../app/core/result.ts';
import { broughtName, restoredName } from '../../../app/words/backups.ts';
import { flushFolder, onDisk, writeWhole } from '../disk.ts';
import { newDeskId } from '../end-marks-seen.ts';
import { folderFor } from '../folder-name.ts';
import { type JobName, type Jobs, makeAside, type Source } from './jobs.ts';
import { backupsIn, keyOf } from './places.ts';
import type { BackupNeeds } from './questions.ts';
import { howSealed } from './seal.ts';
import { maybeBackup } from './unpack.ts';

interface RestoringNeeds extends BackupNeeds {
  /** The installation's folder for what is only there for a while. */
  readonly asides: string;
  readonly run: <J extends JobName>(what: J, order: Jobs[J]['order']) => Promise<Result<Jobs[J]['done']>>;
  /** Every place a backup may lie in. */
  readonly everyPlace: () => readonly string[];
}

type RestoringQuestion = 'backup-bring' | 'backup-look' | 'restore';

export interface Restoring {
  readonly doing: { readonly [Q in RestoringQuestion]: (ask: AskOf<Q>) => Promise<Result<ReplyOf<Q>>> };
  readonly close: () => void;
}

export function makeRestoring(needs: RestoringNeeds): Restoring {
  const { inTurn, open, installation, openDir, shut, state, options, asides, run, everyPlace } = needs;
  const { documents, clock } = options;
  const looks = new Map<string, Source & { readonly mark: string; readonly target: string }>();
  let brought: { readonly key: string; readonly folder: string; readonly path: string } | null = null;

  const sourceOf = (key: string): Result<Omit<Source, 'opener'>> => {
    if (brought?.key === key) return good({ path: brought.path, file: broughtName });
    const found = everyPlace()
      .flatMap((place) => backupsIn(place))
      .find(({ path }) => keyOf(path) === key);
    return found ? good({ path: found.path, file: found.file }) : bad(problem('backup-gone', 'from'));
  };

  /** A folder that is not there yet, named after the daybook and the day. */
  const targetFor = (name: string): string => {
    const plain = folderFor(name);
    const named = restoredName(plain.ok ? plain.value : 'daybook', clock().slice(0, 10));
    for (let again = 1; ; again++) {
      const target = join(documents, again === 1 ? named : `${named} ${again}`);
      if (!existsSync(target)) return target;
    }
  };

  const dropBrought = () => {
    const old = brought;
    brought = null;
    if (old) onDisk(old.folder, () => rmSync(old.folder, { recursive: true, force: true }));
  };

  /**
   * Gives the restored folder its name and opens it. Before that the installation becomes another desk in this daybook: the numbers after the
   * backup's last line may be given out already.
   */
  const moveIn = (unpacked: string, target: string, daybookId: string): Result<HostState> => {
    const here = installation();
    if (!here.ok) return here;
    const before = open();
    const back = before?.folder;
    if (before) shut();
    const reopened = (refused: { readonly ok: false; readonly problems: readonly Problem[] }) => {
      if (back !== undefined) openDir(back);
      return refused;
    };
    const lock = here.value.lock(daybookId);
    if (!lock.ok) return reopened(lock);
    const moved = onDisk(target, () => {
      if (existsSync(target)) throw Object.assign(new Error('there already'), { code: 'EEXIST' });
      const memory = here.value.memoryOf(daybookId);
      const kept = here.value.keepMemory(daybookId, { desk: newDeskId(), marks: memory.marks }, memory.lost);
      if (!kept.ok) return kept;
      renameSync(unpacked, target);
      flushFolder(documents);
      return good(null);
    });
    lock.value.release();
    if (!moved.ok) return reopened(moved);
    if (!moved.value.ok) return reopened(moved.value);
    const book = openDir(target);
    return book.ok ? state() : book;
  };

  const doing: Restoring['doing'] = {
    'backup-bring': async (bytes) => {
      if (!maybeBackup(bytes)) return bad(problem('backup-not-ours', '', { file: broughtName }));
      const aside = makeAside(asides);
      if (!aside.ok) return aside;
      dropBrought();
      const path = join(aside.value, 'brought');
      const kept = onDisk(path, () => writeWhole(path, bytes, 0o600));
      brought = { key: randomBytes(9).toString('base64url'), folder: aside.value, path };
      if (kept.ok) return good({ key: brought.key, sealed: howSealed(bytes.subarray(0, 512)) });
      dropBrought();
      return kept;
    },
    'backup-look': async ({ from, opener = {} }) => {
      const source = sourceOf(from);
      if (!source.ok) return source;
      const here = await inTurn(() => good(open()?.folder ?? null));
      if (!here.ok) return here;
      const looked = await run('look', { ...source.value, opener, here: here.value });
      if (!looked.ok) return looked;
      const { holds, difference, mark } = looked.value;
      const key = randomBytes(9).toString('base64url');
      const target = targetFor(holds.name);
      looks.clear();
      looks.set(key, { ...source.value, opener, mark, target });
      return good({ look: key, holds, difference, into: target });
    },
    restore: async ({ look: key }) => {
      const looked = looks.get(key);
      if (!looked) return bad(problem('backup-look-gone', 'look'));
      const restored = await run('restore', looked);
      if (!restored.ok) return restored;
      const { unpacked, daybookId } = restored.value;
      const drop = () => onDisk(unpacked, () => rmSync(unpacked, { recursive: true, force: true }));
      const opened = await inTurn(() => moveIn(unpacked, looked.target, daybookId));
      if (!opened.ok) drop();
      else {
        looks.clear();
        dropBrought();
      }
      return opened;
    },
  };

  return { doing, close: dropBrought };
}
