/** The machine's own programs that the tests need or can use: found, or installed where that is possible, and said aloud either way. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { onPath } from './browser.mjs';
import { root, say } from './paths.mjs';

const isRootOnDebian = () => process.getuid?.() === 0 && onPath(['apt-get']) !== null;
let listsFetched = false;

/** Runs a program, its talk on standard error; true where it ended well. */
const runs = (command, args, timeout) =>
  spawnSync(command, args, {
    cwd: root,
    stdio: ['ignore', 2, 2],
    timeout,
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  }).status === 0;

/** Installs Debian packages where this account may; false where it may not or the network is closed. */
function aptInstall(packages) {
  if (!isRootOnDebian()) return false;
  const options = ['-o', 'Acquire::Retries=1', '-o', 'Acquire::http::Timeout=20', '-o', 'Acquire::https::Timeout=20'];
  if (!listsFetched) {
    listsFetched = true;
    runs('apt-get', [...options, 'update', '-q'], 180_000);
  }
  return runs('apt-get', [...options, 'install', '-y', '-q', '--no-install-recommends', ...packages], 600_000);
}

/** Where playwright would put its own Chromium, or null. */
function playwrightChromium() {
  try {
    const path = createRequire(import.meta.url)('playwright').chromium.executablePath();
    return existsSync(path) ? path : null;
  } catch {
    return null;
  }
}

/** A Chromium that is here, and how it was found. */
function chromiumHere() {
  const named = process.env.CHROMIUM;
  if (named) return existsSync(named) ? [named, 'named by CHROMIUM'] : null;
  if (existsSync('/usr/bin/chromium')) return ['/usr/bin/chromium', 'the system’s'];
  const own = playwrightChromium();
  return own === null ? null : [own, 'playwright’s own'];
}

/** The path of a Chromium for the walks, installed if need be; null where there is no way to one. */
export function chromium() {
  let found = chromiumHere();
  if (found === null && !process.env.CHROMIUM) {
    say('There is no Chromium here: installing one …');
    if (!aptInstall(['chromium'])) {
      runs(
        process.execPath,
        [join(root, 'node_modules/playwright/cli.js'), 'install', ...(isRootOnDebian() ? ['--with-deps'] : []), 'chromium'],
        900_000,
      );
    }
    found = chromiumHere();
  }
  say(found === null ? 'No Chromium: the walks in a browser will fail.' : `Chromium: ${found[0]} (${found[1]})`);
  return found?.[0] ?? null;
}

/** Other programs: the command that shows it is there, its Debian package, what it is for, and whether tests fail without it. */
const others = [
  ['pdftotext', 'poppler-utils', 'reads printed papers back', true],
  ['pdftoppm', 'poppler-utils', 'makes pictures of printed papers', true],
  ['ledger', 'ledger', 'is compared against', false],
  ['hledger', 'hledger', 'is compared against', false],
  ['age', 'age', 'exchanges encrypted files', false],
  ['zbarimg', 'zbar-tools', 'reads the codes on printed labels back', false],
];

/** Finds or installs the rest. What cannot be had is named; where a test can do without it, the test says so itself. */
export function tools() {
  const absent = () => others.filter(([command]) => onPath([command]) === null);
  const packages = [...new Set(absent().map(([, name]) => name))];
  if (packages.length > 0) {
    say(`Installing ${packages.join(', ')} …`);
    // one by one where they cannot all be had together: an unknown package would keep the others away
    if (!aptInstall(packages)) for (const name of packages) aptInstall([name]);
  }
  for (const [command, name, purpose, needed] of absent())
    say(`${needed ? 'MISSING' : 'SKIPPED'}: ${command} (package ${name}) ${purpose}, and could not be installed here.`);
}
