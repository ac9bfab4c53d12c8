/**
 * A whole table as drafts, or every fault in it by row and column: each row is read, judged by its kind's schema and by the book's own rules, and counts
 * for the rows after it. All or nothing: with one fault there are no drafts. It keeps nothing itself and asks no clock.
 */
import type { Book } from '../book/book.ts';
import { inOrder } from '../book/current.ts';
import { GrowingBook } from '../book/growing-book.ts';
import { checkDraft } from '../book/rules.ts';
import { type Draft, type Entry, formatNumber } from '../entry.ts';
import { draftFrom, type Kind } from '../kinds/index.ts';
import { bad, good, type Problem, problem, type Result } from '../result.ts';
import { canBeImported, importFields } from './fields.ts';
import { fieldFor, type Mapping, mappingFromHeadings, mustBeEmpty, ofTheOtherBook } from './mapping.ts';
import { type CellRead, type Column, fieldAt, parseRow, type RowAround, type RowParsed } from './row.ts';
import { placeOf, readSeparated, type Table, type TableRow } from './separated.ts';

/** What is to be read. */
export interface ImportOf {
  readonly kind: Kind;
  readonly text: string;
  readonly mapping: Mapping;
  /** Names this import; the ids of its entries begin with it. */
  readonly batch: string;
  /** The entries of the book, in order. */
  readonly entries: readonly Entry[];
  /** The machine's clock, a moment with offset. */
  readonly now: string;
  /** Only so many rows, for a look at them; left out: all. */
  readonly first?: number;
}

/** One row: what was read and, where nothing is wrong with it, its draft. */
export interface ImportRow {
  readonly row: number;
  readonly line: number;
  readonly cells: readonly CellRead[];
  readonly draft: Draft | null;
  readonly problems: readonly Problem[];
}

/** A table that could be read as such. */
export interface ImportRead {
  readonly table: Table;
  readonly rows: readonly ImportRow[];
  /** Every fault of every row, and of the columns. Empty: all of it can be kept. */
  readonly problems: readonly Problem[];
  /** All entries, in the order of the rows; none where anything is wrong. */
  readonly drafts: readonly Draft[];
}

const filler = { format: formatNumber, prev: '0'.repeat(64), hash: '0'.repeat(64) } as const;

const touches = (a: string, b: string): boolean =>
  a === b || a.startsWith(`${b}.`) || a.startsWith(`${b}[`) || b.startsWith(`${a}.`) || b.startsWith(`${a}[`);

/** The columns with their fields, and what is wrong with the mapping itself. */
function columnsOf({ kind, mapping }: ImportOf, table: Table): { readonly columns: Column[]; readonly problems: Problem[] } {
  const fields = importFields(kind);
  const columns: Column[] = [];
  const problems: Problem[] = [];
  const taken = new Set<string>();
  const passed: readonly string[] = [...ofTheOtherBook, ...mustBeEmpty];
  const add = (column: Omit<Column, 'field' | 'path'>, said: string, where: string): void => {
    const path = passed.includes(said) ? said : fieldFor(kind, said);
    if (path === null) problems.push(problem('import-no-field', where, { read: said.slice(0, 80), kind }));
    else if (taken.has(path)) problems.push(problem('import-field-twice', where, { path }));
    else {
      taken.add(path);
      columns.push({ ...column, path, field: passed.includes(said) ? null : (fieldAt(fields, path) ?? null) });
    }
  };
  const said = new Map((mapping.columns ?? []).map((one) => [one.column, one]));
  for (const { column } of mapping.columns ?? [])
    if (!table.headings.includes(column)) problems.push(problem('import-no-column', 'row 1', { read: column.slice(0, 80) }));
  for (const [index, own] of mappingFromHeadings(kind, table.headings).entries()) {
    const { column: heading, field, ...settings } = said.get(own.column) ?? own;
    const where = placeOf({ row: 1, line: 1 }, heading);
    if (field === '' && said.has(heading)) continue;
    if (field === '' && !passed.includes(heading)) {
      // an empty column says nothing and needs no place
      if (table.rows.some(({ cells }) => (cells[index] ?? '').trim() !== ''))
        problems.push(problem('import-column-unplaced', where, { read: heading.slice(0, 80), kind }));
    } else add({ heading, index, settings }, field === '' ? heading : field, where);
  }
  for (const { field, text, ...settings } of mapping.same ?? [])
    add({ heading: field, index: -1, settings, text }, field, `same for every row, "${field.slice(0, 80)}"`);
  return { columns, problems };
}

