/**
 * Brings what another folder of the same daybook holds into this one: lines of every desk by set union, evidence, closings, signatures. It only adds files:
 * no file that is there is written over, so a desk that is writing meanwhile loses nothing. Doing it again brings nothing more.
 */
import { existsSync, linkSync, readdirSync, readFileSync, realpathSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, extname, join, resolve } from 'node:path';
import { evidenceName } from '../../app/core/entry.ts';
import { bad, good, type Problem, problem, type Result } from '../../app/core/result.ts';
import { sha256 } from './canonical.ts';
import { type Daybook, evidenceFolder, readDaybook } from './daybook-folder.ts';
import { linesOfDesks } from './desk-files.ts';
import type { DeskLine } from './desk-lines.ts';
import { errorCode, flushFolder, makeFolder, onDisk, writeWhole } from './disk.ts';
import type { Installation } from './installation.ts';
import { desksFolder, journalPath } from './journal-writer.ts';
import { signaturesFolder, signaturesPath, signatureTexts } from './sign-lines.ts';

export interface Joined {
  /** Lines that came in, by desk; desks that brought none are left out. */
  readonly lines: readonly { readonly desk: string; readonly lines: number }[];
  readonly evidence: number;
  readonly closings: number;
  /** Signatures that came in. */
  readonly signatures: number;
  /** Closings of a name that is here with another content, and the names they were kept under. */
  readonly beside: readonly { readonly name: string; readonly as: string }[];
  /** Evidence whose content is not what its name says: not brought in. */
  readonly left: readonly string[];
}

/** Why one of the two folders cannot be joined; `who` is the field it was named in. */
function unfit({ folder, desks, info, notices }: Daybook, who: string): Problem | null {
  for (const { desk, fault } of desks)
    if (fault) return problem('join-broken', who, { path: folder, desk, line: fault.line, cause: fault.cause });
  const newer = notices.find((n) => n.code === 'newer-format');
  return newer ? problem('newer-format', who, { format: newer.detail ?? info.format }) : null;
}

/** Puts a new file there whole, and answers false, changing nothing, where one is already. */
function putNew(path: string, bytes: Uint8Array | string): boolean {
  if (existsSync(path)) return false;
  const aside = join(dirname(path), `.${basename(path)}.joining`);
  writeWhole(aside, bytes);
  try {
    linkSync(aside, path);
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return false;
    // a file system without links: looked at once more, then written whole under its name
    if (existsSync(path)) return false;
    writeWhole(path, bytes);
  } finally {
    rmSync(aside, { force: true });
  }
  flushFolder(dirname(path));
  return true;
}

const filesIn = (folder: string): string[] =>
  existsSync(folder)
    ? readdirSync(folder, { withFileTypes: true })
        .filter((file) => file.isFile() && !file.name.startsWith('.'))
        .map((file) => file.name)
        .sort()
    : [];

function joinEvidence(into: string, from: string): Pick<Joined, 'evidence' | 'left'> {
  const left: string[] = [];
  let evidence = 0;
  for (const name of filesIn(evidenceFolder(from))) {
    const bytes = readFileSync(join(evidenceFolder(from), name));
    if (!evidenceName.safeParse(name).success || sha256(bytes) !== name.slice(0, 64)) {
      left.push(name);
      continue;
    }
    const path = join(evidenceFolder(into), name);
    // a file that is there but damaged is put right, as keeping it again would
    if (existsSync(path) && sha256(readFileSync(path)) === name.slice(0, 64)) continue;
    makeFolder(evidenceFolder(into));
    writeWhole(path, bytes);
    evidence += 1;
  }
  return { evidence, left };
}

