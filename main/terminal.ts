/**
 * The `daybook` command: gives the call the standard streams, and its exit code to the system. Whoever reads our output may stop reading
 * (`| head`): that ends the command quietly.
 */
import 'zod/compile';
import { writeSync } from 'node:fs';
import { runTerminal } from './terminal/run.ts';
import type { Machine } from './terminal/verb.ts';

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  writeSync(2, `${JSON.stringify({ problem: `Nothing more can be printed (${error.code}).`, field: '' })}\n`);
  process.exit(2);
});
process.stderr.on('error', () => {});

const machine: Machine = {
  print: (line) => void process.stdout.write(`${line}\n`),
  complain: (line) => void process.stderr.write(`${line}\n`),
  input: async (most) => {
    const parts: Buffer[] = [];
    let length = 0;
    for await (const part of process.stdin) {
      parts.push(part as Buffer);
      length += (part as Buffer).length;
      if (length > most) return null;
    }
    return Buffer.concat(parts);
  },
  ended: () =>
    new Promise((resolve) => {
      for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => resolve());
    }),
};

// the code is set, not forced: what was printed to a pipe still gets out
process.exitCode = await runTerminal(process.argv.slice(2), machine);
