/**
 * Comma-separated text (RFC 4180, with plain line ends). A cell that a spreadsheet would run as a formula is made text by an apostrophe before it;
 * plain decimals, negative ones too, are data and stay as they are.
 */
import Papa from 'papaparse';
import { formula } from '../../words/formula.ts';

/** Rows under a header, each ended by a line end. */
export const csvText = (header: readonly string[], rows: readonly (readonly string[])[]): string =>
  `${Papa.unparse([[...header], ...rows.map((row) => [...row])], { newline: '\n', escapeFormulae: formula })}\n`;
