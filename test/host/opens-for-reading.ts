/** A process of its own, of a user with no special rights, that opens a daybook, reads it, tries to keep a note and a picture, and says what came of it. */
import { openInstallation } from '../../main/host/installation.ts';
import { openDaybook } from '../../main/host/open-daybook.ts';
import { note, now } from './drafts.ts';

const [folder = '', home = ''] = process.argv.slice(2);
// permissions do not bind the superuser; 65534 is the user that owns nothing
if (process.getuid?.() === 0) {
  process.setgid?.(65_534);
  process.setuid?.(65_534);
}
const here = openInstallation(home);
if (!here.ok) throw new Error(JSON.stringify(here.problems));
const opened = openDaybook(folder, here.value);
if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
const book = opened.value;
const whole = book.whole();
const said = {
  open: book.describe(),
  entries: whole.ok ? whole.value.entries.length : null,
  keep: book.keep(note(99), now),
  evidence: book.keepEvidence(new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1])),
};
book.close();
process.stdout.write(JSON.stringify(said));
