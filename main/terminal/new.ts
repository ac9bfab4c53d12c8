/** `new DIR --site NAME`: makes an empty daybook folder. */
import { madeTexts, verbTexts } from '../../app/words/terminal.ts';
import { makeDaybook } from '../host/daybook-folder.ts';
import { done, refused, type Verb } from './verb.ts';

export const newVerb: Verb = {
  usage: 'new DIR --site NAME',
  does: verbTexts.new,
  places: ['DIR'],
  options: { site: 'needed' },
  run: async ({ places, options }, machine) => {
    const dir = places.DIR as string;
    const made = makeDaybook(dir, options.site as string);
    if (!made.ok) return refused(...made.problems.map((p) => ({ ...p, field: p.field === 'name' ? '--site' : 'DIR' })));
    machine.print(madeTexts.daybook(made.value.name, dir));
    return done;
  },
};