/** A problem of a draft, told at the column its field comes from. */
function placed(p: Problem, row: TableRow, columns: readonly Column[]): Problem {
  const exact = columns.find(({ path }) => path === p.field);
  const column =
    exact ?? columns.find(({ path }) => p.field !== '' && (path.startsWith(`${p.field}.`) || path.startsWith(`${p.field}[`)));
  if (column?.text !== undefined) return { ...p, field: `${placeOf(row)}, same for every row "${column.path}"` };
  if (column) return { ...p, field: placeOf(row, column.heading) };
  return { ...p, field: p.field === '' || p.field === 'body' ? placeOf(row) : `${placeOf(row)}, no column for "${p.field}"` };
}

/** The row as a draft by its shape, with its place in the import and its cells as they stood. */
function drafted(of: ImportOf, parsed: RowParsed, row: TableRow, n: number, rows: number): Result<Draft> {
  const cells = parsed.cells.map(({ column, text }) => ({ column, text }));
  return draftFrom({
    by: null,
    id: `${of.batch}-${n}`,
    ...parsed.value,
    kind: of.kind,
    imported: { batch: of.batch, n, of: rows, row: row.row, cells },
  });
}

/** The book with the rows read so far, kept in order. */
class BookSoFar {
  readonly #entries: Entry[];
  readonly #growing: GrowingBook;

  constructor(entries: readonly Entry[]) {
    this.#entries = [...entries];
    this.#growing = new GrowingBook(this.#entries);
  }

  get book(): Book {
    return this.#growing.book;
  }

  add(draft: Draft, n: number, written: string): void {
    const entry: Entry = { ...draft, ...filler, desk: 'this-import', n, written };
    let low = 0;
    let high = this.#entries.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (inOrder(this.#entries[middle] as Entry, entry) > 0) high = middle;
      else low = middle + 1;
    }
    this.#entries.splice(low, 0, entry);
    this.#growing.add(entry, this.#entries);
  }
}

/**
 * Reads a table against a book. Fails where the text is no table; faults of rows and columns come back with the rows, so that a preview can show both.
 */
export function readImport(of: ImportOf): Result<ImportRead> {
  if (!canBeImported(of.kind)) return bad(problem('import-not-this-kind', '--as', { kind: of.kind }));
  const read = readSeparated(of.text, of.mapping.separator);
  if (!read.ok) return read;
  const table = { ...read.value, rows: read.value.rows.slice(0, of.first) };
  const { columns, problems: ofColumns } = columnsOf(of, table);
  const around: RowAround = { kind: of.kind, columns, mapping: of.mapping, offset: of.mapping.offset ?? of.now.slice(-6) };
  const soFar = new BookSoFar(of.entries);
  const rows = table.rows.map((row, i): ImportRow => {
    const parsed = parseRow(row, around, soFar.book);
    const faults = parsed.faults.map((fault) => fault.problem);
    const here = { row: row.row, line: row.line, cells: parsed.cells };
    const draft = drafted(of, parsed, row, i + 1, table.rows.length);
    if (!draft.ok) {
      const more = draft.problems.filter((p) => !parsed.faults.some(({ path }) => touches(p.field, path)));
      return { ...here, draft: null, problems: [...faults, ...more.map((p) => placed(p, row, columns))] };
    }
    if (faults.length > 0) return { ...here, draft: null, problems: faults };
    const known = soFar.book.current.byId.has(draft.value.id);
    const against = known ? [problem('import-known-id', 'id')] : checkDraft(soFar.book, draft.value, of.now);
    if (against.length > 0) return { ...here, draft: null, problems: against.map((p) => placed(p, row, columns)) };
    soFar.add(draft.value, i + 1, of.now);
    return { ...here, draft: draft.value, problems: [] };
  });
  // what is the same for every row is told once
  const seen = new Set<string>();
  const once = rows
    .flatMap((row) => row.problems)
    .filter((p) => {
      if (!p.field.startsWith('same for')) return true;
      const key = `${p.code} ${p.field}`;
      return !seen.has(key) && seen.add(key);
    });
  const problems = [...ofColumns, ...once];
  return good({ table, rows, problems, drafts: problems.length > 0 ? [] : rows.flatMap(({ draft }) => draft ?? []) });
}
