/** One thing that an auditor would raise: what it is, what it opens, since when it stands. It says what is there and judges nobody. */
import type { RegisterKind } from '../../kinds/index.ts';
import type { Book } from '../book.ts';
import type { Flag, FlagCode } from '../flags.ts';

/** In the order they are shown. */
export const outOfStepGroups = [
  'contested',
  'record',
  'standing',
  'gains',
  'weights',
  'runs',
  'checks',
  'due',
  'lots',
  'late',
] as const;
export type OutOfStepGroup = (typeof outOfStepGroups)[number];

/** Codes of this list's own; what a flag already says keeps the flag's code. */
export const ownCodes = [
  'run-no-checks',
  'run-no-witness',
  'run-no-air-reading',
  'scale-due',
  'scale-no-certificate',
  'meter-due',
  'retort-due',
  'check-overdue',
  'check-not-done',
  'drum-due',
  'writer-left',
  'lot-old',
  'unit-slip',
  'run-gain',
  'count-gain',
  'period-gain',
  'clock-back',
  'happened-later',
  'same-id',
  'correction-adrift',
  'not-understood',
  'notice',
  'standing-none',
  'standing-expired',
  'standing-holds-none',
  'authority-expired',
  'written-late',
] as const;
export type OwnCode = (typeof ownCodes)[number];

/** What a thing opens: an entry, a thing of a register, or nothing where only the files themselves tell. */
export type Opens = { readonly entry: string } | { readonly register: RegisterKind; readonly id: string } | null;

export interface OutOfStep {
  readonly code: OwnCode | FlagCode;
  readonly group: OutOfStepGroup;
  readonly opens: Opens;
  /** The moment or day it stands from; empty where nothing dates it. */
  readonly since: string;
  /** Values its sentence names. Masses in micrograms, times in days. */
  readonly data: Readonly<Record<string, string | number>>;
}

/** Something the host told about the files of the record: contract.ts, Notice. */
export interface RecordNotice {
  readonly code: string;
  readonly desk?: string | undefined;
  readonly line?: number | undefined;
  readonly detail?: string | undefined;
}

export interface Asked {
  /** The moment it is asked for: what is due, expired or old is so then. */
  readonly at: string;
  /** A lot in the safe for more days than this is told; left out: as the site set it at that moment. */
  readonly lotDays?: number;
  /** What the host told about the files; left out where nobody asked it. */
  readonly notices?: readonly RecordNotice[];
}

export const ofEntry = (
  group: OutOfStepGroup,
  code: OutOfStep['code'],
  entry: string,
  since: string,
  data: OutOfStep['data'] = {},
): OutOfStep => ({ code, group, opens: { entry }, since, data });

export const ofThing = (
  group: OutOfStepGroup,
  code: OutOfStep['code'],
  register: RegisterKind,
  id: string,
  since: string,
  data: OutOfStep['data'] = {},
): OutOfStep => ({ code, group, opens: { register, id }, since, data });

/**
 * Flags of the book with these codes, each thing said once for an entry, of entries that still count. `field` tells two readings of one entry apart
 * and is left out where a sentence does not name it.
 */
export function fromFlags(
  book: Book,
  group: OutOfStepGroup,
  codes: readonly FlagCode[],
  wanted: (flag: Flag) => boolean = () => true,
): OutOfStep[] {
  const found = new Map<string, OutOfStep>();
  for (const [entry, flags] of book.flags) {
    const reading = book.current.byId.get(entry);
    if (!reading || reading.struck) continue;
    for (const flag of flags) {
      if (!codes.includes(flag.code) || !wanted(flag)) continue;
      const { field: _, ...data } = flag.data;
      const key = `${entry} ${flag.code} ${JSON.stringify(data)}`;
      if (!found.has(key)) found.set(key, ofEntry(group, flag.code, entry, reading.happened, data));
    }
  }
  return [...found.values()];
}
