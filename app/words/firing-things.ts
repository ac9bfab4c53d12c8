/**
 * Everything there is to draw of a firing along the clock, in words: each thing with its lane, its time as written or none, and the entry it stands in; and
 * for each lane what was not written. Nothing is put in that no entry says.
 */
import type { Book } from '../core/book/book.ts';
import { hotC } from '../core/book/charges.ts';
import { clockedAt, type FireTimes } from '../core/book/fire-times.ts';
import { stopRulesAt } from '../core/book/site-says.ts';
import type { Checked } from '../core/shapes.ts';
import { compareMoments, dayOf, minutesOf } from '../core/time.ts';
import { airRowText } from './air-drawn.ts';
import { askedText, runQuestionsAt } from './asked-checks.ts';
import { clockText, momentText } from './dates.ts';
import { stopThingNames } from './daybook-names-site.ts';
import { firingDrawn as words } from './firing-drawn.ts';
import { retortRun } from './retort-run.ts';
import { checkPhases } from './run-checks.ts';
import { temperatureText } from './temperatures.ts';

/** Lanes from above; the last two are panels with a scale where anything was read. */
export const laneNames = ['fire', 'times', 'water', 'stops', 'seen', 'checks', 'opening', 'temperature', 'air'] as const;
export type Lane = (typeof laneNames)[number];

type Drawn =
  | {
      readonly is: 'span';
      readonly from: string;
      readonly to: string;
      readonly look: 'filled' | 'hatched' | 'crossed' | 'dotted' | 'open';
    }
  | { readonly is: 'mark'; readonly at: string | null; readonly look: 'dot' | 'ring' | 'cross' | 'diamond' | 'triangle' }
  /** So long up to a moment, outlined. */
  | { readonly is: 'stood'; readonly to: string; readonly minutes: number }
  /** Drawn to a scale. */
  | { readonly is: 'value'; readonly at: string };

export interface FiringThing {
  readonly id: string;
  readonly lane: Lane;
  readonly drawn: Drawn;
  /** Beside it in the drawing. */
  readonly text: string;
  readonly when: string;
  /** Empty: it did not last, or its end is not known. */
  readonly until: string;
  readonly what: string;
  readonly said: string;
  /** The entry that says so. */
  readonly entry: string;
}

/** A row of the table; what was not written has neither time nor entry. */
export type FiringRow = Pick<FiringThing, 'id' | 'when' | 'until' | 'what' | 'said'> & { readonly entry: string | null };

export interface FiringThings {
  readonly things: readonly FiringThing[];
  readonly missing: Readonly<Partial<Record<Lane, string>>>;
  readonly rows: readonly FiringRow[];
  /** The site's own rules on temperature, cooling water and the air at that time, in its words. */
  readonly rules: readonly string[];
}

const small = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
const looks = { heating: 'dotted', coming: 'filled', finishing: 'crossed', cooling: 'hatched' } as const;

/** Makes things whose times are told by the clock, with the day where it is another than the drawing's. */
function makerOf({ firing, span }: FireTimes) {
  const day = span ? dayOf(span.from) : '';
  const clock = (moment: string): string => (dayOf(moment) === day ? clockText(moment) : momentText(moment));
  const entry = firing.id;
  return {
    clock,
    mark: (
      lane: Lane,
      id: string,
      at: string | null,
      look: (Drawn & { is: 'mark' })['look'],
      text: string,
      told: { what: string; said?: string; entry?: string },
    ): FiringThing => ({
      id,
      lane,
      drawn: { is: 'mark', at, look },
      text,
      when: at === null ? words.untimed : clock(at),
      until: '',
      what: told.what,
      said: told.said ?? '',
      entry: told.entry ?? entry,
    }),
    span: (
      lane: Lane,
      id: string,
      [from, to]: readonly [string, string],
      look: (Drawn & { is: 'span' })['look'],
      text: string,
      said: string,
    ): FiringThing => ({
      id,
      lane,
      drawn: { is: 'span', from, to, look },
      text,
      when: clock(from),
      until: clock(to),
      what: text,
      said,
      entry,
    }),
  };
}
type Maker = ReturnType<typeof makerOf>;

const lasting = (from: string, to: string): string => words.lasting((minutesOf(to) ?? 0) - (minutesOf(from) ?? 0));

