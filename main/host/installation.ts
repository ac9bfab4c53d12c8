/**
 * What one installation keeps outside every daybook: its desk, the daybooks it has opened and how far it saw them, its loopback port, its locks. The desk's id is random
 * and made once; if its file cannot be read nothing is made up in its place, because another desk would then write on as this one.
 */
import { randomBytes } from 'node:crypto';
import { existsSync, linkSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { bad, good, type Problem, problem, type Result } from '../../app/core/result.ts';
import { id } from '../../app/core/shapes.ts';
import { z } from '../../app/core/zod.ts';
import { errorCode, flushFolder, makeFolder, onDisk, writeWhole } from './disk.ts';
import { type DaybookMemory, newDeskId, readMemory, writeMemory } from './end-marks-seen.ts';
import { type Lock, takeLock } from './lock.ts';

const deskFile = z.object({ desk: id });
/** The number of everything kept in this folder, said in desk.json; a file without one is of the first. */
const homeFormat = 1;
const newerHome = z.object({ format: z.number().int().gt(homeFormat) });
const recentsFile = z.object({ recents: z.array(z.object({ key: z.string(), name: z.string(), folder: z.string() })) });
const portFile = z.object({ port: z.number().int().min(1).max(65535) });
/** A daybook opened before. The key is what the window knows it by. */
export type Recent = z.infer<typeof recentsFile>['recents'][number];

const mostRecents = 12;

export interface Installation {
  readonly home: string;
  readonly desk: string;
  /** Newest first; `missing` when no daybook is there now. */
  readonly recents: () => readonly (Recent & { readonly missing: boolean })[];
  /** Puts a daybook first among the recent ones. */
  readonly remember: (folder: string, name: string) => Result<Recent>;
  readonly port: () => number | null;
  readonly rememberPort: (port: number) => Result<null>;
  /** What it remembers of the daybook of this id: the desk it writes as there, and the end marks it has seen. */
  readonly memoryOf: (daybookId: string) => DaybookMemory & { readonly lost?: boolean };
  /** Remembers it, whole. `lost`: what was there could not be understood and is kept aside. */
  readonly keepMemory: (daybookId: string, memory: DaybookMemory, lost?: boolean) => Result<null>;
  /** The right to write to the daybook of this id. */
  readonly lock: (daybookId: string) => Result<Lock>;
}

/** The user's state folder for this program, by the customs of the platform; `DAYBOOK_HOME` overrides it. */
export function stateFolder(env: NodeJS.ProcessEnv = process.env, platform: string = process.platform, home = homedir()): string {
  if (env.DAYBOOK_HOME) return resolve(env.DAYBOOK_HOME);
  if (platform === 'win32') return join(env.LOCALAPPDATA || join(home, 'AppData', 'Local'), 'Retort Daybook');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Retort Daybook');
  return join(env.XDG_STATE_HOME || join(home, '.local', 'state'), 'retort-daybook');
}

/** The value of a small state file; null when there is none; a file that cannot be understood is kept under another name, not written over. */
function stateFile<T>(path: string, schema: z.ZodType<T>): T | null {
  if (!existsSync(path)) return null;
  try {
    return schema.parse(JSON.parse(readFileSync(path, 'utf8')));
  } catch (error) {
    if (!(error instanceof SyntaxError || error instanceof z.ZodError)) throw error;
    renameSync(path, `${path}.unreadable-${randomBytes(4).toString('hex')}`);
    return null;
  }
}

/** The desk's id: made once, whole, even when two processes start for the first time together. */
function deskIn(home: string): Result<string> {
  const path = join(home, 'desk.json');
  return flat(
    onDisk(path, () => {
      if (!existsSync(path)) {
        const aside = `${path}.${randomBytes(6).toString('hex')}`;
        writeWhole(aside, `${JSON.stringify({ desk: newDeskId() })}\n`, 0o600);
        try {
          linkSync(aside, path);
        } catch (error) {
          if (errorCode(error) !== 'EEXIST' && !existsSync(path)) renameSync(aside, path);
        }
        rmSync(aside, { force: true });
        flushFolder(home);
      }
      try {
        return good(deskFile.parse(JSON.parse(readFileSync(path, 'utf8'))).desk);
      } catch (error) {
        if (error instanceof SyntaxError || error instanceof z.ZodError) return bad(problem('desk-unreadable', '', { path }));
        throw error;
      }
    }),
  );
}

/** Why a folder that a newer program wrote is left alone; null where there is none or it is ours to read. Looks, and touches nothing. */
function newerIn(home: string): Problem | null {
  const path = join(home, 'desk.json');
  try {
    const said = newerHome.safeParse(JSON.parse(readFileSync(path, 'utf8')));
    return said.success ? problem('home-newer', '', { path, format: said.data.format }) : null;
  } catch {
    // not there, or not readable: told where it is opened
    return null;
  }
}

const flat = <T>(result: Result<Result<T>>): Result<T> => (result.ok ? result.value : result);

/** Opens the installation that lives in `home`, making it on first use. What a newer program keeps there (`home-newer`) is not touched. */
export function openInstallation(home: string): Result<Installation> {
  const recentsPath = join(home, 'recents.json');
  const portPath = join(home, 'port.json');
  const locks = join(home, 'locks');
  const memoryPath = (daybookId: string): string => join(home, 'daybooks', `${daybookId}.json`);
  const newer = newerIn(home);
  if (newer) return bad(newer);
  const made = onDisk(home, () => makeFolder(locks, 0o700));
  if (!made.ok) return made;
  const desk = deskIn(home);
  if (!desk.ok) return desk;

  const list = (): readonly Recent[] => stateFile(recentsPath, recentsFile)?.recents ?? [];
  const isThere = (folder: string): boolean =>
    statSync(join(folder, 'daybook.json'), { throwIfNoEntry: false })?.isFile() ?? false;
  const safely = <T>(act: () => T, otherwise: T): T => {
    try {
      return act();
    } catch {
      return otherwise;
    }
  };

  return good({
    home,
    desk: desk.value,
    recents: () => safely(list, []).map((recent) => ({ ...recent, missing: !safely(() => isThere(recent.folder), false) })),
    remember: (folder, name) =>
      onDisk(recentsPath, () => {
        const before = list();
        const key = before.find((recent) => recent.folder === folder)?.key ?? randomBytes(9).toString('base64url');
        const first: Recent = { key, name, folder };
        const recents = [first, ...before.filter((recent) => recent.folder !== folder)].slice(0, mostRecents);
        writeWhole(recentsPath, `${JSON.stringify({ recents }, null, 2)}\n`, 0o600);
        return first;
      }),
    port: () => safely(() => stateFile(portPath, portFile)?.port ?? null, null),
    rememberPort: (port) =>
      onDisk(portPath, () => {
        writeWhole(portPath, `${JSON.stringify({ port })}\n`, 0o600);
        return null;
      }),
    memoryOf: (daybookId) => readMemory(memoryPath(daybookId), desk.value),
    keepMemory: (daybookId, memory, lost) => writeMemory(memoryPath(daybookId), memory, lost),
    // the id has the shape of an id, so it names a file in that folder and nowhere else
    lock: (daybookId) => takeLock(join(locks, `${daybookId}.lock`)),
  });
}
