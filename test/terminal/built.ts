/** The built program for tests: built once when needed, and run the way a person runs it. */
import { spawn, spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { daybookCommand, root } from '../../main/build/paths.mjs';

/** Builds dist/ where it is missing or older than the sources. */
export function buildOnce(): void {
  const { status, stderr } = spawnSync(process.execPath, [join(root, 'main/build/build.mjs')], { encoding: 'utf8' });
  if (status !== 0) throw new Error(`the program could not be built: ${stderr}`);
}

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs a program and answers what it printed and how it ended. `input` goes to its standard input. */
export function run(
  command: string,
  args: readonly string[],
  { input = '', env = {}, cwd = root }: RunOptions = {},
): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd, env: { ...process.env, ...env } });
    let out = '';
    let err = '';
    child.stdout.on('data', (data: Buffer) => {
      out += data;
    });
    child.stderr.on('data', (data: Buffer) => {
      err += data;
    });
    // a command that reads nothing may have ended before it was given anything
    child.stdin.on('error', () => {});
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, err }));
    child.stdin.end(input);
  });
}

export interface RunOptions {
  readonly input?: string | Uint8Array;
  readonly env?: Readonly<Record<string, string>>;
  readonly cwd?: string;
}

/** Runs the built `daybook` command. */
export const daybook = (args: readonly string[], options?: RunOptions): Promise<Ran> =>
  run(process.execPath, [daybookCommand, ...args], options);

/** Standard error as the problems it holds: every line must be one. */
export const problemsIn = (err: string): { problem: string; field: string }[] =>
  err
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as { problem: string; field: string });
