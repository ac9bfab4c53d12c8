/**
 * A daybook while it is open here: its entries in memory, the lock, the writer of our own journal. Opens for reading only, and says why, when a
 * chain is broken, a newer program wrote in it, another process holds it, or the folder cannot be written. Keeping is answered after the flush.
 */
import { accessSync, constants, existsSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Notice, OpenBook } from '../../app/contract.ts';
import { inOrder } from '../../app/core/book/current.ts';
import type { Draft, Entry } from '../../app/core/entry.ts';
import { bad, good, type Problem, problem, type Result } from '../../app/core/result.ts';
import { carriedOver, problemsOf } from './check.ts';
import { type Daybook, readDaybook } from './daybook-folder.ts';
import { onDisk } from './disk.ts';
import { hasEvidence, keepEvidence } from './evidence.ts';
import { type FilesSeen, sawFiles } from './files-seen.ts';
import type { Installation } from './installation.ts';
import { desksFolder, type JournalWriter, journalPath, openJournal } from './journal-writer.ts';
import type { Lock } from './lock.ts';

export interface OpenDaybook {
  readonly folder: string;
  /** What the window is told of it. */
  readonly describe: () => OpenBook;
  /**
   * All entries that verify, in order, with the desks and end marks they come from; journals are read again when their files have changed. The
   * lists are never changed later.
   */
  readonly whole: () => Result<Pick<OpenBook, 'name' | 'desks'> & { readonly entries: readonly Entry[] }>;
  /** Keeps a draft: checked, written, flushed. A known id is answered with the entry kept first. `now` is a moment with offset. */
  readonly keep: (draft: Draft, now: string) => Result<{ entry: Entry; desk: OpenBook['desks'][number] }>;
  readonly keepEvidence: (bytes: Uint8Array) => Result<string>;
  readonly close: () => void;
}

/** Why a daybook that was read cannot be written; null when nothing in it speaks against it. */
function unfit({ info, desks, notices }: Daybook): Problem | null {
  for (const { desk, fault, newer } of desks) {
    if (fault) return problem('chain-broken', '', { desk, line: fault.line, cause: fault.cause });
    if (newer) return problem('newer-format', '', { desk, line: newer.line, format: newer.format });
  }
  return notices.some((n) => n.code === 'newer-format') ? problem('newer-format', '', { format: info.format }) : null;
}

/** Why the folder cannot be written, as far as the system tells before trying. */
function unwritable(folder: string, desk: string): Problem | null {
  const paths = [existsSync(desksFolder(folder)) ? desksFolder(folder) : folder, journalPath(folder, desk)];
  for (const path of paths) {
    const may = onDisk(path, () => (existsSync(path) ? accessSync(path, constants.W_OK) : undefined));
    if (!may.ok) return may.problems[0] ?? null;
  }
  return null;
}

/** The notice a refusal to write is shown as; the broken chain and the newer format already have theirs. */
function noticeOf({ code, data = {} }: Problem): Notice[] {
  if (code === 'chain-broken' || code === 'newer-format') return [];
  if (code === 'elsewhere-open') return [{ code, detail: `${data.pid} ${data.host}` }];
  return [{ code: 'not-writable', detail: code }];
}

