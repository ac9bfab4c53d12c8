/**
 * What the window may ask of the host, and what it answers: the one file both sides import. Every question is a POST of JSON text to
 * `/ask/<name>`; the answer is JSON text `{ ok: true, value }` or `{ ok: false, problems }`, except where `bytes` says that bytes come back.
 * A page never names a path: a daybook is opened by the key the host gave it.
 */
import { draft, entry } from './core/entry.ts';
import { mapping } from './core/importing/mapping.ts';
import { mostText } from './core/importing/separated.ts';
import { closing } from './core/kinds/closing.ts';
import type { Result } from './core/result.ts';
import { z } from './core/zod.ts';

/** A daybook this installation has opened before: the key is the host's, the folder is only shown. */
const recent = z.strictObject({ key: z.string(), name: z.string(), folder: z.string(), missing: z.boolean() });

/** One desk of the open daybook, as far as its journal could be verified. */
const desk = z.strictObject({ desk: z.string(), entries: z.number().int(), endMark: z.string() });

/** Something about the record itself that a person must know: the code is a key of the notice texts in app/words. */
const notice = z.strictObject({
  code: z.enum([
    'torn-line',
    'broken-chain',
    'newer-format',
    'fork',
    'not-writable',
    'elsewhere-open',
    'conflict-copy',
    'copy-read',
    'copy-damaged',
    'lines-missing',
    'lines-gone',
    'lines-differ',
    'new-desk',
    'clock-back',
    'not-signed',
  ]),
  desk: z.string().optional(),
  line: z.number().int().optional(),
  /** How many lines it is about. */
  lines: z.number().int().optional(),
  detail: z.string().optional(),
  /** Of a fork: every way the desk goes on after the last common line, none of them chosen. `count` is how many lines; the first of them follow. */
  branches: z
    .array(
      z.strictObject({
        endMark: z.string(),
        count: z.number().int(),
        lines: z.array(
          z.strictObject({
            n: z.number().int(),
            id: z.string().optional(),
            kind: z.string().optional(),
            happened: z.string().optional(),
          }),
        ),
      }),
    )
    .optional(),
});
export type Notice = z.infer<typeof notice>;

/** The open daybook. `writable` false: it opens for reading only, and a notice says why. */
export const openBook = z.strictObject({
  id: z.string(),
  name: z.string(),
  folder: z.string(),
  ownDesk: z.string(),
  desks: z.array(desk),
  writable: z.boolean(),
  notices: z.array(notice),
});
export type OpenBook = z.infer<typeof openBook>;

/** Whether the host hands the open daybook over, and to whom. */
const lockState = z.strictObject({
  locked: z.boolean(),
  /** Minutes without a touch after which the window locks itself; null: it does not. */
  idleMinutes: z.number().int().nullable(),
  /** Who has a passphrase on this machine. */
  people: z.array(z.strictObject({ person: z.string(), name: z.string() })),
  /** Whom it was unlocked as. */
  as: z.string().nullable(),
  /** Until the next passphrase is looked at. */
  waitSeconds: z.number().int(),
  /** The file that keeps all this on the machine, as text for the page. */
  file: z.string(),
  /** That file cannot be read. */
  spoiled: z.boolean(),
  /** Unlocked as somebody who only reads. */
  reads: z.boolean(),
});
export type LockState = z.infer<typeof lockState>;

export const state = z.strictObject({
  version: z.string(),
  recents: z.array(recent),
  book: openBook.nullable(),
  /** Where a new daybook would be put, as text for the page. */
  newIn: z.string(),
  /** Left out while no daybook is open. */
  lock: lockState.optional(),
  /** The machine's clock with its offset, and where the offset lies: for "now" in a form. */
  now: z.string(),
});
export type HostState = z.infer<typeof state>;

const nothing = z.strictObject({});

/** A problem as plain data. */
const toldProblem = z.strictObject({
  code: z.string(),
  field: z.string(),
  data: z.record(z.string(), z.union([z.string(), z.number()])).optional(),
});

