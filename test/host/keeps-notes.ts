/**
 * A process of its own that keeps notes until it is killed, or until the journal holds as many as it was told: writes each note's id to standard
 * output after the journal has answered.
 */
import { writeSync } from 'node:fs';
import { openJournal } from '../../main/host/journal-writer.ts';
import { note, now } from './drafts.ts';

const [folder = '', desk = '', until = 'Infinity'] = process.argv.slice(2);
const writer = openJournal(folder, desk);
if (!writer.ok) throw new Error(JSON.stringify(writer.problems));
for (let i = writer.value.end().entries + 1; i <= Number(until); i++) {
  const kept = writer.value.append([note(i, 'x'.repeat(1 + (i % 3000)))], now);
  if (!kept.ok) throw new Error(JSON.stringify(kept.problems));
  writeSync(1, `${kept.value[0]?.id}\n`);
}
