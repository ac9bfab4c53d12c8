/**
 * `export DIR --out FOLDER [--all]`: every kind of entry as CSV, what corrections changed, the bars, the yields, the movements, every desk's journal and signatures as they stand, how to verify all of
 * it in plain words, and a manifest with the end marks and the SHA-256 of each file, so that the record can be taken away and read without this program. The folder must be empty or not there yet, and lies outside the daybook.
 * Without `--all` it leaves out what is not for everybody: those entries stand in no table, and in a journal their line keeps its place in the chain and
 * says only what sort of thing is kept back.
 */
import { existsSync, readdirSync, realpathSync, rmdirSync, rmSync } from 'node:fs';
import { basename, dirname, join, resolve, sep } from 'node:path';
import { withheldOf } from '../../app/core/book/withheld.ts';
import { type Problem, problem } from '../../app/core/result.ts';
import { barsTable } from '../../app/papers/csv/bars.ts';
import { asFirstWritten, entryTables } from '../../app/papers/csv/entries.ts';
import { movementsCsv } from '../../app/papers/csv/movements.ts';
import { yieldsTable } from '../../app/papers/csv/yields.ts';
import { madeTexts, verbTexts } from '../../app/words/terminal.ts';
import { verifyFile } from '../../app/words/verify.ts';
import { canonicalText, sha256 } from '../host/canonical.ts';
import { diskProblem, makeFolder, onDisk, writeWhole } from '../host/disk.ts';
import { leftOut } from '../host/left-out.ts';
import { checkSignatures } from '../host/sign-check.ts';
import { signatureTexts } from '../host/sign-lines.ts';
import { readRecord, tellLeftOut, type Verified } from './record.ts';
import { done, refused, type Verb } from './verb.ts';

interface Written {
  readonly name: string;
  readonly text: string;
  readonly rows: number;
}

/** Why nothing can be exported to `out`; null where it can be tried. */
function unfit(out: string, daybook: string): Problem | null {
  let there = out;
  while (!existsSync(there) && dirname(there) !== there) there = dirname(there);
  const real = onDisk(out, () => realpathSync(there));
  if (!real.ok) return { ...(real.problems[0] as Problem), field: '--out' };
  if (`${real.value}${sep}`.startsWith(`${realpathSync(daybook)}${sep}`))
    return problem('inside-the-daybook', '--out', { read: basename(out) });
  if (!existsSync(out)) return null;
  const inside = onDisk(out, () => readdirSync(out));
  if (!inside.ok) return { ...(inside.problems[0] as Problem), field: '--out' };
  return inside.value.length > 0 ? problem('export-not-empty', '--out', { path: out }) : null;
}

function filesOf({ daybook, book }: Verified, all: boolean): Written[] {
  const without = all ? new Map<string, never>() : withheldOf(daybook.entries);
  const tables = [...entryTables(book, without), asFirstWritten(book, without), barsTable(book), yieldsTable(book)].map(
    ({ name, text, rows }) => ({
      name: `${name}.csv`,
      text,
      rows,
    }),
  );
  const files = [...tables, { name: 'movements.csv', text: movementsCsv(book), rows: book.movements.all.length }];
  // what verified is canonical: written again it is the same bytes as on disk
  const journals = daybook.desks.map(({ desk }) => ({
    name: `journal-${desk}.jsonl`,
    text: daybook.entries
      .filter((e) => e.desk === desk)
      .sort((a, b) => a.n - b.n)
      .map((e) => {
        const what = without.get(e.id);
        return `${canonicalText(what === undefined ? e : { desk: e.desk, hash: e.hash, n: e.n, prev: e.prev, withheld: what })}\n`;
      })
      .join(''),
    rows: 0,
  }));
  // as they stand: their own text is what was signed
  const signatures = [...signatureTexts(daybook.folder)].map(([desk, lines]) => ({
    name: `signatures-${desk}.jsonl`,
    text: lines.map((line) => `${line}\n`).join(''),
    rows: 0,
  }));
  const keys = new Map(checkSignatures(daybook.folder, daybook).desks.map((d) => [d.desk, d]));
  const others = [
    ...journals,
    ...signatures,
    { name: 'VERIFY.md', text: verifyFile(daybook.desks.map((d) => ({ ...d, key: keys.get(d.desk)?.key }))), rows: 0 },
  ];
  const leftOutHere = daybook.desks.flatMap(leftOut);
  const manifest = {
    daybook: daybook.info,
    entries: daybook.entries.length,
    withheld: without.size,
    end_marks: daybook.desks.map((d) => {
      const by = keys.get(d.desk);
      const marks = { desk: d.desk, entries: d.entries, end_mark: d.endMark };
      return by ? { ...marks, signed_entries: by.entries, key: by.key } : marks;
    }),
    ...(leftOutHere.length > 0 ? { left_out: leftOutHere } : {}),
    files: files.map(({ name, text, rows }) => ({ file: name, rows, bytes: Buffer.byteLength(text), sha256: sha256(text) })),
    others: others.map(({ name, text }) => ({ file: name, bytes: Buffer.byteLength(text), sha256: sha256(text) })),
  };
  // last, so that a folder without it is no whole export
  return [...files, ...others, { name: 'manifest.json', text: `${JSON.stringify(manifest, null, 2)}\n`, rows: 0 }];
}

/** Writes them all, or none. */
function writeAllOrNone(out: string, files: readonly Written[]): Problem | null {
  const made = !existsSync(out);
  const written: string[] = [];
  try {
    makeFolder(out);
    for (const { name, text } of files) {
      written.push(join(out, name));
      writeWhole(join(out, name), text);
    }
    return null;
  } catch (error) {
    for (const file of written) rmSync(file, { force: true });
    if (made && existsSync(out) && readdirSync(out).length === 0) rmdirSync(out);
    return { ...diskProblem(error, out), field: '--out' };
  }
}

export const exportVerb: Verb = {
  usage: 'export DIR --out FOLDER [--all]',
  does: verbTexts.export,
  places: ['DIR'],
  options: { out: 'needed', all: 'flag' },
  run: async ({ places, options, flags }, machine) => {
    const record = readRecord(places.DIR as string);
    if (!record.ok) return record.ends;
    tellLeftOut(record.value, machine);
    const out = resolve(options.out as string);
    const why = unfit(out, record.value.daybook.folder);
    if (why !== null) return refused(why);
    const files = filesOf(record.value, flags.has('all'));
    const failed = writeAllOrNone(out, files);
    if (failed !== null) return refused(failed);
    machine.print(madeTexts.exported(out, files.length, record.value.daybook.entries.length));
    return done;
  },
};
