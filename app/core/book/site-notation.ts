/** How the site writes numbers, masses, temperatures and days at a moment; as the program does where it has not said. */
import type { dayForms, decimalMarks, massForms, temperatureForms } from '../kinds/site-notation.ts';
import type { Current } from './current.ts';
import { lastSaid } from './site-says.ts';

export interface Notation {
  readonly decimal: (typeof decimalMarks)[number];
  readonly masses: (typeof massForms)[number];
  readonly temperature: (typeof temperatureForms)[number];
  readonly days: (typeof dayForms)[number];
}

/** The program's own, which is also that of the terminal, of CSV and of the record. */
export const ownNotation: Notation = { decimal: 'point', masses: 'grams', temperature: 'celsius', days: 'words' };

/** The notation in force at that moment. */
export function notationAt(current: Current, at: string): Notation {
  const said = lastSaid(current, 'site-notation', at)?.body;
  return said ? { decimal: said.decimal, masses: said.masses, temperature: said.temperature, days: said.days } : ownNotation;
}
