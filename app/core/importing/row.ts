/**
 * One row of a table as the draft of an entry: its cells read and put where their fields stand, names resolved, what the old book shows beside it. Its
 * original cells go with it, as they stood. Nothing is kept here; every fault of the row is told with its column.
 */
import type { Book } from '../book/book.ts';
import type { Kind } from '../kinds/index.ts';
import { type Problem, problem } from '../result.ts';
import { dayOf } from '../time.ts';
import { readCell, withoutGuard } from './cells.ts';
import { type ImportField, type ImportFields, importFields, plainPath } from './fields.ts';
import { type CellSettings, type Mapping, mustBeEmpty, ofTheOtherBook } from './mapping.ts';
import { idNamed } from './names.ts';
import { placeOf, type TableRow } from './separated.ts';

/** A column with its field; `text` where it is the same for every row and stands in no column. */
export interface Column {
  readonly heading: string;
  readonly index: number;
  readonly path: string;
  /** Null: a group or a list, of which a cell can only say that it is empty. */
  readonly field: ImportField | null;
  readonly settings: CellSettings;
  readonly text?: string;
}

/** A cell as it stood and what was read from it. */
export interface CellRead {
  readonly column: string;
  readonly path: string;
  readonly text: string;
  /** Undefined where it could not be read. */
  readonly value: unknown;
}

/** A row before the schema and the book have judged it. */
export interface RowParsed {
  readonly value: Record<string, unknown>;
  readonly cells: readonly CellRead[];
  /** Faults of single cells, by the path of their field. */
  readonly faults: readonly { readonly path: string; readonly problem: Problem }[];
}

type Tree = Record<string, unknown> | unknown[];

/** Puts a value at its path, making the groups and lists on the way. */
function put(tree: Record<string, unknown>, path: string, value: unknown): void {
  const steps = [...path.matchAll(/([^.[\]]+)|\[(\d+)\]/g)].map((m) => (m[2] === undefined ? String(m[1]) : Number(m[2])));
  let at: Tree = tree;
  for (const [i, step] of steps.entries()) {
    const here = at as Record<string | number, unknown>;
    if (i === steps.length - 1) here[step] = value;
    else {
      here[step] ??= typeof steps[i + 1] === 'number' ? [] : {};
      at = here[step] as Tree;
    }
  }
}

/** What can only be meant in one way is filled in: the key of a part from its place, and how a weight was come by from what it is made of. */
function complete(value: unknown, path: string, fields: ImportFields): void {
  if (Array.isArray(value)) {
    for (const [i, item] of value.entries()) {
      const own = `${path}[]`;
      if (item && typeof item === 'object' && fields.leaves.get(`${own}.key`)?.cell === 'key')
        (item as Record<string, unknown>).key ??= String(i + 1);
      complete(item, own, fields);
    }
    return;
  }
  if (!value || typeof value !== 'object') return;
  const group = value as Record<string, unknown>;
  if (group.how === undefined && fields.leaves.get(`${path}.how`)?.choices.includes('stated')) {
    const ways = (['mass', 'gross', 'volume'] as const).filter((key) => group[key] !== undefined);
    if (ways.length === 1) group.how = { mass: 'stated', gross: 'scale', volume: 'volume' }[ways[0] as 'mass'];
  }
  for (const [key, member] of Object.entries(group)) complete(member, path === '' ? key : `${path}.${key}`, fields);
}

/** What every row is read with. */
export interface RowAround {
  readonly kind: Kind;
  readonly columns: readonly Column[];
  readonly mapping: Mapping;
  readonly offset: string;
}

/** Reads one row against the book as it stands before it. */
export function parseRow(row: TableRow, around: RowAround, book: Book): RowParsed {
  const value: Record<string, unknown> = { body: {} };
  const cells: CellRead[] = [];
  const faults: { path: string; problem: Problem }[] = [];
  const fields = importFields(around.kind);
  let happened = '';
  // the day comes first: what a thing was called, and a time without a day, hang on it
  const inOrder = around.columns.toSorted((a, b) => Number(b.path === 'happened') - Number(a.path === 'happened'));
  for (const column of inOrder) {
    const text = column.text ?? row.cells[column.index] ?? '';
    if (text.trim() === '') continue;
    const fault = (p: Problem) =>
      faults.push({
        path: column.path,
        problem: {
          ...p,
          field: column.text === undefined ? placeOf(row, column.heading) : `same for every row, "${column.path}"`,
        },
      });
    if ((mustBeEmpty as readonly string[]).includes(column.path)) {
      if (withoutGuard(text).trim() !== 'no') fault(problem(`import-${column.path}`, ''));
      continue;
    }
    if ((ofTheOtherBook as readonly string[]).includes(column.path)) continue;
    const { field } = column;
    if (field === null) {
      const empty = { '[]': [], '{}': {} }[text.trim()];
      if (empty === undefined) fault(problem('import-group', '', { path: column.path }));
      else put(value, column.path, empty);
      continue;
    }
    const got = readCell(text, field, column.settings, { offset: around.offset, day: happened === '' ? '' : dayOf(happened) });
    if (!got.ok) {
      for (const p of got.problems) fault(p);
      cells.push({ column: column.heading, path: column.path, text, value: undefined });
      continue;
    }
    let read = got.value.value;
    if (field.cell === 'name' && field.names !== null && column.path !== 'id') {
      const found = idNamed(book, field.names, String(read), happened);
      if (!found.ok) {
        // a person's own entry may name itself
        if (String(read) !== value.id) for (const p of found.problems) fault(p);
        read = String(read);
      } else read = found.value;
    }
    if (column.path === 'happened') {
      happened = String(read);
      if (got.value.timed === false) value.timing ??= 'day';
    }
    put(value, column.path, read);
    if (column.text === undefined) cells.push({ column: column.heading, path: column.path, text, value: read });
  }
  complete(value, '', fields);
  const page = (value.transcribed as { page?: string } | undefined)?.page;
  const pictures = (around.mapping.pictures ?? []).filter((one) => one.page === undefined || one.page === page);
  if (pictures.length > 0)
    value.evidence = [
      ...((value.evidence as unknown[] | undefined) ?? []),
      ...pictures.map(({ file, shows }) => ({ file, ...(shows === undefined ? {} : { shows }) })),
    ];
  return { value, cells, faults };
}

/** The field a path of a table leads to; undefined where there is none. */
export function fieldAt(fields: ImportFields, path: string): ImportField | null | undefined {
  const plain = plainPath(path);
  return fields.leaves.get(plain) ?? (fields.groups.has(plain) ? null : undefined);
}
