/**
 * `paper DIR NAME [--id ID] [--from D --to D] --out F.pdf`: prints a document. A daybook whose chain does not verify, or that a newer program wrote in, prints nothing. The file appears whole or not
 * at all, and never inside the daybook, whose folder holds the record alone.
 */
import { realpathSync } from 'node:fs';
import { basename, dirname, resolve, sep } from 'node:path';
import { paperNames } from '../../app/contract.ts';
import { type Problem, problem } from '../../app/core/result.ts';
import { madeTexts, verbTexts } from '../../app/words/terminal.ts';
import { readDaybook } from '../host/daybook-folder.ts';
import { onDisk, writeWhole } from '../host/disk.ts';
import { coveredDesks, leftOut } from '../host/left-out.ts';
import { printPaper } from '../host/print.ts';
import { withKeys } from '../host/sign-check.ts';
import { newerUnread } from './record.ts';
import { done, faulty, refused, type Verb } from './verb.ts';

/** Why nothing can be printed to `out`; null where it can be tried. */
function unfit(out: string, folder: string): Problem | null {
  if (!/\.pdf$/i.test(out)) return problem('not-a-pdf-name', '--out', { read: out.slice(0, 120) });
  const where = onDisk(out, () => realpathSync(dirname(resolve(out))));
  if (!where.ok) return { ...(where.problems[0] as Problem), field: '--out' };
  const inside = `${where.value}${sep}`.startsWith(`${realpathSync(folder)}${sep}`);
  return inside ? problem('inside-the-daybook', '--out', { read: basename(out) }) : null;
}

/** Fields of a problem that are options here. */
const inOptions: ReadonlySet<string> = new Set(['id', 'from', 'to']);

export const paperVerb: Verb = {
  usage: 'paper DIR NAME [--id ID] [--from D] [--to D] --out FILE.pdf',
  does: verbTexts.paper,
  places: ['DIR', 'NAME'],
  options: { id: 'optional', from: 'optional', to: 'optional', out: 'needed' },
  run: async ({ places, options }, machine) => {
    const name = paperNames.find((paper) => paper === places.NAME);
    if (name === undefined)
      return refused(problem('paper-unknown', 'NAME', { read: String(places.NAME).slice(0, 60), papers: paperNames.join(', ') }));
    const out = options.out as string;
    const got = readDaybook(places.DIR as string);
    if (!got.ok) return refused(...got.problems.map((p) => ({ ...p, field: 'DIR' })));
    const { desks, entries, folder, info } = got.value;
    const why = unfit(out, folder);
    if (why !== null) return refused(why);
    const faults = desks.flatMap(({ desk, fault }) => (fault ? [{ desk, line: fault.line, cause: fault.cause }] : []));
    if (faults.length > 0) return faulty(...faults.map((fault) => problem('chain-broken', '', fault)));
    const newer = newerUnread(got.value.notices);
    if (newer.length > 0) return refused(...newer);

    for (const text of desks.flatMap(leftOut)) machine.complain(JSON.stringify({ notice: text }));
    const printed = await printPaper(entries, info.name, withKeys(folder, coveredDesks(desks)), name, options.id, {
      from: options.from,
      to: options.to,
    });
    if (!printed.ok)
      return refused(...printed.problems.map((p) => ({ ...p, field: inOptions.has(p.field) ? `--${p.field}` : p.field })));
    const kept = onDisk(out, () => writeWhole(resolve(out), printed.value));
    if (!kept.ok) return refused(...kept.problems.map((p) => ({ ...p, field: '--out' })));
    machine.print(madeTexts.paper(out, printed.value.length));
    return done;
  },
};
