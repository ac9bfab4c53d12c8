/** `help`: what the command can do, as text. */
import { paperNames } from '../../app/contract.ts';
import { reckonTopics } from '../../app/core/reckon/index.ts';
import { helpTexts } from '../../app/words/terminal.ts';
import type { Verb } from './verb.ts';

/** The help page, from the table of verbs itself. */
export function helpPage(verbs: Readonly<Record<string, Verb>>): string {
  const rows = Object.values(verbs);
  const width = Math.max(...rows.map((verb) => verb.usage.length));
  return [
    helpTexts.head,
    '',
    ...rows.map((verb) => `  daybook ${verb.usage.padEnd(width)}  ${verb.does}`),
    '',
    `${helpTexts.topics} ${reckonTopics.join(', ')}`,
    `${helpTexts.papers} ${paperNames.join(', ')}`,
    '',
    ...helpTexts.codes,
  ].join('\n');
}
