/** The folder the person stood in: npm moves to the project before it runs a script, and would make relative folders mean something else. */
import { realpathSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './paths.mjs';

/**
 * Where a folder given to `script` is looked for.
 * @param {string} script
 * @param {Record<string, string | undefined>} [env]
 */
export function startedIn(script, env = process.env) {
  try {
    const ours = realpathSync(env.npm_package_json ?? '') === realpathSync(join(root, 'package.json'));
    if (ours && env.npm_lifecycle_event === script && env.INIT_CWD) return env.INIT_CWD;
  } catch {
    // not run by npm
  }
  return process.cwd();
}