/** What was turned on and off: a bar between two times that were written, and a mark where the next was not. */
function turnings(times: FireTimes, of: 'water' | 'fire', make: Maker): FiringThing[] {
  const turned = (times.firing.reading.body.noted ?? [])
    .flatMap((one, i) =>
      one[of] === undefined ? [] : [{ at: one.at, to: one[of], said: one.what ?? '', id: `noted ${i} ${of}` }],
    )
    .sort((a, b) => compareMoments(a.at, b.at));
  const lane = of === 'water' ? 'water' : 'stops';
  return turned.flatMap((one, i): FiringThing[] => {
    const next = turned[i + 1];
    const text = words.turned[of][one.to];
    const what = words.turnedWhat[of][one.to];
    // a fire that burns has its bars above
    if (of === 'fire' && one.to === 'on') return i > 0 ? [] : [make.mark(lane, one.id, one.at, 'dot', text, { what })];
    if (!next) {
      const shown = one.to === 'on' ? words.turnedOn(text, clockText(one.at)) : words.at(clockText(one.at), text);
      return [make.mark(lane, one.id, one.at, one.to === 'on' ? 'dot' : 'cross', shown, { what, said: one.said })];
    }
    const said = [lasting(one.at, next.at), one.said].filter((t) => t !== '').join(': ');
    return [{ ...make.span(lane, one.id, [one.at, next.at], one.to === 'on' ? 'filled' : 'open', text, said), what }];
  });
}

const fixed = [
  ['pipeClear', 'pipe-clear'],
  ['waterOn', 'water-on'],
  ['dry', 'dry'],
] as const;

interface Answers {
  readonly id: string;
  readonly entry: string;
  readonly at: string | null;
  readonly happened: string;
  readonly checks: readonly Checked[];
}

/** The answers of each charge, then those of the firing. */
const answersOf = ({ charges, firing }: FireTimes): Answers[] => [
  ...charges.map(({ id, reading }) => ({
    id: `charge ${id}`,
    entry: id,
    at: clockedAt(reading),
    happened: reading.happened,
    checks: [
      ...fixed.flatMap(([field, check]) => {
        const answer = reading.body[field];
        return answer === undefined ? [] : [{ check, answer }];
      }),
      ...(reading.body.checks ?? []),
    ],
  })),
  {
    id: 'firing',
    entry: firing.id,
    at: clockedAt(firing.reading),
    happened: firing.reading.happened,
    checks: firing.reading.body.checks ?? [],
  },
];

const answerLooks = { yes: 'dot', no: 'cross', na: 'ring' } as const;

function waterAnswers(times: FireTimes, make: Maker): FiringThing[] {
  return answersOf(times).flatMap(({ id, entry, at, checks }) =>
    checks.flatMap(({ check, answer, note }) => {
      if (check !== 'water-on' && check !== 'water-kept') return [];
      const before = check === 'water-on';
      const text = (before ? words.waterBefore : words.waterKept)(retortRun[answer]);
      return [
        make.mark('water', `${id} ${check}`, at, answerLooks[answer], text, {
          what: words.ofWater(text),
          said: note ?? '',
          entry,
        }),
      ];
    }),
  );
}

function checksDone(book: Book, times: FireTimes, make: Maker): FiringThing[] {
  return answersOf(times).flatMap(({ id, entry, at, happened, checks }) =>
    checkPhases.flatMap((phase) => {
      const asked = runQuestionsAt(book.current, phase, happened);
      const given = checks.filter(({ check }) => asked.some((q) => q.check === check));
      if (given.length === 0) return [];
      const no = given.filter(({ answer }) => answer === 'no');
      const text = words.checksOf(words.phases[phase], given.length, asked.length, no.length);
      const look = no.length > 0 ? 'cross' : given.length < asked.length ? 'ring' : 'dot';
      const said = no.length === 0 ? '' : words.saidNo(no.map(({ check }) => askedText(book.current, check, happened)));
      return [make.mark('checks', `${id} ${phase}`, at, look, text, { what: text, said, entry })];
    }),
  );
}

function opening({ firing }: FireTimes, make: Maker): FiringThing[] {
  const { opening: how, opened } = firing.reading.body;
  if (how === undefined) return [];
  if ('measuredC' in how) {
    const text = how.measuredC > hotC ? words.measuredHot(how.measuredC, hotC) : words.measured(how.measuredC);
    return [make.mark('opening', 'opening', opened ?? null, 'diamond', text, { what: text })];
  }
  const text = words.stood(String(how.stoodHours));
  const mark = make.mark('opening', 'opening', opened ?? null, 'ring', text, { what: text });
  return [opened === undefined ? mark : { ...mark, drawn: { is: 'stood', to: opened, minutes: how.stoodHours * 60 } }];
}

function seen({ firing }: FireTimes, make: Maker): FiringThing[] {
  const { noted = [], lute, note } = firing.reading.body;
  return [
    ...noted.flatMap((one, i) =>
      one.what === undefined && (one.temperatureC !== undefined || one.water !== undefined || one.fire !== undefined)
        ? []
        : [
            make.mark('seen', `noted ${i} what`, one.at, 'ring', one.what ?? words.lookedIn, {
              what: one.what ?? words.lookedIn,
            }),
          ],
    ),
    ...(lute === undefined
      ? []
      : [make.mark('seen', 'lute', null, 'ring', words.seenAtLute(lute), { what: words.seenAtLute(lute) })]),
    ...(note === undefined ? [] : [make.mark('seen', 'note', null, 'ring', note, { what: note })]),
  ];
}

