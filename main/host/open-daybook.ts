/**
 * A daybook while it is open here: its entries in memory, the lock, the writer of our own journal. Opens for reading only, and says why, when a
 * chain is broken, a newer program wrote in it, another process holds it, or the folder cannot be written. Keeping is answered after the flush.
 * It never goes on with a journal that forked, is shorter than this installation saw it, or that another machine wrote in: it becomes a new desk.
 */
import { resolve } from 'node:path';
import type { Notice, OpenBook } from '../../app/contract.ts';
import { inOrder } from '../../app/core/book/current.ts';
import type { Draft, Entry } from '../../app/core/entry.ts';
import { bad, good, type Problem, problem, type Result } from '../../app/core/result.ts';
import type { CoveredDesk } from '../../app/papers/paper.ts';
import { carriedOver, problemsOf } from './check.ts';
import { clockNotices, type Written, writtenAfter, writtenBy } from './clock-back.ts';
import { readDaybook } from './daybook-folder.ts';
import { linesOfDesks } from './desk-files.ts';
import { onDisk } from './disk.ts';
import { marksAfter, newDeskId, noticesSince, sinceSeen } from './end-marks-seen.ts';
import { hasEvidence, keepEvidence } from './evidence.ts';
import { type FilesSeen, sawFiles } from './files-seen.ts';
import type { Installation } from './installation.ts';
import { type JournalWriter, journalPath, openJournal, putWhole } from './journal-writer.ts';
import { coveredDesks } from './left-out.ts';
import type { Lock } from './lock.ts';
import { holdsKeyOf, signEndMark } from './sign-end-mark.ts';
import type { SignedMark } from './sign-lines.ts';
import { noticeOf, unfit, unwritable } from './why-read-only.ts';

export interface OpenDaybook {
  readonly folder: string;
  /** What the window is told of it. */
  readonly describe: () => OpenBook;
  /**
   * All entries that verify, in order, with the desks and end marks they come from; journals are read again when their files have changed. The
   * lists are never changed later.
   */
  readonly whole: () => Result<
    Pick<OpenBook, 'name'> & { readonly desks: readonly CoveredDesk[]; readonly entries: readonly Entry[] }
  >;
  /** Keeps a draft: checked, written, flushed. A known id is answered with the entry kept first. `now` is a moment with offset. */
  readonly keep: (draft: Draft, now: string) => Result<{ entry: Entry; desk: OpenBook['desks'][number] }>;
  /**
   * Keeps the drafts of one import with one flush: all of them, or none. `make` gets the entries that are there and answers the drafts, checked. An import
   * that is there already is answered as it was, with `before`.
   */
  readonly keepAll: (
    batch: string,
    make: (entries: readonly Entry[]) => Result<readonly Draft[]>,
    now: string,
  ) => Result<{ readonly added: number; readonly before: boolean; readonly desk: OpenBook['desks'][number] }>;
  readonly keepEvidence: (bytes: Uint8Array) => Result<string>;
  /** Signs the end mark of our own desk as it is now. `now` is a moment with offset. Why it could not stays among the notices until it can. */
  readonly sign: (now: string) => Result<SignedMark | null>;
  readonly close: () => void;
}

// entries kept one after another are remembered together
const rememberAfterMs = 1000;

