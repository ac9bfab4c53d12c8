/** A process of its own that opens a daybook, keeps notes in it, says how it stands, and holds it until its input ends. */
import { openInstallation } from '../../main/host/installation.ts';
import { openDaybook } from '../../main/host/open-daybook.ts';
import { note, now } from './drafts.ts';

const [folder = '', home = '', first = '1', last = '0'] = process.argv.slice(2);
const here = openInstallation(home);
const opened = here.ok ? openDaybook(folder, here.value) : here;
if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
const book = opened.value;
let kept = 0;
for (let i = Number(first); i <= Number(last); i++) if (book.keep(note(i), now).ok) kept++;
process.stdout.write(`${JSON.stringify({ kept, open: book.describe() })}\n`);
process.stdin.resume();
process.stdin.on('end', () => {
  book.close();
  process.exit(0);
});
