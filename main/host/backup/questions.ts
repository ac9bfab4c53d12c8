/**
 * What the host does about backups: the place and the seal of each daybook, one after each closing, on the day's first occasion and when asked, and
 * the way back from one. One job runs at a time, in a thread; the open daybook is asked only for a moment, so writing goes on meanwhile.
 */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { AskOf, BackupFile, BackupsState, HostState, OpenBook, Question, ReplyOf } from '../../../app/contract.ts';
import { bad, good, type Problem, problem, type Result } from '../../../app/core/result.ts';
import { onDisk } from '../disk.ts';
import type { Installation } from '../installation.ts';
import type { OpenDaybook } from '../open-daybook.ts';
import type { JobName, Jobs } from './jobs.ts';
import { backupsFolderName, type WhyMade } from './names.ts';
import { backupsIn, drivesHere, type FoundBackup, keyOf, onOneDisk, takePlace, unfitPlace } from './places.ts';
import { makeRestoring } from './restoring.ts';
import { newKeyPair, type Opener, recipientFrom } from './seal.ts';
import { type BackupSettings, noSettings, readSettings, writeSettings } from './settings.ts';
import { done } from './thread.ts';

type BackupQuestion = Extract<Question, 'backups' | `backup-${string}` | 'restore'>;

/** What backups need of the host. */
export interface BackupNeeds {
  readonly inTurn: <T>(act: () => Result<T>) => Promise<Result<T>>;
  readonly open: () => OpenDaybook | null;
  readonly installation: () => Result<Installation>;
  readonly openDir: (dir: string) => Result<OpenBook>;
  readonly shut: () => void;
  readonly state: () => Result<HostState>;
  readonly options: {
    readonly home: string;
    readonly documents: string;
    readonly clock: () => string;
    readonly version: string;
    /** Folders named when the program was started, offered as places. */
    readonly places?: readonly string[];
    /** Drives that stand ready; the platform's own where left out. */
    readonly drives?: () => readonly string[];
    /** How often it is looked whether the day's backup is due, in milliseconds. */
    readonly lookEveryMs?: number;
  };
}

export interface Backups {
  readonly doing: { readonly [Q in BackupQuestion]: (ask: AskOf<Q>) => Promise<Result<ReplyOf<Q>>> };
  readonly pickPlace: (dir: string) => Promise<Result<null>>;
  /** A period was closed: a backup follows, and nobody waits for it. */
  readonly afterClosing: () => void;
  /** A daybook was opened: the day's backup may be due. */
  readonly opened: () => void;
  readonly close: () => Promise<void>;
}

const noDaybook: Problem = problem('no-daybook-open', '');
/** A passphrase shorter than this is no seal; a longer one is better. In characters. */
const leastPassphrase = 10;
const lookEveryMs = 5 * 60_000;
const firstLookMs = 15_000;
/** How long closing waits for a job that is under way, in milliseconds. */
const waitMs = 3000;