function values(times: FireTimes, make: Maker): FiringThing[] {
  const { noted = [], opening: how, opened } = times.firing.reading.body;
  const value = (lane: Lane, id: string, at: string, what: string, entry = times.firing.id, until = ''): FiringThing => ({
    id,
    lane,
    drawn: { is: 'value', at },
    text: what,
    when: make.clock(at),
    until,
    what,
    said: '',
    entry,
  });
  const read = noted.flatMap((one, i) =>
    one.temperatureC === undefined
      ? []
      : [value('temperature', `noted ${i} temperature`, one.at, words.readAtRetort(temperatureText(one.temperatureC)))],
  );
  return [
    ...read,
    ...(read.length > 0 && how && 'measuredC' in how && opened !== undefined
      ? [value('temperature', 'opening temperature', opened, words.measured(how.measuredC))]
      : []),
    ...times.air.map((row) =>
      value(
        'air',
        `air ${row.id}`,
        row.body.from,
        // the row's own text begins with its time, which stands beside it here
        airRowText(row).slice(airRowText(row).indexOf(': ') + 2),
        row.id,
        row.body.to === undefined ? '' : make.clock(row.body.to),
      ),
    ),
  ];
}

function missingOf({ firing, missing, heldBack }: FireTimes, things: readonly FiringThing[]): Partial<Record<Lane, string>> {
  const none = (lane: Lane): boolean => !things.some((thing) => thing.lane === lane);
  const stages = missing.map((stage) => words.stages[stage]);
  const said = (test: (id: string) => boolean): boolean => things.some(({ id }) => test(id));
  const water = [
    ...(said((id) => id.endsWith('water-on')) ? [] : [words.waterBeforeShort]),
    ...(said((id) => id.endsWith('water-kept')) ? [] : [words.waterKeptShort]),
  ];
  const phases = checkPhases.filter((phase) => !said((id) => id.endsWith(` ${phase}`))).map((phase) => words.phases[phase]);
  return {
    ...(none('fire') ? { fire: words.notWritten } : {}),
    ...(stages.length > 0 ? { times: words.notWrittenOf(stages) } : {}),
    ...(water.length > 0 ? { water: words.notWrittenOf(water) } : {}),
    ...(none('stops') ? { stops: words.noneWritten } : {}),
    ...(none('seen') ? { seen: words.noneWritten } : {}),
    ...(phases.length > 0 ? { checks: words.notWrittenOf(phases) } : {}),
    ...(firing.reading.body.opening === undefined ? { opening: words.notMeasured } : {}),
    ...(none('temperature') ? { temperature: words.noTemperature } : {}),
    ...(heldBack > 0 ? { air: words.heldBack(heldBack) } : none('air') ? { air: words.noAir } : {}),
  };
}

/** Everything of a firing in words. */
export function firingThings(book: Book, times: FireTimes): FiringThings {
  const make = makerOf(times);
  const { firing } = times;
  const things: FiringThing[] = [
    ...times.stretches.map(({ what, from, to }) =>
      make.span('fire', what, [from, to], looks[what], words.stretches[what], lasting(from, to)),
    ),
    ...times.stamps.map(({ stage, at }) =>
      make.mark('times', stage, at, stage === 'opened' ? 'diamond' : 'dot', words.at(make.clock(at), words.stages[stage]), {
        what: words.stages[stage],
      }),
    ),
    ...turnings(times, 'water', make),
    ...waterAnswers(times, make),
    ...turnings(times, 'fire', make),
    ...times.incidents.map((incident) =>
      make.mark(
        'stops',
        `incident ${incident.id}`,
        incident.happened,
        'triangle',
        words.at(make.clock(incident.happened), words.incident),
        {
          what: words.incidentSays(incident.body.what),
          entry: incident.id,
        },
      ),
    ),
    ...seen(times, make),
    ...checksDone(book, times, make),
    ...opening(times, make),
    ...values(times, make),
  ];
  const missing = missingOf(times, things);
  const timeOf = ({ drawn }: FiringThing): string | null =>
    drawn.is === 'span' ? drawn.from : drawn.is === 'stood' ? drawn.to : drawn.at;
  const at = firing.reading.body.opened ?? firing.reading.happened;
  return {
    things,
    missing,
    rows: [
      // what was measured at the opening stands in the table once
      ...things
        .filter(({ id }) => id !== 'opening temperature')
        .toSorted((a, b) => {
          const [x, y] = [timeOf(a), timeOf(b)];
          return x === null || y === null ? Number(x === null) - Number(y === null) : compareMoments(x, y);
        }),
      ...laneNames.flatMap((lane) => {
        const note = missing[lane];
        return note === undefined
          ? []
          : [{ id: `missing ${lane}`, when: '', until: '', what: words.lanes[lane], said: note, entry: null }];
      }),
    ],
    rules: (stopRulesAt(book.current, at)?.body.rules ?? [])
      .filter(({ of }) => of === 'temperature' || of === 'cooling' || of === 'reading')
      .map(({ of, when, act }) => words.rules(small(stopThingNames[of]), when, act)),
  };
}