/** A backup where it lies: the key is the host's, `of` the folder it lies in, `at` local time as its name says. */
const backupFile = z.strictObject({
  key: z.string(),
  file: z.string(),
  of: z.string(),
  at: z.string(),
  why: z.string(),
  sealed: z.boolean(),
  bytes: z.number().int(),
});
export type BackupFile = z.infer<typeof backupFile>;

/** How backups stand. With no daybook open only what can be restored is told. */
export const backupsState = z.strictObject({
  /** The place somebody picked, as text; `sameDisk`: it lies on the daybook's own disk. */
  place: z.strictObject({ path: z.string(), there: z.boolean(), sameDisk: z.boolean() }).nullable(),
  /** Places that can be picked by their keys. */
  offered: z.array(z.strictObject({ key: z.string(), path: z.string(), sameDisk: z.boolean() })),
  sealing: z.enum(['none', 'recipient', 'passphrase']),
  recipient: z.string().optional(),
  /** Backups of the open daybook in its place, newest first; and all others that are found. */
  list: z.array(backupFile),
  others: z.array(backupFile),
  /** The last one that was verified. `rotation`: why an older one that should have gone is still there. */
  last: z
    .strictObject({
      file: z.string(),
      at: z.string(),
      why: z.string(),
      bytes: z.number(),
      entries: z.number().int(),
      leftOut: z.array(z.string()),
      rotation: toldProblem.nullable(),
    })
    .nullable(),
  /** The last try, where it failed. */
  failed: z.strictObject({ at: z.string(), problems: z.array(toldProblem) }).nullable(),
  running: z
    .strictObject({ what: z.enum(['backup', 'look', 'restore', 'rehearse']), done: z.number(), of: z.number() })
    .nullable(),
  /** A backup can be made: a daybook is open here for writing. */
  mayMake: z.boolean(),
});
export type BackupsState = z.infer<typeof backupsState>;

/** What opens a sealed backup: a passphrase, or the text of a key file. */
const opener = z.strictObject({ passphrase: z.string().max(1000).optional(), identity: z.string().max(20_000).optional() });

/** What a backup says it holds, its chains verified. */
const backupHolds = z.strictObject({
  file: z.string(),
  name: z.string(),
  made: z.string(),
  program: z.string(),
  sealed: z.boolean(),
  entries: z.number().int(),
  desks: z.array(desk),
  evidence: z.number().int(),
  files: z.number().int(),
  bytes: z.number(),
  faults: z.array(toldProblem),
});
export type BackupHolds = z.infer<typeof backupHolds>;

const fileDifference = z.strictObject({ onlyHere: z.number().int(), onlyBackup: z.number().int(), differ: z.number().int() });

/** A backup against the open daybook. `same` false: it is another daybook, and nothing is compared. */
const backupDifference = z.strictObject({
  same: z.boolean(),
  name: z.string(),
  desks: z.array(
    z.strictObject({
      desk: z.string(),
      here: z.number().int(),
      backup: z.number().int(),
      onlyHere: z.number().int(),
      onlyBackup: z.number().int(),
      endMarkHere: z.string(),
      endMarkBackup: z.string(),
    }),
  ),
  evidence: fileDifference,
  closings: fileDifference,
});
export type BackupDifference = z.infer<typeof backupDifference>;

/** What was found in a backup that was restored whole. */
const backupFindings = z.strictObject({
  name: z.string(),
  made: z.string(),
  entries: z.number().int(),
  desks: z.array(desk),
  evidence: z.number().int(),
  closings: z.number().int(),
  files: z.number().int(),
  bytes: z.number(),
  faults: z.array(toldProblem),
});
export type BackupFindings = z.infer<typeof backupFindings>;

/** Papers the host can print, by name, with what each needs. */
export const paperNames = [
  'mercury-account',
  'mercury-register',
  'run-sheet',
  'retort-tag',
  'melt-sheet',
  'bar-record',
  'parcel-return',
  'transfer-sheet',
  'incident-sheet',
  'air-record',
  'personal-air-record',
  'open-day-sheet',
  'wall-sheet',
  'count-sheet',
  'labels',
  'blank-forms',
] as const;
export type PaperName = (typeof paperNames)[number];

