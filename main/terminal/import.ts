/**
 * `import DIR --as KIND FILE.csv [--mapping FILE.json] [--dry-run]`: adds the rows of a table as entries of one kind, written by this installation's own desk under
 * its lock. One fault anywhere, and nothing at all is added. `--dry-run` prints every entry that would be added and opens nothing for writing.
 */
import { readFileSync, statSync } from 'node:fs';
import { type Mapping, mapping as mappingShape } from '../../app/core/importing/mapping.ts';
import { mostText, placeOf } from '../../app/core/importing/separated.ts';
import { read } from '../../app/core/read.ts';
import { bad, good, problem, type Result } from '../../app/core/result.ts';
import { importTexts, verbTexts } from '../../app/words/terminal.ts';
import { machineClock } from '../host/clock.ts';
import { onDisk } from '../host/disk.ts';
import { batchOf, importInto, readTable } from '../host/import-table.ts';
import { openInstallation, stateFolder } from '../host/installation.ts';
import { openDaybook } from '../host/open-daybook.ts';
import { readRecord } from './record.ts';
import { done, refused, type Verb } from './verb.ts';

/** The text of a file, whole and in UTF-8. */
function textOf(path: string, field: string): Result<string> {
  const bytes = onDisk(path, () => (statSync(path).size > mostText ? null : readFileSync(path)));
  if (!bytes.ok) return bad(...bytes.problems.map((p) => ({ ...p, field })));
  if (bytes.value === null) return bad(problem('import-too-large', field, { most: mostText }));
  try {
    return good(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes.value));
  } catch {
    return bad(problem('import-not-text', field));
  }
}

function mappingOf(path: string | undefined): Result<Mapping> {
  if (path === undefined) return good({});
  const text = textOf(path, '--mapping');
  if (!text.ok) return text;
  let value: unknown;
  try {
    value = JSON.parse(text.value);
  } catch {
    return bad(problem('not-json', '--mapping'));
  }
  const got = read(mappingShape, value);
  return got.ok ? got : bad(...got.problems.map((p) => ({ ...p, field: p.field === '' ? '--mapping' : `--mapping ${p.field}` })));
}

export const importVerb: Verb = {
  usage: 'import DIR --as KIND FILE.csv [--mapping FILE.json] [--dry-run]',
  does: verbTexts.import,
  places: ['DIR', 'FILE.csv'],
  options: { as: 'needed', mapping: 'optional', 'dry-run': 'flag' },
  run: async ({ places, options, flags }, machine) => {
    const dir = places.DIR as string;
    const text = textOf(places['FILE.csv'] as string, 'FILE.csv');
    const mapping = mappingOf(options.mapping);
    if (!text.ok || !mapping.ok) return refused(...(text.ok ? [] : text.problems), ...(mapping.ok ? [] : mapping.problems));
    const record = readRecord(dir);
    if (!record.ok) return record.ends;
    const { entries } = record.value.daybook;
    const kind = options.as as string;
    const ask = { kind, text: text.value, mapping: mapping.value };
    const batch = batchOf(ask);
    const there = entries.filter(({ imported }) => imported?.batch === batch).length;
    if (there > 0) return refused(problem('import-before', 'FILE.csv', { entries: there }));
    if (flags.has('dry-run')) {
      const got = readTable(ask, entries, machineClock());
      if (!got.ok) return refused(...got.problems);
      for (const { row, line, draft } of got.value.rows)
        if (draft) machine.print(importTexts.row(placeOf({ row, line }), draft.happened, draft.kind, JSON.stringify(draft.body)));
      machine.print(importTexts.would(got.value.drafts.length, kind));
      return done;
    }
    const installation = openInstallation(stateFolder());
    if (!installation.ok) return refused(...installation.problems);
    const book = openDaybook(dir, installation.value);
    if (!book.ok) return refused(...book.problems);
    try {
      const added = importInto(book.value, ask, machineClock());
      if (!added.ok) return refused(...added.problems);
      machine.print(importTexts.added(added.value.added, added.value.desk.desk, added.value.desk.endMark));
      return done;
    } finally {
      book.value.close();
    }
  },
};