function joinClosings(into: string, from: string): Pick<Joined, 'closings' | 'beside'> {
  const beside: { name: string; as: string }[] = [];
  let closings = 0;
  const folder = join(into, 'closings');
  for (const name of filesIn(join(from, 'closings'))) {
    const bytes = readFileSync(join(from, 'closings', name));
    const path = join(folder, name);
    makeFolder(folder);
    if (putNew(path, bytes)) {
      closings += 1;
      continue;
    }
    if (readFileSync(path).equals(bytes)) continue;
    const ending = extname(name);
    const as = `${name.slice(0, name.length - ending.length)} (conflicted copy ${sha256(bytes).slice(0, 12)})${ending}`;
    if (!putNew(join(folder, as), bytes)) continue;
    closings += 1;
    beside.push({ name, as });
  }
  return { closings, beside };
}

function joinSignatures(into: string, from: string): number {
  const here = signatureTexts(into);
  let came = 0;
  for (const [desk, lines] of signatureTexts(from)) {
    const more = lines.filter((line) => !here.get(desk)?.includes(line));
    if (more.length === 0) continue;
    const text = more.map((line) => `${line}\n`).join('');
    makeFolder(signaturesFolder(into));
    const beside = join(signaturesFolder(into), `${desk}.joined-${sha256(text).slice(0, 16)}.jsonl`);
    if (!putNew(signaturesPath(into, desk), text)) putNew(beside, text);
    came += more.length;
  }
  return came;
}

/** Lines that are here under no hash, in order of number. */
function lacking(here: ReadonlyMap<number, readonly DeskLine[]> | undefined, there: ReadonlyMap<number, readonly DeskLine[]>) {
  return [...there.values()]
    .flat()
    .filter((line) => !here?.get(line.n)?.some(({ hash }) => hash === line.hash))
    .sort((a, b) => a.n - b.n || (a.hash < b.hash ? -1 : 1));
}

function joinLines(into: string, from: string): Joined['lines'] {
  const here = linesOfDesks(into);
  const came: { desk: string; lines: number }[] = [];
  for (const [desk, { lines }] of linesOfDesks(from)) {
    const more = lacking(here.get(desk)?.lines, lines);
    if (more.length === 0) continue;
    const text = more.map((line) => `${line.text}\n`).join('');
    makeFolder(desksFolder(into));
    // a journal that is there may be in use by its own desk: what it lacks goes beside it, and is read with it
    const beside = join(desksFolder(into), `${desk}.joined-${sha256(text).slice(0, 16)}.jsonl`);
    if (!putNew(journalPath(into, desk), text)) putNew(beside, text);
    came.push({ desk, lines: more.length });
  }
  return came;
}

/**
 * Joins the daybook in `other` into the one in `dir`. Refused, with nothing written, when either is broken (`join-broken`) or newer, when they
 * are not the same daybook, and while another process of this installation writes in `dir`.
 */
export function joinDaybooks(dir: string, other: string, installation: Installation): Result<Joined> {
  const [into, from] = [resolve(dir), resolve(other)];
  const [here, there] = [readDaybook(into), readDaybook(from)];
  if (!here.ok) return bad(...here.problems.map((p) => ({ ...p, field: 'DIR' })));
  if (!there.ok) return bad(...there.problems.map((p) => ({ ...p, field: 'OTHER' })));
  if (realpathSync(into) === realpathSync(from)) return bad(problem('join-itself', 'OTHER', { path: from }));
  const { id, name } = here.value.info;
  const { id: otherId, name: otherName } = there.value.info;
  if (id !== otherId) return bad(problem('join-other-daybook', 'OTHER', { path: from, other: otherName, otherId, name, id }));
  const refusal = unfit(here.value, 'DIR') ?? unfit(there.value, 'OTHER');
  if (refusal) return bad(refusal);
  const lock = installation.lock(id);
  if (!lock.ok) return bad(...lock.problems.map((p) => ({ ...p, field: 'DIR' })));
  try {
    // lines last: no entry is here before the evidence it names
    const done = onDisk(into, () => {
      statSync(from);
      const before = { ...joinEvidence(into, from), ...joinClosings(into, from) };
      const lines = joinLines(into, from);
      return { ...before, lines, signatures: joinSignatures(into, from) };
    });
    return done.ok ? good(done.value) : bad(...done.problems.map((p) => ({ ...p, field: 'DIR' })));
  } finally {
    lock.value.release();
  }
}