/** Opens the daybook in `dir` for this installation. */
export function openDaybook(dir: string, installation: Installation): Result<OpenDaybook> {
  const folder = resolve(dir);
  // looked at before reading: what comes in between is then read again
  let seen: FilesSeen = sawFiles(folder);
  const first = readDaybook(folder);
  if (!first.ok) return first;
  const { id } = first.value.info;
  const known = onDisk(installation.home, () => installation.memoryOf(id));
  if (!known.ok) return known;
  let memory = known.value;
  let daybook = first.value;
  let byId = new Map(daybook.entries.map((entry) => [entry.id, entry]));
  let since = sinceSeen(memory.marks, daybook.desks, daybook.entries);
  let written: Written | null = null;
  /** Whether somebody else holds the list of entries. */
  let lent = false;
  let lock: Lock | null = null;
  let writer: JournalWriter | null = null;
  let refusal: Problem | null = unfit(daybook, memory.desk) ?? unwritable(folder, memory.desk);
  const newDesks: Notice[] = [];
  /** Why our end mark could not be signed when it should have been. */
  let unsigned: Problem | null = null;

  const letGo = () => {
    writer?.close();
    lock?.release();
    writer = null;
    lock = null;
  };

  const read = (): Result<null> => {
    const now = sawFiles(folder);
    if (now.same(seen)) return good(null);
    const again = readDaybook(folder);
    if (!again.ok) return again;
    daybook = again.value;
    lent = false;
    byId = new Map(daybook.entries.map((entry) => [entry.id, entry]));
    since = sinceSeen(memory.marks, daybook.desks, daybook.entries);
    written = writtenBy(memory.desk, daybook.entries);
    seen = now;
    return good(null);
  };

  /** Remembers how far every desk was seen, after it verified. What another process holds is that one's to remember. */
  const remember = (): void => {
    if (refusal && ['elsewhere-open', 'lock-contended', 'newer-format'].includes(refusal.code)) return;
    const marks = marksAfter(memory.marks, daybook.desks, since);
    if (!memory.lost && JSON.stringify(marks) === JSON.stringify(memory.marks)) return;
    const next = { desk: memory.desk, marks };
    if (installation.keepMemory(id, next, memory.lost).ok) memory = next;
  };
  let timer: NodeJS.Timeout | null = null;
  const rememberSoon = (): void => {
    timer ??= setTimeout(() => {
      timer = null;
      remember();
    }, rememberAfterMs).unref();
  };

  /** Why this installation cannot go on with its journal here; null when it can. */
  const outgrown = (): string | null => {
    const own = daybook.desks.find((d) => d.desk === memory.desk);
    if (memory.lost) return 'state-lost';
    if (own?.fork) return 'fork';
    if (!writer && !holdsKeyOf(installation.home, folder, memory.desk)) return 'key-lost';
    if (writer) return (own?.entries ?? 0) > writer.end().entries ? 'elsewhere' : null;
    const then = since.find((s) => s.desk === memory.desk);
    return then ? (then.differs ? 'differs' : 'shorter') : null;
  };

  /** From here on another desk, so that no line gets a number that was given out before. Its file is made with its first entry. */
  const becomeNew = (why: string): Problem | null => {
    const before = memory.desk;
    const next = { desk: memory.lost ? before : newDeskId(), marks: memory.marks };
    const kept = installation.keepMemory(id, next, memory.lost);
    if (!kept.ok) return kept.problems[0] ?? null;
    newDesks.push({ code: 'new-desk', ...(memory.lost ? {} : { desk: before }), detail: why });
    memory = next;
    written = null;
    return null;
  };

  /** Opens our own journal at its end over all files that hold lines of it: what only copies hold is put into it first. */
  const openOwn = (): Problem | null => {
    const own = daybook.desks.find((d) => d.desk === memory.desk);
    let opened = openJournal(folder, memory.desk);
    const end = opened.ok ? opened.value.end() : null;
    const disordered = !opened.ok && opened.problems.some(({ code }) => code === 'chain-broken');
    if (own && (end ? end.endMark !== own.endMark : disordered)) {
      if (opened.ok) opened.value.close();
      const whole = onDisk(folder, () => {
        const lines = linesOfDesks(folder).get(memory.desk)?.lines;
        return Array.from({ length: own.entries }, (_, i) => lines?.get(i + 1)?.[0]?.text ?? '');
      });
      const put = whole.ok ? putWhole(folder, memory.desk, whole.value) : whole;
      if (!put.ok) return put.problems[0] ?? null;
      opened = openJournal(folder, memory.desk);
    }
    if (!opened.ok) return opened.problems[0] ?? null;
    writer = opened.value;
    return null;
  };

  const settle = (): Problem | null => {
    const why = outgrown();
    if (why === null && writer) return null;
    writer?.close();
    writer = null;
    return (why === null ? null : becomeNew(why)) ?? openOwn();
  };

  const takeUp = (): Problem | null => {
    const taken = installation.lock(id);
    if (!taken.ok) return taken.problems[0] ?? null;
    lock = taken.value;
    // another process of ours may have kept something before it gave the lock back
    const again = onDisk(installation.home, () => installation.memoryOf(id));
    if (!again.ok) return again.problems[0] ?? null;
    memory = again.value;
    const looked = read();
    if (!looked.ok) return looked.problems[0] ?? null;
    since = sinceSeen(memory.marks, daybook.desks, daybook.entries);
    return unfit(daybook, memory.desk) ?? settle();
  };
  refusal ??= takeUp();
  if (refusal) letGo();
  written = writtenBy(memory.desk, daybook.entries);
  // the writer has set a torn tail of ours aside, so later readings do not show it: it stays told
  const setAside = refusal ? [] : daybook.notices.filter((n) => n.code === 'torn-line' && n.desk === memory.desk);
  remember();

  const lookAgain = (): Result<null> => {
    const before = daybook;
    const looked = read();
    if (!looked.ok || daybook === before) return looked;
    if (!refusal) {
      refusal = unfit(daybook, memory.desk) ?? settle();
      if (refusal) letGo();
    }
    remember();
    return good(null);
  };

  const untold = ({ desk, line }: Notice) => !daybook.notices.some((n) => n.desk === desk && n.line === line);

  const desks = (): OpenBook['desks'] => daybook.desks.map(({ desk, entries, endMark }) => ({ desk, entries, endMark }));

  const ownDesk = () => ({ desk: memory.desk, ...(writer?.end() ?? { entries: 0, endMark: '' }) });

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
    written = writtenAfter(written, entry);
    seen = seen.with(journalPath(folder, memory.desk));
    rememberSoon();
  };

  /** Many at once: into a list of their own, put in order again. */
  const addAll = (made: readonly Entry[]) => {
    const own = ownDesk();
    const entries = [...daybook.entries, ...made].sort(inOrder);
    daybook = { ...daybook, entries, desks: [...daybook.desks.filter((d) => d.desk !== own.desk), own] };
    lent = false;
    for (const entry of made) {
      byId.set(entry.id, entry);
      written = writtenAfter(written, entry);
    }
    seen = seen.with(journalPath(folder, memory.desk));
    rememberSoon();
  };

  return good({
    folder,
    describe: () => {
      lookAgain();
      return {
        id: daybook.info.id,
        name: daybook.info.name,
        folder,
        ownDesk: memory.desk,
        desks: desks(),
        writable: refusal === null,
        notices: [
          ...newDesks,
          ...setAside.filter(untold),
          ...daybook.notices,
          ...noticesSince(since),
          ...clockNotices(written),
          ...(unsigned ? [{ code: 'not-signed' as const, desk: memory.desk, detail: unsigned.code }] : []),
          ...(refusal ? noticeOf(refusal) : []),
        ],
      };
    },
    whole: () => {
      const looked = lookAgain();
      lent = true;
      return looked.ok ? good({ name: daybook.info.name, desks: coveredDesks(daybook.desks), entries: daybook.entries }) : looked;
    },
    keep: (draft, now) => {
      const looked = lookAgain();
      if (!looked.ok) return looked;
      const deskOf = ({ desk }: Entry) => daybook.desks.find((d) => d.desk === desk);
      const answer = (entry: Entry) => {
        const { desk, entries, endMark } = deskOf(entry) ?? ownDesk();
        return good({ entry, desk: { desk, entries, endMark } });
      };
      const before = byId.get(draft.id);
      if (before) return answer(before);
      if (refusal || !writer) return bad(refusal ?? problem('not-writable', ''));
      // the lines of an import count together, so one alone would be taken for what is left of it
      if (draft.imported) return bad(problem('import-by-itself', 'imported'));
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
    keepAll: (batch, make, now) => {
      const looked = lookAgain();
      if (!looked.ok) return looked;
      const there = daybook.entries.filter(({ imported }) => imported?.batch === batch);
      const answer = (added: number, before: boolean) => good({ added, before, desk: ownDesk() });
      if (there[0] && there[0].imported?.of === there.length) return answer(there.length, true);
      if (refusal || !writer) return bad(refusal ?? problem('not-writable', ''));
      const drafts = make(daybook.entries);
      if (!drafts.ok) return drafts;
      const files = new Set(drafts.value.flatMap(({ evidence = [] }) => evidence.map(({ file }) => file)));
      const missing = [...files].filter((file) => !hasEvidence(folder, file));
      if (missing.length > 0) return bad(...missing.map((file) => problem('evidence-missing', 'evidence', { file })));
      const kept = writer.append(drafts.value, now);
      if (!kept.ok) return kept;
      addAll(kept.value);
      return answer(kept.value.length, false);
    },
    keepEvidence: (bytes) => (refusal ? bad(refusal) : keepEvidence(folder, bytes)),
    sign: (now) => {
      if (refusal || !writer) return bad(refusal ?? problem('not-writable', ''));
      const { entries, endMark } = writer.end();
      const mark = { daybook: id, desk: memory.desk, entries, endMark };
      const signed = signEndMark(installation.home, folder, mark, now);
      unsigned = signed.ok ? null : (signed.problems[0] ?? null);
      return signed;
    },
    close: () => {
      if (timer) clearTimeout(timer);
      if (lock) remember();
      letGo();
    },
  });
}
