/** What the run's figures say, in plain words, with what usually lies behind it and what to weigh next. */
import type { Content } from 'pdfmake/interfaces';
import type { Run } from '../../core/book/runs.ts';
import { findingWords } from '../../words/findings.ts';
import { runSheet as words } from '../../words/papers.ts';
import { aside, list, numbered, part, section } from '../ledger.ts';

export function findingsOf(run: Run): Content[] {
  const findings = run.last?.figures?.findings ?? [];
  if (findings.length === 0) return [];
  return [
    section(words.findings),
    ...findings.flatMap((code) => {
      const { says, causes, next } = findingWords[code];
      return [part(says), aside(words.causes), ...numbered(causes), aside(words.next), ...list(next)];
    }),
  ];
}
