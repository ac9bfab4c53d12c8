/**
 * `npm test`: gets the tools the tests need, builds, checks form and types, runs every test, and ends with one line that counts them.
 * It fails when anything failed: a test, a file that could not be run, a check, the build.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build } from './build.mjs';
import { check } from './check.mjs';
import { cache, root, say } from './paths.mjs';
import { runtimePath } from './runtime.mjs';
import { chromium, tools } from './tools.mjs';

const browser = chromium();
tools();
if (runtimePath() === null)
  say('SKIPPED: tests that need Electron’s runtime, which is not here. The desktop’s logic is tested against a stand-in.');

let sound = true;
try {
  await build();
} catch (error) {
  sound = false;
  say(`NOT BUILT: ${error instanceof Error ? error.stack : error}`);
}
if (!(await check())) sound = false;

const report = join(cache, `tests-${process.pid}.json`);
mkdirSync(cache, { recursive: true });
const vitest = spawnSync(
  process.execPath,
  [
    join(root, 'node_modules/vitest/vitest.mjs'),
    'run',
    '--config',
    'test/vitest.config.mjs',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
    ...process.argv.slice(2),
  ],
  { cwd: root, stdio: 'inherit', env: { ...process.env, ...(browser === null ? {} : { CHROMIUM: browser }) } },
);

/** Passed, failed, skipped: a file that could not even be read counts as one failure, and so does a run that left no report. */
function count() {
  try {
    const result = JSON.parse(readFileSync(report, 'utf8'));
    const unread = result.testResults.filter(
      (file) => file.status === 'failed' && !file.assertionResults.some((t) => t.status === 'failed'),
    );
    const skipped = result.numPendingTests + (result.numTodoTests ?? 0);
    return { passed: result.numPassedTests, failed: result.numFailedTests + unread.length, skipped };
  } catch {
    return { passed: 0, failed: 1, skipped: 0 };
  } finally {
    rmSync(report, { force: true });
  }
}

const counted = count();
const { passed, skipped } = counted;
// whoever reads only the last line must not take a broken build or a type error for a clean run
const failed = counted.failed + (sound ? 0 : 1);
if (!sound) say('The build or a check failed, and counts as one failure: see above.');
process.exitCode = failed === 0 && passed > 0 && vitest.status === 0 ? 0 : 1;
process.stdout.write(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}\n`);
