/**
 * Backups as the window sees them: how they stand, what is under way, and what the host said against the last thing asked. Secrets are handed on and
 * kept nowhere here.
 */
import type { AskOf, BackupFindings, BackupsState, Question, ReplyOf } from '../contract.ts';
import type { Problem, Result } from '../core/result.ts';
import type { Host } from './host.ts';

/** What a backup holds and what would change, as the host answered. */
export type Looked = ReplyOf<'backup-look'>;

export class Backups {
  /** How they stand; null until the host has answered. */
  state = $state.raw<BackupsState | null>(null);
  /** What stood against the last thing asked. */
  problems = $state.raw<readonly Problem[]>([]);
  /** What is being waited for; null while nothing is. */
  waiting = $state<Question | null>(null);
  /** The last thing that was done, until the next is asked. */
  done = $state<Question | null>(null);
  /** The newest secret key, shown once. */
  pair = $state.raw<ReplyOf<'backup-key'> | null>(null);
  found = $state.raw<{ readonly file: string; readonly findings: BackupFindings } | null>(null);
  looked = $state.raw<Looked | null>(null);
  /** The key of a file that was brought, and how it is sealed. */
  brought = $state.raw<(ReplyOf<'backup-bring'> & { readonly name: string }) | null>(null);
  readonly #host: Host;

  constructor(host: Host) {
    this.#host = host;
  }

  async #ask<Q extends Question>(question: Q, ask: AskOf<Q>): Promise<Result<ReplyOf<Q>>> {
    this.waiting = question;
    this.problems = [];
    this.done = null;
    const answer = await this.#host.ask(question, ask);
    this.waiting = null;
    if (answer.ok) this.done = question;
    else this.problems = answer.problems;
    return answer;
  }

  /** Asks how they stand, quietly: what was said of the last thing done stays. */
  async look(): Promise<void> {
    const answer = await this.#host.ask('backups', {});
    if (answer.ok) this.state = answer.value;
    else this.problems = answer.problems;
  }

  async pick(place: string): Promise<void> {
    const answer = await this.#ask('backup-place', { place });
    if (answer.ok) this.state = answer.value;
  }

  async make(): Promise<void> {
    await this.#ask('backup-now', {});
    await this.look();
  }

  /** Says how they are sealed from now on; false where the host refused. */
  async seal(how: AskOf<'backup-seal'>): Promise<boolean> {
    const answer = await this.#ask('backup-seal', how);
    if (answer.ok) this.state = answer.value;
    return answer.ok;
  }

  async newPair(): Promise<void> {
    const answer = await this.#ask('backup-key', {});
    if (answer.ok) this.pair = answer.value;
  }

  async rehearse(opener: NonNullable<AskOf<'backup-rehearse'>['opener']>): Promise<void> {
    this.found = null;
    const answer = await this.#ask('backup-rehearse', { opener });
    if (answer.ok) this.found = answer.value;
  }

  async bring(name: string, bytes: Uint8Array): Promise<void> {
    this.looked = null;
    const answer = await this.#ask('backup-bring', bytes);
    this.brought = answer.ok ? { ...answer.value, name } : null;
  }

  async lookInto(from: string, opener: NonNullable<AskOf<'backup-look'>['opener']>): Promise<void> {
    this.looked = null;
    const answer = await this.#ask('backup-look', { from, opener });
    if (answer.ok) this.looked = answer.value;
  }

  /** Restores what was looked into; true when it is open at the host. */
  async restore(): Promise<boolean> {
    if (this.looked === null) return false;
    const answer = await this.#ask('restore', { look: this.looked.look });
    return answer.ok;
  }
}
