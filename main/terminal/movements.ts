/** `movements DIR --csv`: every movement of mercury, one line each, for whoever wants to add them up with another program. Reads only. */

import { problem } from '../../app/core/result.ts';
import { movementsCsv } from '../../app/papers/csv/movements.ts';
import { verbTexts } from '../../app/words/terminal.ts';
import { readRecord, tellLeftOut } from './record.ts';
import { done, refused, type Verb } from './verb.ts';

const usage = 'movements DIR --csv';

export const movementsVerb: Verb = {
  usage,
  does: verbTexts.movements,
  places: ['DIR'],
  options: { csv: 'flag' },
  run: async ({ places, flags }, machine) => {
    if (!flags.has('csv')) return refused(problem('option-missing', '--csv', { name: '--csv', usage }));
    const record = readRecord(places.DIR as string);
    if (!record.ok) return record.ends;
    tellLeftOut(record.value, machine);
    machine.print(movementsCsv(record.value.book).trimEnd());
    return done;
  },
};
