/**
 * Entries of one kind as a table: a row for each, as it reads now, its fields by their path in the entry ("body.lots[0].weight.gross"). Struck and
 * corrected entries are there too, and say so. What a correction changed stands in a table of its own as it was first written. Only what the caller
 * withholds by id is left out, from both.
 */
import type { Book } from '../../core/book/book.ts';
import type { Entry } from '../../core/entry.ts';
import { type Kind, kinds } from '../../core/kinds/index.ts';
import { under } from '../../core/result.ts';
import { csvText } from './cells.ts';

/** A table with the number of its rows. */
export interface Table {
  readonly name: string;
  readonly rows: number;
  readonly text: string;
}

/** What stands before the fields of every row. */
const about = [
  'id',
  'happened',
  'written',
  'desk',
  'n',
  'by',
  'corrected',
  'struck',
  'contested',
  'hash',
  'prev',
  'format',
] as const;

/** Members of the envelope that any entry may carry. */
const optional = ['timing', 'witness', 'form', 'transcribed', 'evidence'] as const;

/** Leaves of a value with their paths. An empty list or group is told as such, or it would look unanswered. */
function leaves(value: unknown, path: string, found: Map<string, string>): void {
  if (value === undefined) return;
  if (value === null || typeof value !== 'object') {
    found.set(path, value === null ? '' : String(value));
    return;
  }
  const members = Array.isArray(value) ? value.map((item, i) => [i, item] as const) : Object.entries(value);
  if (members.length === 0) found.set(path, Array.isArray(value) ? '[]' : '{}');
  for (const [key, member] of members) leaves(member, under(path, key), found);
}

interface Row {
  readonly entry: Entry;
  readonly happened: string;
  readonly body: unknown;
  readonly corrected: readonly string[];
  readonly struck: string;
  readonly contested: boolean;
}

function tableOf(name: string, rows: readonly Row[]): Table {
  const flat = rows.map(({ entry, body }) => {
    const found = new Map<string, string>();
    for (const key of optional) leaves(entry[key], key, found);
    leaves(body, 'body', found);
    return found;
  });
  const fields = [...new Set(flat.flatMap((row) => [...row.keys()]))];
  const cells = rows.map(({ entry, happened, corrected, struck, contested }, i) => [
    entry.id,
    happened,
    entry.written,
    entry.desk,
    String(entry.n),
    entry.by ?? '',
    corrected.join(' '),
    struck,
    contested ? 'yes' : 'no',
    entry.hash,
    entry.prev,
    String(entry.format),
    ...fields.map((field) => flat[i]?.get(field) ?? ''),
  ]);
  return { name, rows: rows.length, text: csvText([...about, ...fields], cells) };
}

/** Entries that are left out, by id. */
type Without = ReadonlyMap<string, unknown>;
const none: Without = new Map();

/** A table for every kind of entry, empty ones too, and one for entries of kinds that are not understood here. */
export function entryTables(book: Book, without: Without = none): readonly Table[] {
  const readings = [...book.current.byId.values()].filter((r) => !without.has(r.id));
  const known = (Object.keys(kinds) as Kind[]).map((kind) =>
    tableOf(
      kind,
      readings
        .filter((r) => r.kind === kind)
        .map((r) => ({
          entry: r.entry,
          happened: r.happened,
          body: r.body,
          corrected: r.corrections.map((c) => c.id),
          struck: r.struck?.id ?? '',
          contested: r.contested,
        })),
    ),
  );
  const strange = book.current.notUnderstood.map((entry) => ({
    entry,
    happened: entry.happened,
    body: { kind: entry.kind, ...entry.body },
    corrected: [],
    struck: '',
    contested: false,
  }));
  return strange.length === 0 ? known : [...known, tableOf('not-understood', strange)];
}

/** Columns of the table of what no row of a kind's table shows any more. */
const firstColumns = ['id', 'desk', 'n', 'kind', 'why', 'field', 'value'] as const;

/**
 * As first written, field by field: every entry that reads otherwise now (`why` is "corrected"), and every line whose id another line bore before it
 * and which therefore counts nowhere ("same-id").
 */
export function asFirstWritten(book: Book, without: Without = none): Table {
  const rows: string[][] = [];
  const tell = (entry: Entry, why: string): void => {
    if (without.has(entry.id)) return;
    const found = new Map<string, string>();
    const { id: _, desk: _d, n: _n, kind: _k, ...rest } = entry;
    leaves(rest, '', found);
    for (const [field, value] of found) rows.push([entry.id, entry.desk, String(entry.n), entry.kind, why, field, value]);
  };
  for (const { entry, corrections } of book.current.byId.values()) if (corrections.length > 0) tell(entry, 'corrected');
  const strange = new Map(book.current.notUnderstood.map((entry) => [entry.id, entry]));
  for (const entry of book.entries) {
    const counts = book.current.byId.get(entry.id)?.entry ?? strange.get(entry.id);
    if (counts && counts.hash !== entry.hash) tell(entry, 'same-id');
  }
  return { name: 'as-first-written', rows: rows.length, text: csvText(firstColumns, rows) };
}
