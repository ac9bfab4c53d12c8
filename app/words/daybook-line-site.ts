/** Sentences of the registers of the working year and of what else a site writes down: incidents, open days, checks, stock-takes. */
import { dayText } from './dates.ts';
import { at, count, type Lines, list, parts, restated, small } from './daybook-line-parts.ts';
import { checkDueNames, plateMetalNames } from './daybook-names-year.ts';
import { massAsRead, spaced } from './daybook-weights.ts';

type Kinds =
  | 'battery'
  | 'plate'
  | 'meter'
  | 'parcel'
  | 'authority'
  | 'incident'
  | 'open-day'
  | 'scale-check'
  | 'check-due'
  | 'stock-take';

const until = (out: string | undefined) => out !== undefined && `in use until ${dayText(out)}`;
const metres = (m: number): string => `${spaced(String(m))}\u00a0m`;

export const siteLines: Lines<Kinds> = {
  battery: ({ of, label, stamps, place, out }) =>
    parts(
      `${label}${restated(of)}${at(place)}: ${stamps === undefined ? 'number of stamps not recorded' : count(stamps, 'stamp', 'stamps')}`,
      until(out),
    ),
  plate: ({ of, label, battery, metal, lengthM, widthM, set, out }, { name }) =>
    parts(
      `${label}${restated(of)}: ${metal === undefined ? 'plate' : small(plateMetalNames[metal])}${
        lengthM === undefined || widthM === undefined ? '' : `, ${metres(lengthM)} by ${metres(widthM)}`
      }${battery === undefined ? '' : `, below ${name('battery', battery)}`}`,
      set !== undefined && `first set ${dayText(set)}`,
      until(out),
    ),
  meter: ({ of, label, principle, calibrated, out }) =>
    parts(
      `${label}${restated(of)}: vapour meter${at(principle)}`,
      calibrated
        ? `calibrated ${dayText(calibrated.on)}${calibrated.due === undefined ? '' : `, due ${dayText(calibrated.due)}`}`
        : 'calibration not recorded',
      until(out),
    ),
  parcel: ({ of, label, owner, ore }) =>
    `${label}${restated(of)}: ${ore ? massAsRead(ore.mass) : 'not weighed'}${owner === undefined ? '' : `, of ${owner}`}`,
  authority: ({ of, name, number, body, covers, from, expiry, out }) =>
    parts(
      `${name}${restated(of)}: number ${number}, given by ${body}, covers ${covers}`,
      from !== undefined && `from ${dayText(from)}`,
      expiry === 'none stated' ? 'no expiry stated' : `last day ${dayText(expiry)}`,
      out !== undefined && `given up on ${dayText(out)}`,
    ),
  incident: ({ what, where, people = [], done, told }, { name }) =>
    parts(
      `Incident${at(where)}: ${what}`,
      people.length > 0 && `there: ${list(people.map((id) => name('person', id)))}`,
      done !== undefined && `done: ${done}`,
      told !== undefined && `told: ${told}`,
    ),
  'open-day': ({ visitors, children, areas, covered, guides = [] }, { name }) =>
    parts(
      `${count(visitors, 'visitor', 'visitors')}${children === undefined ? '' : ` (${children} of them children)`}: ${areas}`,
      covered !== undefined && `covered or shut: ${covered}`,
      guides.length > 0 && `led by ${list(guides.map((id) => name('person', id)))}`,
    ),
  'scale-check': ({ scale, standard, read, passed, limit }, { name }) =>
    `${name('scale', scale)} showed ${massAsRead(read)} for ${massAsRead(standard)}: ${
      passed === 'yes' ? 'within' : 'outside'
    } the site’s own limit${limit === undefined ? '' : ` of ${massAsRead(limit)}`}`,
  // the check of a person: the sentence tells neither whose nor its days
  'check-due': ({ what, person, done, next, note }, { name, whole }) =>
    person !== undefined && !whole
      ? `${checkDueNames[what]} of one person: shown to the safety officer`
      : parts(
          `${checkDueNames[what]}${person === undefined ? '' : `, ${name('person', person)}`}: ${done === 'yes' ? 'done' : 'not done'}${at(note)}`,
          next !== undefined && `next due ${dayText(next)}`,
        ),
  'stock-take': ({ scope, lines }, { name }) => {
    const of = (how: (typeof lines)[number]['how']) => lines.filter((line) => line.how === how);
    const said = [
      [of('sealed').length, 'under seal'],
      [of('weighed').length, 'weighed'],
      [of('estimated').length, 'estimated'],
      [of('seen').length, 'there and not touched'],
      [of('empty').length, 'seen empty'],
    ] as const;
    const missed = of('unanswered');
    const lost = of('not-found');
    return parts(
      `Stock-take${scope === 'whole' ? ' of the whole,' : ' of'} ${count(lines.length, 'place', 'places')}: ${list(said.flatMap(([n, how]) => (n === 0 ? [] : [`${n} ${how}`]))) || 'none could be counted'}`,
      lost.length > 0 && `not found: ${list(lost.map((line) => name('place', line.place)))}`,
      missed.length > 0 && `could not be counted: ${list(missed.map((line) => name('place', line.place)))}`,
    );
  },
};
