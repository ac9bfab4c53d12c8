/** Where this program and its user's things lie: the same for the terminal, the loopback server and the desktop. */
import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { machineClock } from './host/clock.ts';
import type { HostOptions } from './host/host.ts';
import { stateFolder } from './host/installation.ts';
import { printPaper } from './host/print.ts';
import { version } from './host/version.ts';

/** Where a daybook made by name goes. */
function documentsFolder(): string {
  const documents = join(homedir(), 'Documents');
  return existsSync(documents) ? documents : homedir();
}

/** Everything a host needs on this machine; what is given stands in place of what is found. */
export const hostOptions = (given: Partial<HostOptions> = {}): HostOptions => ({
  home: stateFolder(),
  documents: documentsFolder(),
  // the built files lie together: the window is beside whichever of them is running
  windowFolder: join(dirname(fileURLToPath(import.meta.url)), 'window'),
  clock: machineClock,
  version,
  print: printPaper,
  ...given,
});