export function makeBackups({ inTurn, open, installation, openDir, shut, state, options }: BackupNeeds): Backups {
  const { home, clock, version } = options;
  const asides = join(home, 'aside');
  const ending = new AbortController();
  let running: BackupsState['running'] = null;
  let last: Promise<unknown> = Promise.resolve();
  let first: NodeJS.Timeout | null = null;

  /** One job after another. */
  const run = <J extends JobName>(what: J, order: Jobs[J]['order']): Promise<Result<Jobs[J]['done']>> => {
    const turn = last.then(async () => {
      if (ending.signal.aborted) return bad(problem('host-closed', ''));
      running = { what, done: 0, of: 0 };
      const told = (finished: number, of: number) => {
        running = { what, done: finished, of };
      };
      try {
        return await done(what, asides, order, told, ending.signal);
      } finally {
        running = null;
      }
    });
    last = turn.catch(() => undefined);
    return turn;
  };

  /** The settings of the open daybook, with what is told of it. */
  const settled = (): Result<{ about: OpenBook; settings: BackupSettings }> => {
    const about = open()?.describe();
    if (!about) return bad(noDaybook);
    const settings = readSettings(home, about.id);
    return settings.ok ? good({ about, settings: settings.value }) : settings;
  };

  const keep = (id: string, more: Partial<BackupSettings>): Result<null> => {
    const before = readSettings(home, id);
    return before.ok ? writeSettings(home, id, { ...before.value, ...more }) : before;
  };

  const drives = options.drives ?? (() => drivesHere());
  const given = (): string[] => [...new Set([...(options.places ?? []), ...drives()])];

  /** Every place a backup may lie in: those given and found, and those that any daybook of this installation has. */
  const everyPlace = (): string[] => {
    const names = onDisk(home, () => (existsSync(join(home, 'backups')) ? readdirSync(join(home, 'backups')) : []));
    const picked = (names.ok ? names.value : [])
      .filter((name) => name.endsWith('.json'))
      .flatMap((name) => {
        const one = readSettings(home, name.slice(0, -'.json'.length));
        return one.ok && one.value.place !== null ? [one.value.place] : [];
      });
    return [...new Set([...picked, ...given()])];
  };

  const told = ({ path, file, of, at, why, sealed, bytes }: FoundBackup): BackupFile => ({
    key: keyOf(path),
    file,
    of,
    at,
    why,
    sealed,
    bytes,
  });

  const described = (): Result<BackupsState> => {
    const about = open()?.describe() ?? null;
    const read = about ? readSettings(home, about.id) : good(noSettings);
    if (!read.ok) return read;
    const { place, sealing, last: verified, failed } = read.value;
    const near = (path: string) => about !== null && onOneDisk(path, about.folder);
    const list = about && place !== null ? backupsIn(place, about.id) : [];
    const paths = new Set(list.map(({ path }) => path));
    const folder = about && place !== null ? join(place, backupsFolderName(about.name, about.id)) : null;
    const { program: _, ...lastTold } = verified ?? { program: '' };
    return good({
      place: place === null || folder === null ? null : { path: place, there: existsSync(folder), sameDisk: near(place) },
      offered: [...new Set([...given(), ...(place === null ? [] : [place])])].map((path) => ({
        key: keyOf(path),
        path,
        sameDisk: near(path),
      })),
      sealing: sealing.how,
      ...(sealing.how === 'recipient' ? { recipient: sealing.recipient } : {}),
      list: list.map(told),
      others: everyPlace()
        .flatMap((one) => backupsIn(one))
        .filter(({ path }) => !paths.has(path))
        .map(told),
      last: verified === null ? null : (lastTold as BackupsState['last']),
      failed: failed as BackupsState['failed'],
      running,
      mayMake: about?.writable ?? false,
    });
  };

  /** Makes a backup of the open daybook and remembers how it went. */
  const make = async (why: WhyMade): Promise<Result<null>> => {
    const begun = await inTurn(() => {
      const now = settled();
      if (!now.ok) return now;
      const { about, settings } = now.value;
      if (!about.writable) return bad(problem('not-writable', ''));
      if (settings.place === null) return bad(problem('backup-no-place', ''));
      // a mark that cannot be signed is a notice of the book: a backup without it is better than none
      open()?.sign(clock());
      return good({ about, settings, into: join(settings.place, backupsFolderName(about.name, about.id)) });
    });
    if (!begun.ok) return begun;
    const { about, settings, into } = begun.value;
    const { id, name, folder, ownDesk, desks } = about;
    const now = clock();
    const order = { folder, daybook: { id, name }, ownDesk, desks, into, sealing: settings.sealing, now, why, program: version };
    const made = await run('backup', order);
    if (!made.ok) {
      // a program that is closing has not failed: the next start makes the day's backup
      if (!ending.signal.aborted)
        keep(id, { failed: { at: now, problems: made.problems.map((p) => ({ ...p, data: { ...p.data } })) } });
      return made;
    }
    const { file, bytes, entries, leftOut, rotation } = made.value;
    const verified = { file, at: now, why, bytes, entries, program: version, leftOut: [...leftOut] };
    const kept = keep(id, {
      last: { ...verified, rotation: rotation && { ...rotation, data: { ...rotation.data } } },
      failed: null,
    });
    return kept.ok ? good(null) : kept;
  };

  /** The day's own, where none was verified today; also when this is the first start of another version of the program. */
  const look = async (): Promise<void> => {
    if (running !== null || ending.signal.aborted) return;
    const due = await inTurn(() => {
      const now = settled();
      if (!now.ok) return now;
      const { about, settings } = now.value;
      const today = settings.last?.at.slice(0, 10) === clock().slice(0, 10) && settings.last.program === version;
      return good(about.writable && settings.place !== null && about.desks.some(({ entries }) => entries > 0) && !today);
    });
    if (due.ok && due.value) await make('daily');
  };
  const timer = setInterval(() => void look(), options.lookEveryMs ?? lookEveryMs);
  timer.unref();

  const pick = (place: string): Promise<Result<null>> =>
    inTurn(() => {
      const now = settled();
      if (!now.ok) return now;
      const { about } = now.value;
      const unfit = unfitPlace(place, about.folder);
      if (unfit) return bad(unfit);
      const taken = takePlace(place, about.name, about.id);
      return taken.ok ? keep(about.id, { place, failed: null }) : taken;
    });

  const picked = async (place: string): Promise<Result<null>> => {
    const done = await pick(place);
    if (done.ok) void make('asked');
    return done;
  };

  const restoring = makeRestoring({ inTurn, open, installation, openDir, shut, state, options, asides, run, everyPlace });

  const doing: Backups['doing'] = {
    ...restoring.doing,
    backups: () => inTurn(described),
    'backup-place': async ({ place }) => {
      const path = given().find((one) => keyOf(one) === place);
      const settings = await inTurn(settled);
      const before = settings.ok ? settings.value.settings.place : null;
      const known = path ?? (before !== null && keyOf(before) === place ? before : undefined);
      const done = known === undefined ? bad(problem('backup-place-unknown', 'place')) : await picked(known);
      return done.ok ? inTurn(described) : done;
    },
    'backup-seal': async (ask) => {
      if (ask.how === 'passphrase' && ask.passphrase.length < leastPassphrase)
        return bad(problem('backup-passphrase-short', 'passphrase', { least: leastPassphrase }));
      const recipient = ask.how === 'recipient' ? recipientFrom(ask.recipient) : good('');
      if (!recipient.ok) return recipient;
      return inTurn(() => {
        const now = settled();
        if (!now.ok) return now;
        const sealing = ask.how === 'recipient' ? { how: ask.how, recipient: recipient.value } : ask;
        const kept = keep(now.value.about.id, { sealing });
        return kept.ok ? described() : kept;
      });
    },
    'backup-key': async () => good(await newKeyPair()),
    'backup-now': async () => {
      const made = await make('asked');
      return made.ok ? inTurn(described) : made;
    },
    'backup-rehearse': async ({ opener = {} }) => {
      const newest = await inTurn(() => {
        const now = settled();
        if (!now.ok) return now;
        const { about, settings } = now.value;
        if (settings.place === null) return bad(problem('backup-no-place', ''));
        const [found] = backupsIn(settings.place, about.id);
        const own = settings.sealing.how === 'passphrase' ? { passphrase: settings.sealing.passphrase } : {};
        return found ? good({ found, own }) : bad(problem('backup-none', ''));
      });
      if (!newest.ok) return newest;
      const { found, own } = newest.value;
      const opens: Opener = { ...own, ...Object.fromEntries(Object.entries(opener).filter(([, text]) => text !== '')) };
      const findings = await run('rehearse', { path: found.path, file: found.file, opener: opens });
      return findings.ok ? good({ file: found.file, findings: findings.value }) : findings;
    },
  };

  return {
    doing,
    pickPlace: picked,
    afterClosing: () => void make('closing'),
    opened: () => {
      if (first) clearTimeout(first);
      first = setTimeout(() => void look(), firstLookMs);
      first.unref();
    },
    close: async () => {
      ending.abort();
      clearInterval(timer);
      if (first) clearTimeout(first);
      await Promise.race([last, new Promise<void>((late) => setTimeout(late, waitMs).unref())]);
      restoring.close();
    },
  };
}
