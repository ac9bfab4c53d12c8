/** One call of the `daybook` command in a folder of its own, with streams of its own. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { runTerminal } from '../../main/terminal/run.ts';
import { problemsIn, type Ran } from './built.ts';

export async function called(args: readonly string[]): Promise<Ran> {
  const out: string[] = [];
  const err: string[] = [];
  const code = await runTerminal(args, {
    print: (line) => out.push(`${line}\n`),
    complain: (line) => err.push(`${line}\n`),
    input: async () => Buffer.from(''),
    ended: () => Promise.resolve(),
  });
  return { code, out: out.join(''), err: err.join('') };
}

/** Every path below a folder, with its content: to show that nothing was written. */
export function everything(folder: string): Record<string, string> {
  if (!existsSync(folder)) return {};
  return Object.fromEntries(
    readdirSync(folder, { recursive: true, withFileTypes: true }).map((item) => {
      const path = join(item.parentPath, item.name);
      return [path, item.isFile() ? readFileSync(path, 'latin1') : ''];
    }),
  );
}

/** Expects a refusal: exit 2, nothing printed, one JSON line for each of these fields, nothing written below `home`. */
export async function refused(home: string, args: readonly string[], fields: readonly string[]) {
  const before = everything(home);
  const { code, out, err } = await called(args);
  expect([code, out]).toEqual([2, '']);
  const problems = problemsIn(err);
  expect(problems.map((p) => p.field)).toEqual(fields);
  for (const { problem } of problems) expect(problem.length).toBeGreaterThan(20);
  expect(everything(home)).toEqual(before);
  return problems;
}
