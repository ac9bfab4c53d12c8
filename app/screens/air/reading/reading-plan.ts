/**
 * The form of an air reading: what stands in it at first (the meter and unit used last, today), and the body it makes. Times take the clock's own offset at
 * their day and hour, so that a night on which the clock changes comes out right. A temperature is never filled in: only a thermometer says it.
 */
import type { Book } from '../../../core/book/book.ts';
import { latest } from '../../../core/book/registers.ts';
import { dayOf, isMoment } from '../../../core/time.ts';
import type { FormPlan } from '../../../daybook/form.svelte.ts';
import type { Clock } from '../../../parts/moment.ts';
import { airReadingFields } from '../../../words/daybook-fields-air.ts';
import { bodyOf, filled, oneOfEach, type Typed, type TypedMoment } from '../../daybook/typed.ts';
import { readingDraft } from '../drafts.ts';

const usual = { scale: '', unit: 'g' } as const;

/** The meter that read last, else the only one in use. */
export function usualMeter(book: Book): string {
  const last = book.current.of('air-reading').at(-1)?.body.meter;
  const inUse = [...book.registers.meter.values()].filter((m) => latest(m).body.out === undefined).map((m) => m.id);
  return last !== undefined && inUse.includes(last) ? last : inUse.length === 1 ? (inUse[0] ?? '') : '';
}

/** A time as typed with the clock's own offset then; what is no time goes through as typed. */
function timed(typed: TypedMoment | undefined, clock: Clock): string | undefined {
  if (!typed || (typed.day === '' && typed.time === '')) return undefined;
  if (typed.was) return undefined;
  return `${typed.day}T${typed.time}${clock.offsetAt(typed.day, typed.time)}`;
}

/** The offset of a typed time; empty while it names none. */
export function offsetOf(typed: TypedMoment | undefined, clock: Clock): string {
  const moment = timed(typed, clock) ?? '';
  return isMoment(moment) ? moment.slice(-6) : '';
}

/** A reading that is begun at the time it is written down; a mean has an end, so its day stands there. */
export const readingPlan = (book: Book, clock: Clock): FormPlan<{ fields: Typed }> => ({
  name: readingDraft,
  kind: 'air-reading',
  start: () => {
    const now = clock.now();
    const last = book.current.of('air-reading').at(-1)?.body;
    const meter = usualMeter(book);
    const same = last !== undefined && last.meter === meter;
    const typed = filled(
      airReadingFields,
      {
        meter: meter === '' ? undefined : meter,
        unit: same ? last.unit : undefined,
        normalised: same ? last.normalised : undefined,
        sample: last === undefined || last.sample === 'personal' ? undefined : last.sample,
        place: last?.place,
      },
      usual,
    );
    return { fields: { ...typed, from: { day: dayOf(now), time: '', timing: 'exact', was: '' } } };
  },
  full: () => ({ fields: oneOfEach(airReadingFields) }),
  body: ({ fields }) => {
    const body = bodyOf(airReadingFields, fields, clock.now().slice(-6));
    const from = timed(fields.from as TypedMoment, clock);
    const to = timed(fields.to as TypedMoment, clock);
    return { ...body, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
  },
});
