/** What the run's figures say, in plain words, with what usually lies behind it and what to weigh next. */
import type { Content } from 'pdfmake/interfaces';
import type { Run } from '../../core/book/runs.ts';
import { findingFor } from '../../words/findings.ts';
import { runSheet as words } from '../../words/papers.ts';
import { knownOf, notRecordedText } from '../../words/retort-known.ts';
import { aside, list, numbered, part, section, sentence } from '../ledger.ts';

export function findingsOf(run: Run): Content[] {
  const findings = run.last?.figures?.findings ?? [];
  if (findings.length === 0) return [];
  const known = knownOf(run, run.last ? run.openings.indexOf(run.last) : undefined);
  const missing = run.awaits.length === 0 ? notRecordedText(run) : '';
  return [
    section(words.findings),
    ...(missing === '' ? [] : [sentence(missing)]),
    ...findings.flatMap((code) => {
      const { says, causes, next } = findingFor(code, known);
      return [part(says), aside(words.causes), ...numbered(causes), aside(words.next), ...list(next)];
    }),
  ];
}
