/**
 * Reads separated text as rows of cells (RFC 4180; a semicolon or a tab may stand for the comma; any line end). Rows carry the number a spreadsheet
 * shows and the line they begin on in the file. It never trims a cell, and never guesses between two separators that are both there.
 */
import { bad, good, type Problem, problem, type Result } from '../result.ts';

export const separators = { comma: ',', semicolon: ';', tab: '\t' } as const;
export type Separator = keyof typeof separators;

/** Most that is read: characters of the text, rows, columns, characters of a cell. */
export const mostText = 10_000_000;
export const mostRows = 2_000;
export const mostColumns = 2_000;
export const mostCell = 4_000;

/** One row under the headings. */
export interface TableRow {
  /** As a spreadsheet counts: the headings are row 1. */
  readonly row: number;
  /** The line of the file it begins on. */
  readonly line: number;
  readonly cells: readonly string[];
}

export interface Table {
  readonly separator: Separator;
  readonly headings: readonly string[];
  readonly rows: readonly TableRow[];
}

/** Where a fault stands, as it is told: `row 12, column "amalgam"`; with the line of the file where a cell before it ran over several. */
export const placeOf = ({ row, line }: { readonly row: number; readonly line: number }, column?: string): string =>
  `row ${row}${row === line ? '' : ` (line ${line})`}${column === undefined ? '' : `, column "${column}"`}`;

/** The separators that stand in the first line outside quotation marks. */
function inFirstLine(text: string): Separator[] {
  let quoted = false;
  const there = new Set<string>();
  for (const char of text) {
    if (char === '"') quoted = !quoted;
    else if (!quoted && (char === '\n' || char === '\r')) break;
    else if (!quoted) there.add(char);
  }
  return (Object.keys(separators) as Separator[]).filter((name) => there.has(separators[name]));
}

interface Raw {
  readonly line: number;
  readonly cells: string[];
}

/** Every row of the text, the headings too, or where a quotation mark stands that opens or closes nothing. */
function rawRows(text: string, mark: string): Result<Raw[]> {
  const rows: Raw[] = [];
  let cells: string[] = [];
  let at = 0;
  let line = 1;
  let began = 1;
  const end = () => {
    rows.push({ line: began, cells });
    cells = [];
  };
  const refuse = (code: string, where = line) => bad(problem(code, placeOf({ row: rows.length + 1, line: where }), {}));
  while (at < text.length) {
    let cell = '';
    if (text[at] === '"') {
      const opened = line;
      at += 1;
      for (;;) {
        const close = text.indexOf('"', at);
        if (close < 0) return refuse('import-quote-open', opened);
        const part = text.slice(at, close);
        line += part.split('\n').length - 1;
        cell += part;
        at = close + 1;
        if (text[at] !== '"') break;
        cell += '"';
        at += 1;
      }
      if (at < text.length && text[at] !== mark && text[at] !== '\n' && text[at] !== '\r') return refuse('import-quote-after');
    } else {
      let stop = at;
      while (stop < text.length && text[stop] !== mark && text[stop] !== '\n' && text[stop] !== '\r') stop += 1;
      cell = text.slice(at, stop);
      at = stop;
    }
    // one line end within a cell, whatever the machine that wrote it uses
    cells.push(cell.replace(/\r\n?/g, '\n'));
    if (cells.length > mostColumns) return refuse('import-columns-many');
    if (text[at] === mark) {
      at += 1;
      // a separator at the very end leaves an empty cell behind it
      if (at < text.length && text[at] !== '\n' && text[at] !== '\r') continue;
      cells.push('');
    }
    if (at >= text.length) break;
    at += text[at] === '\r' && text[at + 1] === '\n' ? 2 : 1;
    line += 1;
    end();
    began = line;
    if (rows.length > mostRows + 1) return bad(problem('import-rows-many', '', { most: mostRows }));
  }
  if (cells.length > 0) end();
  return good(rows);
}

/** Control characters but tab and line end, and marks that turn the direction of text: no record holds them. */
const unreadable =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\u202a-\u202e\u2066-\u2069]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/;

/**
 * The table in a text. Rows without any text are passed over. Problems: import-too-large, import-empty, import-separator (say which),
 * import-quote-open, import-quote-after, import-rows-many, import-columns-many, import-heading-empty, import-heading-twice, import-cells, unprintable,
 * import-cell-long; each with row and column where it has one.
 */
export function readSeparated(given: string, separator?: Separator): Result<Table> {
  if (given.length > mostText) return bad(problem('import-too-large', '', { most: mostText }));
  const text = given.startsWith('\ufeff') ? given.slice(1) : given;
  const there = inFirstLine(text);
  if (separator === undefined && there.length > 1) return bad(problem('import-separator', 'row 1', { found: there.join(', ') }));
  const chosen = separator ?? there[0] ?? 'comma';
  const raw = rawRows(text, separators[chosen]);
  if (!raw.ok) return raw;
  const [head, ...body] = raw.value;
  if (!head || head.cells.every((cell) => cell.trim() === '')) return bad(problem('import-empty', 'row 1'));
  const headings = head.cells.map((cell) => cell.trim());
  while (headings.at(-1) === '') headings.pop();
  const problems: Problem[] = [];
  for (const [i, heading] of headings.entries()) {
    const at = { row: 1, line: 1 };
    if (heading === '') problems.push(problem('import-heading-empty', placeOf(at, String(i + 1))));
    else if (headings.indexOf(heading) < i) problems.push(problem('import-heading-twice', placeOf(at, heading)));
    if (unreadable.test(heading)) problems.push(problem('unprintable', placeOf(at, String(i + 1))));
    if (heading.length > 120) problems.push(problem('too-long', placeOf(at, `${heading.slice(0, 40)}…`), { most: 120 }));
  }
  const rows: TableRow[] = [];
  for (const [i, { line, cells }] of body.entries()) {
    if (cells.every((cell) => cell.trim() === '')) continue;
    const row = { row: i + 2, line, cells };
    const more = cells.findLastIndex((cell) => cell.trim() !== '') + 1;
    if (more > headings.length) problems.push(problem('import-cells', placeOf(row), { read: more, headings: headings.length }));
    for (const [column, cell] of cells.entries()) {
      const where = placeOf(row, headings[column] ?? String(column + 1));
      if (cell.length > mostCell) problems.push(problem('import-cell-long', where, { most: mostCell }));
      if (unreadable.test(cell)) problems.push(problem('unprintable', where));
    }
    rows.push(row);
  }
  if (rows.length === 0 && problems.length === 0) return bad(problem('import-no-rows', 'row 2'));
  return problems.length > 0 ? bad(...problems) : good({ separator: chosen, headings, rows });
}
