/**
 * How a day stands to the limits that the site picked: below, at or above each figure, or "cannot tell", and never more. People at work are held against
 * figures for work, places of visitors against figures for the public; no limit picked, no verdict.
 */
import { decimalFromText, zero } from '../decimal.ts';
import type { Range } from '../exposure.ts';
import { rangeFor, type Verdict, verdictOn } from '../exposure-verdict.ts';
import type { Body } from '../kinds/index.ts';
import type { LimitPeople } from '../kinds/limit.ts';
import { type LongShiftWay, longShiftFactor, longShiftWays } from '../long-shift.ts';
import { asRatio, compareRatio, type Ratio, timesRatio } from '../ratio.ts';
import type { AirDay } from './air-days.ts';
import type { Book } from './book.ts';
import { latest } from './registers.ts';

/** What is held against a limit. */
export type AirHow =
  | '8h'
  | '15min'
  | 'ceiling'
  /** The mean over what was read, for a figure that is meant day and night. */
  | 'mean-sampled'
  /** Momentary readings alone: they can show "above" and nothing else. */
  | 'moments-only'
  | 'worst-8h'
  | LongShiftWay;

export interface AirVerdict {
  readonly limit: { readonly id: string; readonly body: Body<'limit'> };
  readonly how: AirHow;
  /** The figure compared with, mg/m³: the limit's own, or reduced for a long shift. */
  readonly limitMgM3: Ratio;
  readonly range: Range | null;
  readonly verdict: Verdict;
}

/** Whose limits a day is held against. */
export const peopleOf = ({ subject }: Pick<AirDay, 'subject'>): LimitPeople =>
  subject.sample === 'visitor-area' ? 'public' : 'work';

/** Limits that the site picked for these people and that hold on that day, by their last statement. A limit that changed is a row of its own with its dates. */
export function pickedLimits({ registers }: Pick<Book, 'registers'>, day: string, people: LimitPeople): AirVerdict['limit'][] {
  return [...registers.limit.values()]
    .map((thing) => ({ id: thing.id, body: latest(thing).body }))
    .filter(
      ({ body }) =>
        body.picked === 'yes' &&
        body.people === people &&
        (body.from === undefined || body.from <= day) &&
        (body.to === undefined || body.to >= day) &&
        (body.out === undefined || body.out >= day),
    );
}

/** Lowest that certainly was over what was read at moments only. */
function momentsOnly(day: AirDay): Range | null {
  const seen = day.spots.map((s) => (s.figure.mark === '<' ? { n: 0n, d: 1n } : asRatio(s.figure.mgM3)));
  const least = seen.reduce<Ratio | null>((a, b) => (a === null || compareRatio(b, a) < 0 ? b : a), null);
  return least && { low: least, high: null };
}

function against(day: AirDay, limit: AirVerdict['limit']): AirVerdict[] {
  const mgM3 = asRatio(decimalFromText(limit.body.mgM3) ?? zero);
  const row = (how: AirHow, range: Range | null, limitMgM3 = mgM3): AirVerdict => ({
    limit,
    how,
    limitMgM3,
    range,
    verdict: verdictOn(range, limitMgM3),
  });
  const { basis } = limit.body;
  if (basis === 'continuous') {
    const { meanSampled } = day.exposure;
    return [meanSampled ? row('mean-sampled', meanSampled) : row('moments-only', momentsOnly(day))];
  }
  const own = row(basis, rangeFor(day.exposure, basis));
  if (basis !== '8h' || day.lengthMinutes <= 480) return [own];
  return [
    own,
    row('worst-8h', day.worst8h),
    ...longShiftWays.map((way) => row(way, day.shiftMean, timesRatio(mgM3, longShiftFactor(way, day.lengthMinutes)))),
  ];
}

/** Every verdict of a day, limit by limit; none where no limit is picked. */
export const verdictsOf = (book: Pick<Book, 'registers'>, day: AirDay): readonly AirVerdict[] =>
  pickedLimits(book, day.day, peopleOf(day)).flatMap((limit) => against(day, limit));
