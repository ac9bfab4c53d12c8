/**
 * What the host does for each question of the contract. One daybook is open at a time; questions that touch it come one after another, so no
 * entry is checked against a book that another is about to change.
 */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { AskOf, HostState, OpenBook, PaperName, Question, ReplyOf } from '../../app/contract.ts';
import type { Entry } from '../../app/core/entry.ts';
import { draftFrom } from '../../app/core/kinds/index.ts';
import { bad, good, type Problem, problem, type Result } from '../../app/core/result.ts';
import type { ClosingOnPaper } from '../../app/papers/mercury-account/closing.ts';
import type { CoveredDesk } from '../../app/papers/paper.ts';
import { type Backups, makeBackups } from './backup/questions.ts';
import { closePeriod } from './close-period.ts';
import { issuedFile } from './closings.ts';
import { makeDaybook } from './daybook-folder.ts';
import { evidenceAt } from './evidence.ts';
import { folderFor } from './folder-name.ts';
import { importInto } from './import-table.ts';
import { type Installation, openInstallation } from './installation.ts';
import { lockGate } from './lock-gate.ts';
import { type OpenDaybook, openDaybook } from './open-daybook.ts';
import { printJobs, type Watch } from './print-jobs.ts';
import { sampleName } from './sample/site.ts';
import { writeSample } from './sample/write.ts';
import { withKeys } from './sign-check.ts';

/** What a host is made of. */
export interface HostOptions {
  /** The installation's state folder. */
  readonly home: string;
  /** Where daybooks made by name go. */
  readonly documents: string;
  /** The built window's files; null when there are none. */
  readonly windowFolder: string | null;
  /** The machine's clock: a moment with offset and seconds. */
  readonly clock: () => string;
  readonly version: string;
  /** A clock in milliseconds, for how long nothing was asked; the machine's own where left out. */
  readonly millis?: () => number;
  /** Folders named when the program was started, offered as places for backups. */
  readonly places?: readonly string[];
  /** Drives that stand ready for backups; the platform's own where left out. */
  readonly drives?: () => readonly string[];
  /** How often it is looked whether the day's backup is due, in milliseconds; left out, every few minutes. */
  readonly lookEveryMs?: number;
  /** Prints a paper as PDF from all entries, with the daybook's name and the desks (and their end marks) that the entries come from. */
  readonly print: (
    entries: readonly Entry[],
    daybookName: string,
    desks: readonly CoveredDesk[],
    name: PaperName,
    id: string | undefined,
    ends: { readonly from?: string | undefined; readonly to?: string | undefined },
    closing?: ClosingOnPaper,
    watch?: Watch,
  ) => Promise<Result<Uint8Array>>;
}

type Doing = { readonly [Q in Question]: (ask: AskOf<Q>) => Promise<Result<ReplyOf<Q>>> };

export interface Questions {
  readonly doing: Doing;
  readonly openFolder: (dir: string) => Promise<Result<OpenBook>>;
  readonly pickBackupPlace: Backups['pickPlace'];
  readonly evidenceAt: (file: string) => Promise<ReturnType<typeof evidenceAt>>;
  readonly close: () => Promise<void>;
}

const noDaybook: Problem = problem('no-daybook-open', '');

