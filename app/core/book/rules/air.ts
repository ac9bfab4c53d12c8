/**
 * What a reading of the air may not say: an end before its beginning, an hour counted twice, one meter in two places, more than a day. A temperature,
 * figure or unit that looks like a slip is asked about and kept as it stands once it was answered.
 */
import { compare } from '../../decimal.ts';
import type { AirQuestion } from '../../kinds/air-reading.ts';
import type { Body } from '../../kinds/index.ts';
import { minutesOf } from '../../time.ts';
import { airFigure, airMax, airMinutes, looksThousandfold, questionsOf, saturatedAt } from '../air-as-read.ts';
import type { Asking, Rules } from './asking.ts';

type AirBody = Body<'air-reading'>;

const dayMinutes = 1440;
const minutes = (moment: string): number => minutesOf(moment) ?? 0;

/** Whether the two stand for one thing: one person's breath, or one place. */
const sameSubject = (a: AirBody, b: AirBody): boolean =>
  a.sample === b.sample && (a.sample === 'personal' ? a.person === b.person : a.place === b.place);

const overlaps = (a: AirBody, b: AirBody): boolean =>
  a.to !== undefined && b.to !== undefined && minutes(a.from) < minutes(b.to) && minutes(b.from) < minutes(a.to);

function times(body: AirBody, asking: Asking): void {
  const { from, to, shift } = body;
  asking.moment(from, 'body.from');
  if (to !== undefined) {
    const lasts = airMinutes(body);
    asking.moment(to, 'body.to');
    if (lasts === 0) asking.refuse('no-time', 'body.to');
    else if (lasts < 0) asking.refuse('air-reversed', 'body.to', { from, to });
    else if (lasts > dayMinutes) asking.refuse('over-a-day', 'body.to');
  }
  if (!shift) return;
  const lasts = minutes(shift.to) - minutes(shift.from);
  if (lasts === 0) asking.refuse('no-time', 'body.shift.to');
  else if (lasts < 0) asking.refuse('air-reversed', 'body.shift.to', { from: shift.from, to: shift.to });
  else if (lasts > dayMinutes) asking.refuse('over-a-day', 'body.shift.to');
  else if (minutes(from) < minutes(shift.from) || minutes(to ?? from) > minutes(shift.to))
    asking.refuse('outside-shift', 'body.shift');
}

function questions(body: AirBody, others: readonly AirBody[], asking: Asking): void {
  const sure: ReadonlySet<AirQuestion> = new Set(body.sure ?? []);
  const asked = questionsOf(body);
  if (asked.includes('temperature') && !sure.has('temperature'))
    asking.refuse('air-temperature-asked', 'body.temperatureC', { read: body.temperatureC ?? 0 });
  if (asked.includes('figure') && !sure.has('figure'))
    asking.refuse('air-figure-asked', 'body.shows', {
      read: body.shows,
      unit: body.unit,
      holds: saturatedAt(body.temperatureC) ?? 0,
      temperatureC: body.temperatureC ?? 0,
    });
  const earlier = others.filter(
    (o) => o.meter === body.meter && body.meter !== undefined && minutes(o.from) < minutes(body.from),
  );
  if (!sure.has('unit') && looksThousandfold(body, earlier))
    asking.refuse('air-unit-asked', 'body.unit', { read: body.shows, unit: body.unit });
}

export const airRules: Rules = {
  'air-reading': (body, asking) => {
    asking.known(body.person, 'person', 'body.person');
    asking.known(body.sampler, 'person', 'body.sampler');
    asking.known(body.meter, 'meter', 'body.meter');
    asking.known(body.run, 'charge', 'body.run');
    times(body, asking);
    const max = airMax(body);
    const { mgM3, mark } = airFigure(body);
    if (max && mark !== '<' && compare(max, mgM3) < 0) asking.refuse('max-below-mean', 'body.max');
    const others = asking.book.current
      .of('air-reading')
      .filter((r) => r.id !== asking.instead)
      .map((r) => r.body);
    const twice = others.find((o) => sameSubject(o, body) && overlaps(o, body));
    const elsewhere = others.find((o) => o.meter !== undefined && o.meter === body.meter && overlaps(o, body));
    if (twice) asking.refuse('air-overlap', 'body.from', { from: twice.from, to: twice.to ?? twice.from });
    else if (elsewhere)
      asking.refuse('air-meter-elsewhere', 'body.meter', { from: elsewhere.from, to: elsewhere.to ?? elsewhere.from });
    questions(body, others, asking);
  },
  limit: ({ checked }, asking) => asking.pastDay(checked?.on, 'body.checked.on'),
};
