/** Problems of a table that is taken in: what a cell, a column or a row cannot be, and what to do. Where it stands is told beside it. */
import type { ProblemTexts } from './problems.ts';
import { things } from './things.ts';

const thing = (wanted: unknown): string => things[String(wanted)] ?? 'thing';
const separatorNames: Readonly<Record<string, string>> = { comma: 'commas', semicolon: 'semicolons', tab: 'tabs' };

export const importProblems: ProblemTexts = {
  'import-not-this-kind': (d) =>
    `Entries of the kind “${d.kind}” cannot be taken from a table, because they rest on other entries as they stood: write them up one by one.`,
  'import-kind-unknown': (d) => `There is no kind of entry called “${d.read}”: it is one of ${d.kinds}.`,
  'import-too-large': (d) => `The table is larger than ${Math.floor(Number(d.most) / 1_000_000)} MB: take it in in parts.`,
  'import-not-text': () => 'The file is not text in UTF-8, so its letters cannot be told: save it again as CSV in UTF-8.',
  'import-empty': () => 'There are no headings here: the first row has to name the columns.',
  'import-no-rows': () => 'There are headings but no rows below them: nothing would be added.',
  'import-separator': (d) =>
    `The headings hold ${String(d.found)
      .split(', ')
      .map((name) => separatorNames[name] ?? name)
      .join(' and ')}, so it cannot be told what divides the columns: say which it is.`,
  'import-quote-open': () =>
    'A quotation mark opens here and never closes: close it, or write it twice if it belongs to the text.',
  'import-quote-after': () => 'Something follows a closing quotation mark: write a mark that belongs to the text twice.',
  'import-rows-many': (d) => `There are more than ${d.most} rows: take the table in in parts.`,
  'import-columns-many': () => 'There are more columns than any entry has fields: check what divides the columns.',
  'import-heading-empty': () => 'This column has no heading: give it one, or take the column out.',
  'import-heading-twice': () => 'Two columns have this heading: give one of them another.',
  'import-cells': (d) =>
    `This row has ${d.read} cells under ${d.headings} headings: a cell with the separator in it needs quotation marks.`,
  'import-cell-long': (d) => `This cell is longer than ${d.most} characters: shorten it.`,
  'import-no-column': (d) =>
    `The mapping speaks of a column “${d.read}” that the table does not have: take it out, or check its spelling.`,
  'import-no-field': (d) => `An entry of the kind “${d.kind}” has no field “${d.read}”: pick one it has.`,
  'import-field-twice': (d) => `Another column is “${d.path}” already: one of the two has to be left out.`,
  'import-column-unplaced': (d) =>
    `It is not said what the column “${d.read}” is: name a field of the kind “${d.kind}” for it, or leave the column out on purpose.`,
  'import-comma': (d) =>
    `“${d.read}” has a comma, and the column is said to have decimal points: say that it has commas, or write a point.`,
  'import-point': (d) =>
    `“${d.read}” has a point, and the column is said to have decimal commas: say that it has points, or write a comma; no mark for thousands.`,
  'import-number': (d) => `“${d.read}” is not a number: write digits with at most one decimal mark.`,
  'import-three-numbers': (d) =>
    `“${d.read}” is not ounces, pennyweights and grains: three numbers, pennyweights below 20 and grains below 24, such as 87 11 10.`,
  'import-day': (d) => `“${d.read}” is not a day written as ${d.form}: check it, or say how the days of this column are written.`,
  'import-year': (d) => `The year in “${d.read}” has two figures, and the century is not guessed: write all four.`,
  'import-time': (d) => `“${d.read}” has no time of day that could be read: write it as 09:20, 24 hours.`,
  'import-group': () =>
    'Only [] or {} can stand here, for a list or group that is empty: put what it holds in columns of its own.',
  'import-unknown-name': (d) =>
    `No ${thing(d.wanted)} is called “${d.read}” in this daybook: enter it first, or check the spelling.`,
  'import-two-names': (d) =>
    `“${d.read}” could be any of ${d.count}: ${thing(d.wanted)} names that are alike cannot be told apart, so write the id of the one that is meant.`,
  'import-struck': () => 'This row was struck in the book it comes from: leave the row out.',
  'import-contested': () =>
    'This row has two corrections that disagree in the book it comes from: settle that first, or leave the row out.',
  'import-known-id': () => 'An entry with this id is in the daybook already, or stands twice in this table: leave the row out.',
  'import-before': (d) => `This very table was taken in before (${d.entries} entries): nothing is added a second time.`,
  'import-by-itself': () =>
    'An entry that says it came in with a table can only be kept with all the others of it: take the table in.',
  'import-mapping': () => 'This is not a mapping of columns as the help describes it: check the file.',
  'import-more': (d) => `There are ${d.more} more faults after these: mend these first.`,
};