/** Opens the daybook in `dir` for this installation. */
export function openDaybook(dir: string, installation: Installation): Result<OpenDaybook> {
  const folder = resolve(dir);
  // looked at before reading: what comes in between is then read again
  let seen: FilesSeen = sawFiles(folder);
  const first = readDaybook(folder);
  if (!first.ok) return first;
  let daybook = first.value;
  let byId = new Map(daybook.entries.map((entry) => [entry.id, entry]));
  /** Whether somebody else holds the list of entries. */
  let lent = false;
  let lock: Lock | null = null;
  let writer: JournalWriter | null = null;
  let refusal: Problem | null = unfit(daybook) ?? unwritable(folder, installation.desk);

  const letGo = () => {
    writer?.close();
    lock?.release();
    writer = null;
    lock = null;
  };

  const takeUp = (): Problem | null => {
    const taken = installation.lock(daybook.info.id);
    if (!taken.ok) return taken.problems[0] ?? null;
    lock = taken.value;
    const opened = openJournal(folder, installation.desk);
    if (!opened.ok) return opened.problems[0] ?? null;
    writer = opened.value;
    return null;
  };
  refusal ??= takeUp();
  if (refusal) letGo();
  // the writer has set a torn tail of ours aside, so later readings do not show it: it stays told
  const setAside = refusal ? [] : daybook.notices.filter((n) => n.code === 'torn-line' && n.desk === installation.desk);

  const lookAgain = (): Result<null> => {
    const now = sawFiles(folder);
    if (now.same(seen)) return good(null);
    const again = readDaybook(folder);
    if (!again.ok) return again;
    daybook = again.value;
    lent = false;
    byId = new Map(daybook.entries.map((entry) => [entry.id, entry]));
    seen = now;
    const broken = unfit(daybook);
    if (broken && !refusal) {
      refusal = broken;
      letGo();
    }
    return good(null);
  };

  const untold = ({ desk, line }: Notice) => !daybook.notices.some((n) => n.desk === desk && n.line === line);

  const desks = (): OpenBook['desks'] => daybook.desks.map(({ desk, entries, endMark }) => ({ desk, entries, endMark }));

  const ownDesk = () => ({ desk: installation.desk, ...(writer?.end() ?? { entries: 0, endMark: '' }) });

  const add = (entry: Entry) => {
    let at = daybook.entries.length;
    while (at > 0 && inOrder(daybook.entries[at - 1]!, entry) > 0) at--;
    const own = ownDesk();
    const others = daybook.desks.filter((d) => d.desk !== own.desk);
    // a list that is in other hands is never changed; our own grows in place, for copying it is most of the cost of keeping an entry in a large book
    const entries = lent ? [...daybook.entries] : (daybook.entries as Entry[]);
    lent = false;
    entries.splice(at, 0, entry);
    carriedOver(daybook.entries, entries, entry);
    daybook = { ...daybook, entries, desks: [...others, own] };
    byId.set(entry.id, entry);
    seen = seen.with(journalPath(folder, installation.desk));
  };

  return good({
    folder,
    describe: () => {
      lookAgain();
      return {
        id: daybook.info.id,
        name: daybook.info.name,
        folder,
        ownDesk: installation.desk,
        desks: desks(),
        writable: refusal === null,
        notices: [...setAside.filter(untold), ...daybook.notices, ...(refusal ? noticeOf(refusal) : [])],
      };
    },
    whole: () => {
      const looked = lookAgain();
      lent = true;
      return looked.ok ? good({ name: daybook.info.name, desks: desks(), entries: daybook.entries }) : looked;
    },
    keep: (draft, now) => {
      const looked = lookAgain();
      if (!looked.ok) return looked;
      const deskOf = ({ desk }: Entry) => daybook.desks.find((d) => d.desk === desk);
      const answer = (entry: Entry) => {
        const { desk, entries, endMark } = deskOf(entry) ?? ownDesk();
        return good({ entry, desk: { desk, entries, endMark } });
      };
      const known = byId.get(draft.id);
      if (known) return answer(known);
      if (refusal || !writer) return bad(refusal ?? problem('not-writable', ''));
      const missing = (draft.evidence ?? []).flatMap(({ file }, i) =>
        hasEvidence(folder, file) ? [] : [problem('evidence-missing', `evidence[${i}].file`, { file })],
      );
      const problems = [...missing, ...problemsOf(daybook.entries, draft, now)];
      if (problems.length > 0) return bad(...problems);
      const kept = writer.append([draft], now);
      if (!kept.ok) return kept;
      const entry = kept.value[0]!;
      add(entry);
      return answer(entry);
    },
    keepEvidence: (bytes) => (refusal ? bad(refusal) : keepEvidence(folder, bytes)),
    close: letGo,
  });
}
