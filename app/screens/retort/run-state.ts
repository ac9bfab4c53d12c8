/** How a run stands: open, awaiting a weight, or complete with what its numbers show. It says what was weighed, and judges nothing further. */
import { type Book, runOf } from '../../core/book/book.ts';
import type { Lot } from '../../core/book/lots.ts';
import { stateAt } from '../../core/book/registers.ts';
import { type Awaited, type Run, runAt } from '../../core/book/runs.ts';
import { clockOf, dayNumber, dayOf } from '../../core/time.ts';
import { dayText, momentText } from '../../words/dates.ts';
import { verdictText, retort as words } from '../../words/retort.ts';
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
  const findings = run.openings.at(-1)?.figures?.findings ?? [];
  const text = verdictText(run.awaits, findings);
  if (awaited !== undefined) return { stage: awaited, text, tone: 'cool' };
  const tone = findings.some((f) => wanting.has(f)) ? 'fault' : findings.some((f) => f.endsWith('-sponge')) ? 'warm' : 'plain';
  return { stage: 'closed', text, tone };
}

/** All runs, the newest first. */
export const newestFirst = (book: Book): readonly Run[] => [...book.runs].reverse();

/** Balls and other things of a run by name, as far as a line holds: "B1, B2, B3 and 2 more". */
function ballsOf(run: Run): string {
  const labels = run.charges.flatMap((charge) => [...charge.rows, ...charge.others].map(({ label }) => label));
  return labels.length <= 3 ? labels.join(', ') : words.ballsMore(labels.slice(0, 3).join(', '), labels.length - 3);
}

/** The day of a run; where its day has several, with what tells them apart: the time, or the balls where the times are the same or only days. */
export function dayOfRun(book: Book, run: Run): string {
  const at = runAt(run);
  const same = book.runs.filter((other) => dayOf(runAt(other)) === dayOf(at));
  if (same.length < 2) return dayText(at);
  const clocks = new Set(same.map((other) => clockOf(runAt(other))));
  const dayOnly = (run.openings.at(-1)?.firing.reading ?? run.charges[0]?.reading)?.entry.timing === 'day';
  return clocks.size === same.length && !dayOnly ? momentText(at) : words.dayAndBalls(dayText(at), ballsOf(run));
}

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
