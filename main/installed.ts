/** Where this program and its user's things lie: the same for the terminal, the loopback server and the desktop. */
import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
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

/** The folder named for backups when the program was started (`DAYBOOK_BACKUPS`): offered as a place, for a page names none. */
const namedPlaces = (): readonly string[] => (process.env.DAYBOOK_BACKUPS ? [resolve(process.env.DAYBOOK_BACKUPS)] : []);

/** Everything a host needs on this machine; what is given stands in place of what is found. */
export const hostOptions = (given: Partial<HostOptions> = {}): HostOptions => ({
  home: stateFolder(),
  documents: documentsFolder(),
  // the built files lie together: the window is beside whichever of them is running
  windowFolder: join(dirname(fileURLToPath(import.meta.url)), 'window'),
  clock: machineClock,
  version,
  places: namedPlaces(),
  print: printPaper,
  ...given,
});
