/** Where things lie. Plain JavaScript, like everything in this folder: it runs before anything is built, on a Node that reads no TypeScript. */
import { realpathSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The top of the source tree. */
export const root = fileURLToPath(new URL('../..', import.meta.url));

/** What is built. */
export const dist = join(root, 'dist');

/** Scratch: builds in the making, locks, reports. Everything in it may be deleted. */
export const cache = join(root, '.cache');

/** The built command. */
export const daybookCommand = join(dist, 'daybook.mjs');

/** Says something to the person at the terminal without touching what the command itself prints. */
export const say = (text) => process.stderr.write(`${text}\n`);

/** True where the module of this address is the one Node was asked to run. */
export function isAsked(address) {
  try {
    return realpathSync(process.argv[1]) === realpathSync(fileURLToPath(address));
  } catch {
    return false;
  }
}
