/**
 * `account DIR [--from D] [--to D] [--json]`: the mercury account of a period. A daybook whose chain does not verify gives none. Reads only; the
 * figures are grams, unrounded, and what cannot be computed says why. A period that begins at the moment of a count begins after it.
 */
import { accountOf } from '../../app/core/book/account.ts';
import { afterItsCount } from '../../app/core/book/periods.ts';
import { verbTexts } from '../../app/words/terminal.ts';
import { accountJson } from './account-json.ts';
import { accountText } from './account-text.ts';
import { periodFrom } from './period.ts';
import { readRecord, tellLeftOut } from './record.ts';
import { done, refused, type Verb } from './verb.ts';

export const accountVerb: Verb = {
  usage: 'account DIR [--from DAY] [--to DAY] [--json]',
  does: verbTexts.account,
  places: ['DIR'],
  options: { from: 'optional', to: 'optional', json: 'flag' },
  run: async ({ places, options, flags }, machine) => {
    const period = periodFrom(options);
    if (!period.ok) return refused(...period.problems);
    const record = readRecord(places.DIR as string);
    if (!record.ok) return record.ends;
    tellLeftOut(record.value, machine);
    const { book, daybook } = record.value;
    const figures = accountJson(book, accountOf(book, afterItsCount(book, period.value)), daybook.desks);
    machine.print(flags.has('json') ? JSON.stringify(figures) : accountText(figures, daybook.info.name).join('\n'));
    return done;
  },
};
