/** How a run stands: open, awaiting a weight, or closed with what its numbers show. It says what was weighed, and judges nothing further. */
import { type Book, runOf } from '../../core/book/book.ts';
import type { Lot } from '../../core/book/lots.ts';
import { stateAt } from '../../core/book/registers.ts';
import { type Awaited, type Run, runAt } from '../../core/book/runs.ts';
import { dayNumber, dayOf } from '../../core/time.ts';
import { dayText } from '../../words/dates.ts';
import { awaitedNames, findingNames, retort as words } from '../../words/retort.ts';
import { exactGrams } from './typed.ts';

export type Stage = Awaited | 'closed';

export interface RunState {
  readonly stage: Stage;
  /** The state in words. */
  readonly text: string;
  readonly tone: 'plain' | 'cool' | 'warm' | 'fault';
}

/** Findings that need somebody to do something. */
const wanting = new Set(['short-of-mercury', 'more-out-than-in']);

export function stateOf(run: Run): RunState {
  const awaited = run.awaits[0];
  if (awaited !== undefined) {
    const text = run.awaits.length > 1 ? `${awaitedNames.sponge}, ${awaitedNames.mercury}` : awaitedNames[awaited];
    return { stage: awaited, text, tone: 'cool' };
  }
  const findings = run.openings.at(-1)?.figures?.findings ?? [];
  const tone = findings.some((f) => wanting.has(f)) ? 'fault' : findings.some((f) => f.endsWith('-sponge')) ? 'warm' : 'plain';
  return { stage: 'closed', text: words.closed(findings.map((f) => findingNames[f]).join(', ')), tone };
}

/** All runs, the newest first. */
export const newestFirst = (book: Book): readonly Run[] => [...book.runs].reverse();

/** What the retort of a run was called then. */
export function retortName(book: Book, id: string, at: string): string {
  const thing = book.registers.retort.get(id);
  return thing ? stateAt(thing, at).body.label : id;
}

/** What a vessel is called at that moment. */
export function vesselName(book: Book, id: string, at: string): string {
  const thing = book.registers.vessel.get(id);
  return thing ? stateAt(thing, at).body.label : id;
}

/** "14 March 2026, Pot retort, 955.6 g": a charge in a list of charges. */
export function chargeName(book: Book, charge: string): string {
  const run = runOf(book, charge);
  const own = run?.charges.find((c) => c.id === charge);
  if (!run || !own) return charge;
  // two charges of one day and one retort are told apart by their weights
  return words.chargeNamed(dayText(own.reading.happened), retortName(book, own.retort, runAt(run)), exactGrams(own.total));
}

/** Lots in the safe, the oldest first, then as they were written. */
export const lotsInSafe = (book: Book): readonly Lot[] => [...book.lots.all.values()].filter((lot) => lot.fate === 'in-safe');

/** Whole days from one moment's calendar day to another's. */
export const daysBetween = (from: string, to: string): number => (dayNumber(dayOf(to)) ?? 0) - (dayNumber(dayOf(from)) ?? 0);