export function makeQuestions(options: HostOptions): Questions {
  let installed: Result<Installation> | null = null;
  let book: OpenDaybook | null = null;
  const jobs = printJobs();
  let closed = false;
  let last: Promise<unknown> = Promise.resolve();

  /** After everything asked before it. */
  const inTurn = <T>(act: () => Result<T>): Promise<Result<T>> => {
    const turn = last.then(() => (closed ? bad(problem('host-closed', '')) : act()));
    last = turn.catch(() => undefined);
    return turn;
  };

  const installation = (): Result<Installation> => {
    if (!installed?.ok) installed = openInstallation(options.home);
    return installed;
  };

  const state = (): Result<HostState> => {
    const here = installation();
    if (!here.ok) return here;
    const { version, documents, clock } = options;
    const told = gate.told(book?.describe() ?? null);
    return good({ version, recents: [...here.value.recents()], ...told, newIn: documents, now: clock() });
  };

  const gate = lockGate({
    home: options.home,
    millis: options.millis ?? Date.now,
    clock: options.clock,
    inTurn,
    open: () => book,
    state: () => state(),
  });

  const shut = () => {
    book?.close();
    book = null;
    gate.closed();
  };

  /** Opens a folder in place of the one that is open; when it cannot be opened, that one is opened again. */
  const openDir = (dir: string): Result<OpenBook> => {
    const here = installation();
    if (!here.ok) return here;
    const before = book?.folder;
    shut();
    const opened = openDaybook(dir, here.value);
    if (!opened.ok) {
      const again = before === undefined ? null : openDaybook(before, here.value);
      book = again?.ok ? again.value : null;
      if (book) gate.opened(book.describe().id);
      return opened;
    }
    book = opened.value;
    const described = book.describe();
    gate.opened(described.id);
    // a list that cannot be written is no reason not to open
    here.value.remember(book.folder, described.name);
    backups.opened();
    return good(described);
  };

  const openRecent = (key: string): Result<OpenBook> => {
    const here = installation();
    if (!here.ok) return here;
    const recent = here.value.recents().find((one) => one.key === key);
    if (!recent) return bad(problem('unknown-recent', 'recent'));
    if (recent.missing) return bad(problem('recent-missing', 'recent', { path: recent.folder }));
    return openDir(recent.folder);
  };

  const make = (name: string): Result<OpenBook> => {
    const folder = folderFor(name);
    if (!folder.ok) return folder;
    const path = join(options.documents, folder.value);
    const made = makeDaybook(path, name, options.clock());
    return made.ok ? openDir(path) : bad(...made.problems.map((p) => ({ ...p, field: 'make' })));
  };

  /** The sample while it is being told and printed, which is slow: other questions are answered meanwhile, and asking twice writes it once. */
  let writing: ReturnType<typeof writeSample> | null = null;

  /** The sample site as it lies in the documents folder: written there once, and opened as it is from then on. */
  const sample = async (): Promise<Result<HostState>> => {
    const path = join(options.documents, sampleName);
    if (!existsSync(join(path, 'daybook.json'))) {
      writing ??= writeSample(path, null, options).finally(() => {
        writing = null;
      });
      const written = await writing;
      if (!written.ok) return bad(...written.problems.map((p) => ({ ...p, field: 'sample' })));
    }
    return inTurn(() => {
      const opened = openDir(path);
      return opened.ok ? state() : opened;
    });
  };

  const backups = makeBackups({ inTurn, open: () => book, installation, openDir, shut, state, options });

  const doing: Doing = gate.guarded({
    ...gate.doing,
    ...backups.doing,
    state: () => inTurn(state),
    open: (ask) =>
      'sample' in ask
        ? sample()
        : inTurn(() => {
            const opened = 'recent' in ask ? openRecent(ask.recent) : make(ask.make);
            return opened.ok ? state() : opened;
          }),
    close: () =>
      inTurn(() => {
        shut();
        return state();
      }),
    keep: (ask) =>
      inTurn(() => {
        const draft = draftFrom(ask);
        if (!draft.ok) return draft;
        // without its files it would be a closing of nothing
        if (draft.value.kind === 'closing') return bad(problem('closing-by-itself', 'kind'));
        return book?.keep(draft.value, options.clock()) ?? bad(noDaybook);
      }),
    entries: async () => {
      const whole = await inTurn(() => book?.whole() ?? bad(noDaybook));
      return whole.ok
        ? good(
            Buffer.from(
              gate
                .shown(whole.value.entries)
                .map((entry) => `${JSON.stringify(entry)}\n`)
                .join(''),
              'utf8',
            ),
          )
        : whole;
    },
    evidence: (ask) =>
      inTurn(() => {
        const kept = book?.keepEvidence(ask) ?? bad(noDaybook);
        return kept.ok ? good({ file: kept.value }) : kept;
      }),
    paper: async ({ name, id, from, to, job }) => {
      const whole = await inTurn(() => {
        const got = book?.whole() ?? bad(noDaybook);
        return got.ok && book ? good({ ...got.value, desks: withKeys(book.folder, got.value.desks) }) : got;
      });
      if (!whole.ok) return whole;
      const { entries: all, name: daybookName, desks } = whole.value;
      return jobs.run(job, (watch) => options.print(all, daybookName, desks, name, id, { from, to }, undefined, watch));
    },
    'paper-progress': async ({ job }) => good(jobs.progress(job)),
    'paper-stop': async ({ job }) => good({ stopped: jobs.stop(job) }),
    import: (ask) => inTurn(() => (book ? importInto(book, ask, options.clock()) : bad(noDaybook))),
    'close-period': async (ask) => {
      const closed = await closePeriod(ask, { inTurn, open: () => book, options });
      if (closed.ok) backups.afterClosing();
      return closed;
    },
    issued: ({ closing, file }) =>
      inTurn(() => {
        const whole = book?.whole() ?? bad(noDaybook);
        return whole.ok && book ? issuedFile(book.folder, whole.value.entries, closing, file) : bad(noDaybook);
      }),
  });

  return {
    doing,
    openFolder: (dir) => inTurn(() => openDir(dir)),
    pickBackupPlace: backups.pickPlace,
    evidenceAt: async (file) => {
      const why = gate.refusal();
      if (why) return bad(why);
      const found = await inTurn(() => good(book ? evidenceAt(book.folder, file) : null));
      return found.ok ? found.value : null;
    },
    close: async () => {
      await backups.close();
      await inTurn(() => {
        shut();
        closed = true;
        return good(null);
      });
    },
  };
}
