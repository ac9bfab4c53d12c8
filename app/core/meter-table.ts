/**
 * A meter's own table, time and figure row by row, read as air readings: all of it or none of it, every fault by its row and column. A figure is kept as
 * it stands in its cell, with the sign beside or before it; a row lasts to the end its table gives, or until the next row. It guesses no time and no unit.
 */
import { placeOf, readSeparated, type Separator, type TableRow } from './importing/separated.ts';
import { type Body, bodyFrom } from './kinds/index.ts';
import { bad, good, type Problem, problem, type Result } from './result.ts';
import { compareMoments, isMoment } from './time.ts';

type AirBody = Body<'air-reading'>;

/** How the table is to be read. */
export interface MeterTable {
  /** The headings of the columns: when a row begins, its figure, its sign and its end where the table has them. */
  readonly columns: { readonly time: string; readonly value: string; readonly mark?: string; readonly end?: string };
  /** The offset of its clock ("+13:00"), for times that carry none. */
  readonly offset: string;
  /** When the last row ends, where the table has no column for it: a moment. */
  readonly ends?: string;
  readonly separator?: Separator;
  /** What all its readings have in common. */
  readonly reading: Omit<AirBody, 'from' | 'to' | 'shows'>;
}

/** "2026-03-14 09:00:10" or with T, with or without an offset, as a moment; null for anything else. */
function momentIn(cell: string, offset: string): string | null {
  const text = cell.trim().replace(/^(\d{4}-\d{2}-\d{2})\s+/, '$1T');
  const whole = /[+-]\d{2}:\d{2}$/.test(text.slice(10)) ? text : `${text}${offset}`;
  return isMoment(whole) ? whole : null;
}

/** The figure with its sign, as a reading keeps it; null where sign and figure cannot stand together. */
function figureIn(value: string, mark: string): string | null {
  const own = /^([<>]?)\s*(\S+)$/.exec(value.trim());
  const sign = mark.trim() === '=' ? '' : mark.trim();
  if (!own || !['', '<', '>'].includes(sign) || (own[1] && sign && own[1] !== sign)) return null;
  return `${own[1] || sign}${own[2]}`;
}

/** The readings of the table in the order of their rows, or every fault. */
export function readMeterTable(text: string, how: MeterTable): Result<readonly AirBody[]> {
  const table = readSeparated(text, how.separator);
  if (!table.ok) return table;
  const { headings, rows } = table.value;
  const { columns } = how;
  const wanted = [columns.time, columns.value, columns.mark, columns.end].filter((c) => c !== undefined);
  const missing = wanted.filter((heading) => !headings.includes(heading));
  if (missing.length > 0)
    return bad(...missing.map((heading) => problem('meter-column', placeOf({ row: 1, line: 1 }, heading), { heading })));
  const cell = (row: TableRow, heading: string): string => row.cells[headings.indexOf(heading)] ?? '';
  const problems: Problem[] = [];
  const fault = (code: string, row: TableRow, heading: string) =>
    problems.push(problem(code, placeOf(row, heading), { read: cell(row, heading).slice(0, 60) }));

  const starts = rows.map((row) => momentIn(cell(row, columns.time), how.offset));
  const readings = rows.flatMap((row, i): AirBody[] => {
    const from = starts[i] ?? null;
    if (from === null) {
      fault('meter-time', row, columns.time);
      return [];
    }
    const before = starts[i - 1] ?? null;
    if (before !== null && compareMoments(from, before) <= 0) fault('meter-order', row, columns.time);
    const mark = columns.mark === undefined ? '' : cell(row, columns.mark);
    const shows = figureIn(cell(row, columns.value), mark);
    if (shows === null) {
      fault(
        columns.mark !== undefined && !['', '=', '<', '>'].includes(mark.trim()) ? 'meter-mark' : 'air-figure',
        row,
        columns.mark ?? columns.value,
      );
      return [];
    }
    const to =
      columns.end === undefined
        ? i + 1 < rows.length
          ? (starts[i + 1] ?? null)
          : (how.ends ?? null)
        : momentIn(cell(row, columns.end), how.offset);
    if (to === null) {
      if (columns.end !== undefined) fault('meter-time', row, columns.end);
      else if (i + 1 === rows.length) problems.push(problem('meter-ends', placeOf(row, columns.time)));
      return [];
    }
    if (compareMoments(to, from) <= 0) fault('meter-order', row, columns.end ?? columns.time);
    const body = { ...how.reading, from, to, shows };
    const got = bodyFrom('air-reading', body);
    if (got.ok) return [got.value];
    for (const p of got.problems)
      problems.push({ ...p, field: placeOf(row, p.field === 'body.shows' ? columns.value : p.field) });
    return [];
  });
  return problems.length > 0 ? bad(...problems) : good(readings);
}
