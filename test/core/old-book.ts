/**
 * An old book for tests, invented from the first row to the last: 500 clean-ups of a battery that never was, with what old hands write: day, month, year;
 * ounces, pennyweights and grains; long tons; commas; remarks that look like formulas. `faults` are planted in it on purpose.
 */

export const oldHeadings = [
  'Date',
  'Ball',
  'Amalgam',
  'Ore',
  'Kind of clean-up',
  'Keeper',
  'Folio',
  'Remark',
  'Poured into',
  'Strained off',
] as const;

/** Columns as a person places them. */
export const oldMapping = {
  columns: [
    { column: 'Date', field: 'happened', days: 'day-month-year' },
    { column: 'Ball', field: 'lots[0].label' },
    { column: 'Amalgam', field: 'lots[0].weight', unit: 'ozt-dwt-gr' },
    { column: 'Ore', field: 'ore.mass', unit: 'long-ton', decimal: 'comma' },
    { column: 'Kind of clean-up', field: 'type' },
    { column: 'Keeper', field: 'by' },
    { column: 'Folio', field: 'page' },
    { column: 'Remark', field: 'note' },
    { column: 'Poured into', field: 'strained.vessel' },
    { column: 'Strained off', field: 'strained.weight', unit: 'lb', decimal: 'comma' },
  ],
  same: [{ field: 'book', text: 'Battery book 3 (invented)' }],
  offset: '+11:30',
} as const;

const two = (n: number) => String(n).padStart(2, '0');

/** The cells of row `i`, from 0. */
export function oldRow(i: number): string[] {
  const remarks = ['', 'plates dull, "dressed" twice', '=SUM(C2:C9)', "'Tis wet; drained first", '-1+2', 'two\nlines'];
  const pours = i % 4 === 0;
  return [
    `${two(1 + (i % 28))}/${two(1 + (Math.floor(i / 28) % 12))}/${1897 + Math.floor(i / 336)}`,
    `Ball ${i + 1}`,
    i % 3 === 0 ? `${5 + (i % 40)} ${i % 20} ${i % 24}` : `${5 + (i % 40)} oz. ${1 + (i % 19)} dwts.`,
    `${12 + (i % 9)},${i % 10}`,
    i % 50 === 49 ? 'general' : 'routine',
    i % 2 === 0 ? 'Keeper' : 'Helper',
    String(1 + Math.floor(i / 20)),
    remarks[i % remarks.length] ?? '',
    pours ? 'Working bottle' : '',
    pours ? `${1 + (i % 3)},25` : '',
  ];
}

/** Seven faults: the row (from 0), the column, what is written there instead, and the word the fault is known by. */
export const faults = [
  { row: 10, column: 'Date', cell: '31/02/1897', code: 'import-day' },
  { row: 61, column: 'Amalgam', cell: '12 oz 3 drams', code: 'mass-unit' },
  { row: 100, column: 'Ore', cell: '12.5', code: 'import-point' },
  { row: 222, column: 'Keeper', cell: 'Nobody', code: 'import-unknown-name' },
  { row: 300, column: 'Ball', cell: 'Ball 300', code: 'label-taken' },
  { row: 404, column: 'Kind of clean-up', cell: 'spring', code: 'not-one-of' },
  { row: 499, column: 'Amalgam', cell: '7 20 0', code: 'import-three-numbers' },
] as const;

/** The whole table, as cells under its headings. */
export function oldRows(withFaults: boolean): string[][] {
  const rows = Array.from({ length: 500 }, (_, i) => oldRow(i));
  if (withFaults) for (const { row, column, cell } of faults) (rows[row] as string[])[oldHeadings.indexOf(column)] = cell;
  return rows;
}

/** The table as text, every cell that needs it in quotation marks. */
export function separated(rows: readonly (readonly string[])[], mark = ',', end = '\n'): string {
  const cell = (text: string) => (/[",;\t\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  return [oldHeadings as readonly string[], ...rows].map((row) => row.map(cell).join(mark) + end).join('');
}
