/**
 * Comma-separated text (RFC 4180, with plain line ends). A cell that a spreadsheet would run as a formula is made text by an apostrophe before it.
 * Plain decimals, negative ones too, are data and stay as they are: "-0.5" is the number it says, while "-1+2", "+3" and "−4" are text.
 * Method: Open Worldwide Application Security Project, CSV injection (from memory).
 */
import Papa from 'papaparse';

/** What starts a formula in some spreadsheet, blanks and invisible marks before it or not, unless the whole cell is a plain decimal. */
const formula = /^(?!-?\d+(?:\.\d+)?$)(?:[\t\r\n]|[\s\p{Cc}\p{Cf}]*[=+\-@−＝＋－＠﹦﹢﹣﹫])/u;

/** Rows under a header, each ended by a line end. */
export const csvText = (header: readonly string[], rows: readonly (readonly string[])[]): string =>
  `${Papa.unparse([[...header], ...rows.map((row) => [...row])], { newline: '\n', escapeFormulae: formula })}\n`;
