/** Texts of the page that takes in an old book from a table. */
import { count } from './daybook-line-parts.ts';
import { fieldText } from './record-fields.ts';

/** What every entry has, whatever its kind. */
const ofEveryEntry: Readonly<Record<string, string>> = {
  id: 'id of the entry',
  happened: 'day and time it happened',
  by: 'who wrote it',
  timing: 'how well the time is known',
  'form.number': 'paper form, number',
  'form.page': 'paper form, sheet',
  'transcribed.book': 'old book it is copied from',
  'transcribed.page': 'page of the old book',
  'evidence[0].file': 'picture or document 1, file',
  'evidence[0].shows': 'picture or document 1, what it shows',
};

export const importPage = {
  title: 'Take in an old book',
  wanted: 'many entries of one kind at once, from a CSV file or a pasted table',
  intro:
    'Every row becomes an entry of one kind. All rows are added together, or none: a fault is named by its row and column. What each cell said is kept beside what was read from it.',
  kind: 'What the rows are',
  file: 'CSV file (UTF-8, up to 10 MB)',
  paste: 'Or paste the table here, headings first',
  columns: 'What the columns are',
  columnsSay:
    'A column is read only as it is said here: units, decimal marks and the order of day, month and year are never guessed.',
  field: (column: string) => `“${column}” is`,
  /** A field in words, and behind them the name a heading has for it: "lot 1, weight, mass (lots[0].weight.mass)". */
  fieldName: (path: string) => {
    const name = path.replace(/^body\./, '');
    const said = ofEveryEntry[path] ?? fieldText(name);
    return said === name ? name : `${said} (${name})`;
  },
  leftOut: 'left out',
  unit: (column: string) => `Unit of “${column}” where a cell has none`,
  noUnit: 'each cell has its unit',
  decimal: (column: string) => `Decimals in “${column}”`,
  decimals: { point: 'with a point', comma: 'with a comma' },
  days: (column: string) => `Days in “${column}”`,
  dayForms: {
    'year-month-day': 'year, month, day',
    'day-month-year': 'day, month, year',
    'month-day-year': 'month, day, year',
  },
  units: { 'ozt-dwt-gr': 'three numbers: ozt, dwt, gr', percent: '%' } as Readonly<Record<string, string>>,
  separator: 'What divides the columns',
  separators: { comma: 'commas', semicolon: 'semicolons', tab: 'tabs' },
  found: 'as found',
  book: 'Which old book it is copied from',
  bookHint: 'Marks every row as copied out of it. The column of its pages is its “page of the old book”.',
  picture: 'Pictures of the old book (PNG, JPEG or PDF)',
  pictureHint: 'Kept as evidence, each with the rows of its page. One that is called after a page of the table is put to it.',
  pageOf: (name: string) => `Page on ${name}`,
  goesWith: (page: string, rows: number) =>
    page === ''
      ? 'No page: it goes with every row.'
      : rows === 0
        ? 'No row stands on this page: it would go with none.'
        : `It goes with ${count(rows, 'row', 'rows')}.`,
  leaveOff: (name: string) => `Leave ${name} off`,
  preview: 'The first rows, as written and as read',
  row: 'Row',
  column: 'Column',
  written: 'As written',
  read: 'As read',
  notRead: 'not read',
  faults: (n: number) => (n === 1 ? '1 fault: nothing is added' : `${n} faults: nothing is added`),
  faultsOfFirst: (n: number) => (n === 1 ? '1 fault in the first rows' : `${n} faults in the first rows`),
  keep: (n: number) => (n === 1 ? 'Keep 1 row' : `Keep all ${n} rows`),
  asking: 'Checking and keeping every row …',
  kept: (n: number, mark: string) => `${n} ${n === 1 ? 'entry is' : 'entries are'} kept. End mark ${mark}.`,
  before: (n: number) => `This very table was taken in before (${n} entries): nothing was added.`,
  shown: (n: number, of: number) => `The first ${n} of ${of} rows; the others are checked when they are kept.`,
} as const;
