/**
 * Scales, meters, retorts and people out of date: what was due and is past, readings taken on a scale out of date or in doubt, people who wrote after
 * they had left. Things out of use fall due no more.
 */
import type { Body } from '../../kinds/index.ts';
import { dayOf } from '../../time.ts';
import type { Book } from '../book.ts';
import type { Current, Reading } from '../current.ts';
import { drumsDue } from '../drums.ts';
import { latest } from '../registers.ts';
import { type Asked, fromFlags, type OutOfStep, ofEntry, ofThing } from './item.ts';

const inUse = (out: string | undefined, day: string): boolean => out === undefined || out >= day;

function things(book: Book, day: string): OutOfStep[] {
  const { scale, meter, retort } = book.registers;
  return [
    ...[...scale.values()].flatMap((thing) => {
      const { body, from } = latest(thing);
      if (!inUse(body.out, day)) return [];
      const due = body.certificate?.due;
      if (body.certificate === undefined)
        return [ofThing('due', 'scale-no-certificate', 'scale', thing.id, from, { name: body.label })];
      return due !== undefined && due < day
        ? [ofThing('due', 'scale-due', 'scale', thing.id, due, { name: body.label, due })]
        : [];
    }),
    ...[...meter.values()].flatMap((thing) => {
      const { body } = latest(thing);
      const due = body.calibrated?.due;
      return inUse(body.out, day) && due !== undefined && due < day
        ? [ofThing('due', 'meter-due', 'meter', thing.id, due, { name: body.label, due })]
        : [];
    }),
    ...[...retort.values()].flatMap((thing) => {
      const { body } = latest(thing);
      const due = body.inspected?.due;
      return inUse(body.out, day) && due !== undefined && due < day
        ? [ofThing('due', 'retort-due', 'retort', thing.id, due, { name: body.label, due })]
        : [];
    }),
  ];
}

/** Of each check, by what it is of and for whom, the one written last. */
export function lastChecks(current: Current): readonly Reading<'check-due'>[] {
  const last = new Map<string, Reading<'check-due'>>();
  for (const reading of current.of('check-due')) last.set(`${reading.body.what} ${reading.body.person ?? ''}`, reading);
  return [...last.values()];
}

/** Checks overdue, or not done. Of a person’s check neither name nor day is told. */
function checks(book: Book, day: string): OutOfStep[] {
  return lastChecks(book.current).flatMap((reading) => {
    const { what, person, next, done }: Body<'check-due'> = reading.body;
    const of = person === undefined ? 'site' : 'person';
    const data = { what, of, due: of === 'site' ? (next ?? '') : '' };
    const since = (from: string): string => (of === 'site' ? from : '');
    if (next !== undefined && next < day) return [ofEntry('due', 'check-overdue', reading.id, since(next), data)];
    return done === 'no' && next === undefined
      ? [ofEntry('due', 'check-not-done', reading.id, since(reading.happened), data)]
      : [];
  });
}

/** Drums that stand here past the day by which the site wanted them gone. */
const drums = (book: Book, day: string): OutOfStep[] =>
  drumsDue(book.current, book.registers).flatMap(({ vessel, label, due }) =>
    due < day ? [ofThing('due', 'drum-due', 'vessel', vessel, due, { name: label, due })] : [],
  );

function writersWhoLeft(book: Book): OutOfStep[] {
  const left = new Map<string, string>();
  for (const thing of book.registers.person.values()) {
    const day = latest(thing).body.left;
    if (day !== undefined) left.set(thing.id, day);
  }
  if (left.size === 0) return [];
  return [...book.current.byId.values()].flatMap((reading) => {
    if (reading.struck || reading.kind === 'person') return [];
    const gone = [reading.entry.by, ...(reading.entry.witness ?? [])].find((id) => {
      const day = id === null ? undefined : left.get(id);
      return day !== undefined && day < dayOf(reading.happened);
    });
    return gone
      ? [ofEntry('due', 'writer-left', reading.id, reading.happened, { person: gone, left: left.get(gone) ?? '' })]
      : [];
  });
}

export const dueOutOfStep = (book: Book, { at }: Asked): OutOfStep[] => [
  ...things(book, dayOf(at)),
  ...checks(book, dayOf(at)),
  ...drums(book, dayOf(at)),
  ...fromFlags(book, 'due', [
    'scale-check-failed',
    'scale-out-of-date',
    'meter-out-of-date',
    'meter-no-calibration',
    'air-no-meter',
  ]),
  ...writersWhoLeft(book),
];
