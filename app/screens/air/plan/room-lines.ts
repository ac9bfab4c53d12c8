/** The figures of a room as the planning page tells them: where it settles, what is there after a time, and when it meets a target or why never. */
import { minutesTo, type Room, steadyMgM3 } from '../../../core/room.ts';
import { bothUnits, digitsText, givenText, mgM3Text, minutesText } from '../../../words/air-planned.ts';
import { airPlan } from '../../../words/screens-air-plan.ts';
import { airRoomPlan as words } from '../../../words/screens-air-room.ts';

export interface PlanLine {
  readonly what: string;
  readonly figure: string;
  readonly how: string;
}

/** When a room meets a target, up or down; `never` in words, with the reason. */
export function reachLine(room: Room, targetMgM3: number): PlanLine | null {
  const minutes = minutesTo(room, targetMgM3);
  if (minutes === null) return null;
  const target = givenText(targetMgM3);
  const steady = steadyMgM3(room);
  const settles = steady === null ? '' : mgM3Text(steady);
  const falls = room.startMgM3 > targetMgM3;
  if (minutes === 0) return { what: words.reach.there(target), figure: minutesText(0), how: words.thereHow };
  if (minutes === 'never') {
    const why = falls
      ? steady === null
        ? words.neverFallNoAir
        : words.neverFall(settles)
      : targetMgM3 > room.saturatedMgM3
        ? words.neverRiseSaturated
        : words.neverRise(settles);
    return { what: falls ? words.reach.fall(target) : words.reach.rise(target), figure: airPlan.never, how: why };
  }
  if (!falls) return { what: words.reach.rise(target), figure: minutesText(minutes), how: words.riseHow };
  const perfect = minutesTo({ ...room, mixing: 1 }, targetMgM3);
  const beside = typeof perfect === 'number' && room.mixing > 1 ? `; ${words.fallHowPerfect(minutesText(perfect))}` : '';
  return {
    what: words.reach.fall(target),
    figure: minutesText(minutes),
    how: `${words.fallHow(digitsText(room.mixing))}${beside}`,
  };
}

/** Where the room settles. */
export function steadyLine(room: Room): PlanLine {
  const steady = steadyMgM3(room);
  if (steady !== null) return { what: words.steady, figure: bothUnits(steady), how: words.steadyHow };
  const rises = room.sourceMgH > 0;
  return { what: words.steady, figure: airPlan.never, how: rises ? words.steadyNone : words.steadyStays };
}
