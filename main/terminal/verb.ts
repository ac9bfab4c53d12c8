/** What a verb of the `daybook` command is, and what the machine offers it. A verb prints its own results; problems it only hands back. */
import type { Problem } from '../../app/core/result.ts';

/** Standard streams and the clock of a call; tests hand in their own. */
export interface Machine {
  /** Writes a line to standard output. */
  readonly print: (line: string) => void;
  /** Writes a line to standard error. */
  readonly complain: (line: string) => void;
  /** All of standard input, up to `most` bytes; null where there is more. */
  readonly input: (most: number) => Promise<Uint8Array | null>;
  /** Resolves when the person ends a command that keeps running (Ctrl-C). */
  readonly ended: () => Promise<void>;
}

/** A call after it was read: every place and option the verb asks for is there. */
export interface Call {
  /** Words that stand for themselves, by the name the usage gives them. */
  readonly places: Readonly<Record<string, string>>;
  /** Options with a value, by name without dashes. */
  readonly options: Readonly<Record<string, string>>;
  /** Options that stand alone and were given. */
  readonly flags: ReadonlySet<string>;
}

/** How a call ended: done, the record at fault (1), or the call or its input wrong (2). */
export type Outcome = { readonly code: 0 } | { readonly code: 1 | 2; readonly problems: readonly Problem[] };

export const done: Outcome = { code: 0 };
/** The call or its input is wrong. */
export const refused = (...problems: readonly Problem[]): Outcome => ({ code: 2, problems });
/** The record itself is at fault. */
export const faulty = (...problems: readonly Problem[]): Outcome => ({ code: 1, problems });

export interface Verb {
  /** The call as the help shows it, without the command's own name. */
  readonly usage: string;
  readonly does: string;
  /** Names of the words it needs, in order; one in brackets may be left out. */
  readonly places: readonly string[];
  /** Options by name without dashes. */
  readonly options: Readonly<Record<string, 'needed' | 'optional' | 'flag'>>;
  readonly run: (call: Call, machine: Machine) => Promise<Outcome>;
}
