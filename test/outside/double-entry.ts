/**
 * Movements as a plain-text double-entry journal, and two accounting programs that know nothing of this one to balance it: Debian's `ledger` and
 * `hledger`. A place is an account, the commodity is the whole microgram. Of each movement only the receiving side is written down; the giving
 * side is left for the program to work out.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Movement } from '../../app/core/book/movements/gathering.ts';
import { dayOf } from '../../app/core/time.ts';

/** The journal, one transaction for each movement. */
export const journalOf = (movements: readonly Movement[]): string =>
  movements.map((m) => `${dayOf(m.at)} ${m.entry}\n    ${m.to}  ${m.mercury.ug} ug\n    ${m.from}\n`).join('\n');

export interface Engine {
  readonly name: string;
  /** The call that prints a balance for each account, up to but without `end` where one is given. */
  readonly args: (file: string, end: string | null) => readonly string[];
  /** Account and whole micrograms of a printed line; null for a line that is none. */
  readonly line: (text: string) => readonly [account: string, ug: bigint] | null;
}

const before = (end: string | null): string[] => (end === null ? [] : ['--end', end]);
const whole = (text: string): bigint | null => (/^-?\d+$/.test(text) ? BigInt(text) : null);

export const engines: readonly Engine[] = [
  {
    name: 'ledger',
    args: (file, end) => [
      '--init-file',
      '/dev/null',
      '--file',
      file,
      'balance',
      '--flat',
      '--no-total',
      ...before(end),
      '--balance-format',
      '%(account)\\t%(quantity(display_total))\\n',
    ],
    line: (text) => {
      const [account = '', ug = ''] = text.split('\t');
      const amount = whole(ug);
      return amount === null ? null : [account, amount];
    },
  },
  {
    name: 'hledger',
    args: (file, end) => ['--file', file, 'balance', '--flat', '--no-total', ...before(end), '--output-format', 'csv'],
    line: (text) => {
      const [, account = '', ug = ''] = /^"(.*)","(-?\d+) ug"$/.exec(text) ?? [];
      const amount = whole(ug);
      return amount === null ? null : [account, amount];
    },
  },
];

/** Whether the program is installed here. */
export const isHere = ({ name }: Engine): boolean => spawnSync(name, ['--version']).status === 0;

/** What the program makes of a journal: whole micrograms by account, accounts at nothing left out. Throws on anything it does not understand. */
export function balanced(engine: Engine, journal: string, end: string | null = null): ReadonlyMap<string, bigint> {
  const folder = mkdtempSync(join(tmpdir(), 'double-entry-'));
  try {
    const file = join(folder, 'movements.journal');
    writeFileSync(file, journal);
    const ran = spawnSync(engine.name, engine.args(file, end), {
      encoding: 'utf8',
      maxBuffer: 100_000_000,
      env: { PATH: process.env.PATH, LC_ALL: 'C.UTF-8' },
    });
    if (ran.status !== 0) throw new Error(`${engine.name}: ${ran.stderr}`);
    const lines = ran.stdout.split('\n').filter((line) => line.trim() !== '' && line !== '"account","balance"');
    const read = lines.map((line) => {
      const got = engine.line(line.trim());
      if (!got) throw new Error(`${engine.name} printed “${line}”`);
      return got;
    });
    return new Map(read.filter(([, ug]) => ug !== 0n));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