/** How far a paper is that is being printed: the book read, its pages set, drawn. `share` is of what is to be drawn, 0 to 1. */
const paperProgress = z.strictObject({ stage: z.enum(['reading', 'setting', 'drawing']), share: z.number().min(0).max(1) });
export type PaperProgress = z.infer<typeof paperProgress>;

/** Every question: what is sent, and what comes back. */
export const questions = {
  /** Where things stand: the open daybook, the recent ones. */
  state: { ask: nothing, reply: state },
  /** Opens a recent daybook by its key, makes a new one by name in the user's documents folder, or puts the sample site there and opens it. */
  open: {
    ask: z.union([
      z.strictObject({ recent: z.string().max(80) }),
      z.strictObject({ make: z.string().min(1).max(120) }),
      z.strictObject({ sample: z.literal(true) }),
    ]),
    reply: state,
  },
  /** Closes the open daybook and gives its lock back. */
  close: { ask: nothing, reply: state },
  /** Keeps one entry: answered only after the line is flushed to disk. A known id is answered with the entry kept first. */
  keep: { ask: draft, reply: z.strictObject({ entry, desk }) },
  /** All entries of all desks that verify, as lines of JSON (`application/jsonl`): already validated by the host. */
  entries: { ask: nothing, reply: 'bytes' },
  /** Keeps a picture or document (the body is its bytes): answers its name. */
  evidence: { ask: 'bytes', reply: z.strictObject({ file: z.string() }) },
  /**
   * Prints a paper: PDF bytes. `id` is what it is about; `from` and `to` are days or moments, for papers over a period. `job` is a name the page makes
   * up, to ask how far it is and to stop it.
   */
  paper: {
    ask: z.strictObject({
      name: z.enum(paperNames),
      id: z.string().max(80).optional(),
      from: z.string().max(40).optional(),
      to: z.string().max(40).optional(),
      job: draft.shape.id.optional(),
    }),
    reply: 'bytes',
  },
  /** How far the paper of that job is; null where none is being printed under its name. */
  'paper-progress': { ask: z.strictObject({ job: draft.shape.id }), reply: paperProgress.nullable() },
  /** Stops the paper of that job: whoever asked for it is answered with `paper-stopped`. */
  'paper-stop': { ask: z.strictObject({ job: draft.shape.id }), reply: z.strictObject({ stopped: z.boolean() }) },
  /**
   * Closes a counted period: the host works the account out, writes its statement and its paper, then keeps the closing. With `replaces` it is the next
   * version of that one. A known id is answered with the closing kept first.
   */
  'close-period': {
    ask: z.strictObject({
      id: draft.shape.id,
      happened: draft.shape.happened,
      by: draft.shape.by,
      witness: draft.shape.witness,
      opening: closing.shape.opening,
      closing: closing.shape.closing,
      replaces: closing.shape.replaces,
      falseAlarm: closing.shape.falseAlarm,
      note: closing.shape.note,
    }),
    reply: z.strictObject({ entry, desk }),
  },
  /**
   * Takes a table in: every row an entry of one kind, all of them kept with one flush or none at all. The host reads text and mapping itself. The very table
   * that was taken in before is answered with what was added then (`before`).
   */
  import: {
    ask: z.strictObject({ kind: z.string().max(40), text: z.string().max(mostText), mapping }),
    reply: z.strictObject({ added: z.number().int(), before: z.boolean(), desk }),
  },
  /** Locks the window's session: where somebody has a passphrase, nothing is handed over until one is given. */
  lock: { ask: nothing, reply: state },
  unlock: { ask: z.strictObject({ person: z.string().max(80), passphrase: z.string().max(200) }), reply: state },
  /** After how many minutes without a touch the window locks itself. */
  'lock-after': { ask: z.strictObject({ minutes: z.number().int().min(1).max(240).nullable() }), reply: state },
  /** Sets a person's passphrase on this machine, changes it (with the one until now), or takes it away (`after` null). */
  passphrase: {
    ask: z.strictObject({
      person: z.string().max(80),
      before: z.string().max(200).optional(),
      after: z.string().max(200).nullable(),
    }),
    reply: state,
  },
  /** Verifies all signatures: what each desk signed, and what does not hold. */
  signatures: {
    ask: nothing,
    reply: z.strictObject({
      desks: z.array(
        z.strictObject({
          desk: z.string(),
          signatures: z.number().int(),
          entries: z.number().int(),
          signed: z.string(),
          key: z.string(),
        }),
      ),
      faults: z.array(toldProblem),
    }),
  },
  /** A file of a kept closing as it was issued: its statement (JSON) or its paper (PDF). */
  issued: { ask: z.strictObject({ closing: draft.shape.id, file: z.enum(['statement', 'paper']) }), reply: 'bytes' },
  /** How the backups of the open daybook stand, and what could be restored. */
  backups: { ask: nothing, reply: backupsState },
  /** Picks the place, by the key of one that was offered, and begins a backup there. */
  'backup-place': { ask: z.strictObject({ place: z.string().max(80) }), reply: backupsState },
  /** Says how backups are sealed from now on. Those that are there stay as they are. */
  'backup-seal': {
    ask: z.discriminatedUnion('how', [
      z.strictObject({ how: z.literal('none') }),
      z.strictObject({ how: z.literal('recipient'), recipient: z.string().max(200) }),
      z.strictObject({ how: z.literal('passphrase'), passphrase: z.string().max(1000) }),
    ]),
    reply: backupsState,
  },
  /** Makes a pair of keys. The secret one is answered once and kept nowhere. */
  'backup-key': { ask: nothing, reply: z.strictObject({ identity: z.string(), recipient: z.string() }) },
  /** Makes a backup now: answered when it is verified. */
  'backup-now': { ask: nothing, reply: backupsState },
  /** Restores the newest backup aside, looks at it in full, and removes it again. */
  'backup-rehearse': {
    ask: z.strictObject({ opener: opener.optional() }),
    reply: z.strictObject({ file: z.string(), findings: backupFindings }),
  },
  /** Takes a backup file from the page (the body is its bytes): answers the key it is looked into by. */
  'backup-bring': {
    ask: 'bytes',
    reply: z.strictObject({ key: z.string(), sealed: z.enum(['none', 'key', 'passphrase', 'armored']) }),
  },
  /** Looks into a backup, brought or found: what it holds, and what would change. Changes nothing. */
  'backup-look': {
    ask: z.strictObject({ from: z.string().max(80), opener: opener.optional() }),
    reply: z.strictObject({ look: z.string(), holds: backupHolds, difference: backupDifference.nullable(), into: z.string() }),
  },
  /** Restores what was looked into as a new desk in a new folder, and opens it. Nothing that is there is written over. */
  restore: { ask: z.strictObject({ look: z.string().max(80) }), reply: state },
} as const;

export type Question = keyof typeof questions;
type Ask<Q extends Question> = (typeof questions)[Q]['ask'];
type Reply<Q extends Question> = (typeof questions)[Q]['reply'];
type Shape<S> = S extends z.ZodType ? z.infer<S> : Uint8Array;
export type AskOf<Q extends Question> = Shape<Ask<Q>>;
export type ReplyOf<Q extends Question> = Shape<Reply<Q>>;

/** What stands in a JSON answer. */
export type Answer<Q extends Question> = Result<ReplyOf<Q>>;

/** Largest JSON question, and largest evidence file, in bytes. */
export const mostQuestionBytes = 1_000_000;
export const mostEvidenceBytes = 25_000_000;
/** Largest backup file that a page brings, in bytes; a larger one is laid into a place that is offered. */
export const mostBackupBytes = 500_000_000;
/** Largest question that brings a table: its text may take several bytes a character. */
export const mostImportBytes = 32_000_000;
