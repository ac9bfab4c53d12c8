/** Sentences of crushing, and of mercury that is issued, returned, spilled, found, set aside as waste or handed over. */
import type { Body } from '../core/kinds/index.ts';
import { dayText } from './dates.ts';
import { type Asked, at, type Lines, parts, small } from './daybook-line-parts.ts';
import { circuitNames, countsNames, fedNames, feedNames, issueNames, thingNames, wasteFromNames } from './daybook-names-year.ts';
import { massAsRead } from './daybook-weights.ts';

type Kinds = 'crushing' | 'issue' | 'return' | 'spill' | 'found' | 'waste' | 'transfer';

/** What of the book was handed over: "from Working bottle", "march A", "the sponge of …". */
function movedText(body: Body<'transfer'>, { name }: Asked): string {
  const { vessel, lot, charge, bar, plate, way } = body;
  if (lot !== undefined) return ` (${name('lot', lot)})`;
  if (charge !== undefined) return ` (${name('charge', charge)})`;
  if (bar !== undefined) return ` (${name('bar', bar)})`;
  if (plate !== undefined) return ` (${name('plate', plate)})`;
  return vessel === undefined ? '' : ` ${way === 'out' ? 'from' : 'into'} ${name('vessel', vessel)}`;
}

export const mercuryLines: Lines<Kinds> = {
  crushing: ({ battery, feed, mercuryFed, ore, parcel, hours }, { name }) =>
    parts(
      feed === 'water-only'
        ? `${name('battery', battery)} run with water only`
        : `${name('battery', battery)} crushed ${small(feedNames[feed])}, ${ore ? massAsRead(ore.mass) : 'not weighed'}${
            parcel === undefined ? '' : `, of ${name('parcel', parcel)}`
          }`,
      mercuryFed === 'none' ? 'no mercury fed' : `mercury fed ${small(fedNames[mercuryFed])}`,
      hours !== undefined && `${hours} h`,
    ),
  issue: ({ vessel, to, into, weight, battery, plate }, { name, net }) =>
    parts(
      `${net(weight)} of mercury from ${name('vessel', vessel)} ${
        into === undefined ? `to ${small(issueNames[to])}` : `into ${name('vessel', into)}`
      }${battery === undefined ? '' : `, ${name('battery', battery)}`}${plate === undefined ? '' : `, ${name('plate', plate)}`}`,
    ),
  return: ({ vessel, from, weight, how, battery }, { name, net }) =>
    parts(
      `${net(weight)} of mercury from ${small(circuitNames[from])}${
        battery === undefined ? '' : ` of ${name('battery', battery)}`
      } back into ${name('vessel', vessel)}`,
      how,
    ),
  spill: ({ where, lost, vessel, recovered, insideIssue }, { name, net }) =>
    parts(
      `Spill at ${where}: ${lost ? net(lost) : 'an amount nobody knows'} ran out${
        vessel === undefined ? '' : ` of ${name('vessel', vessel)}`
      }`,
      recovered
        ? `${net(recovered.weight)} gathered up into ${name('vessel', recovered.vessel)}`
        : 'what was gathered up is not recorded',
      insideIssue === 'yes' && 'already inside an issue',
    ),
  found: ({ where, what, weight, vessel }, { name, net }) =>
    `${net(weight)} of ${what === 'mercury' ? 'mercury' : 'residue'} found (${where}), on no book before; into ${name('vessel', vessel)}`,
  waste: ({ drum, what, weight, from, vessel, due }, { name, net }) =>
    parts(
      `${what}, ${net(weight)}, into ${name('vessel', drum)}${
        from === 'vessel' && vessel !== undefined
          ? ` from ${name('vessel', vessel)}`
          : from === undefined
            ? ''
            : ` from ${small(wasteFromNames[from])}`
      }`,
      due !== undefined && `must go by ${dayText(due)}`,
    ),
  transfer: (body, asked) => {
    const { way, what, party, weight, purpose, counts, document, theirs } = body;
    return parts(
      `${thingNames[what]}${movedText(body, asked)} ${way === 'out' ? 'handed over to' : 'taken over from'} ${party}${at(purpose)}`,
      weight ? asked.net(weight) : 'not weighed here',
      theirs ? `${asked.net(theirs.weight)} as they weighed it on ${dayText(theirs.on)}` : undefined,
      counts !== undefined && `counts ${small(countsNames[counts])}`,
      document !== undefined && `document ${document}`,
    );
  },
};
