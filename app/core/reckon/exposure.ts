/** `reckon exposure`: a day's timed readings held against the limits entered. */
import { compare } from '../decimal.ts';
import { dayExposure, type Range } from '../exposure.ts';
import { bases, rangeFor, verdict } from '../exposure-verdict.ts';
import { toDouble } from '../ratio.ts';
import { bad, good, type Problem, problem } from '../result.ts';
import { type ClockTime, clockTime, laidOut, minutesBetween, offsetsAgree } from '../shift-clock.ts';
import { z } from '../zod.ts';
import { notComputable, num, ratioOr } from './answer.ts';
import { decimalNotNegative, onePerField, through, topic } from './input.ts';

const time = through<ClockTime>(clockTime);

const schema = z.strictObject({
  readings: z.array(
    z.strictObject({
      from: time,
      to: time,
      mg_m3: decimalNotNegative,
      mark: z.enum(['<', '>']).optional(),
      max_mg_m3: decimalNotNegative.optional(),
    }),
  ),
  shift: z.strictObject({ from: time, to: time }).optional(),
  unsampled: z.strictObject({ low: decimalNotNegative, high: decimalNotNegative }).optional(),
  limits: z.array(z.strictObject({ mg_m3: decimalNotNegative, basis: z.enum(bases) })),
});
type Input = z.infer<typeof schema>;

function cannotBe({ readings, shift, unsampled }: Input): readonly Problem[] {
  const times = [
    ...readings.flatMap((r, i): [string, ClockTime][] => [
      [`readings[${i}].from`, r.from],
      [`readings[${i}].to`, r.to],
    ]),
    ...(shift
      ? ([
          ['shift.from', shift.from],
          ['shift.to', shift.to],
        ] as [string, ClockTime][])
      : []),
  ];
  const problems: Problem[] = [...offsetsAgree(times)];
  readings.forEach((r, i) => {
    if (minutesBetween(r.from, r.to) === 0) problems.push(problem('no-time', `readings[${i}].to`));
    if (r.max_mg_m3 && r.mark !== '<' && compare(r.max_mg_m3, r.mg_m3) < 0)
      problems.push(problem('max-below-mean', `readings[${i}].max_mg_m3`));
  });
  if (shift && minutesBetween(shift.from, shift.to) === 0) problems.push(problem('no-time', 'shift.to'));
  if (unsampled && compare(unsampled.low, unsampled.high) > 0) problems.push(problem('low-above-high', 'unsampled.low'));
  return onePerField(problems);
}

const hours = (minutes: number): number => minutes / 60;

const asAnswer = (range: Range | null) =>
  range
    ? { low: toDouble(range.low), high: ratioOr(range.high, 'no-limit-on-readings') }
    : { low: notComputable('no-readings'), high: notComputable('no-readings') };

export const exposureTopic = topic(schema, (input) => {
  const problems = cannotBe(input);
  if (problems.length > 0) return bad(...problems);
  const placed = laidOut(input.readings, input.shift);
  if (!placed.ok) return placed;
  const readings = input.readings.flatMap((r, i) => {
    const stretch = placed.value.readings[i];
    return stretch ? [{ ...stretch, mgM3: r.mg_m3, mark: r.mark, maxMgM3: r.max_mg_m3 }] : [];
  });
  const none = readings.length === 0;
  const day = dayExposure({ lengthMinutes: placed.value.lengthMinutes, readings, unsampled: input.unsampled });
  return good({
    known_dose_mg_h_m3: none ? notComputable('no-readings') : toDouble(day.knownDose),
    sampled_h: hours(day.sampledMinutes),
    unsampled_h: none && !input.shift ? notComputable('no-readings') : hours(day.unsampledMinutes),
    twa_8h: asAnswer(day.twa8h),
    mean_sampled: asAnswer(day.meanSampled),
    highest_15min: asAnswer(day.highest15min),
    verdicts: input.limits.map((limit) => ({
      mg_m3: num(limit.mg_m3),
      basis: limit.basis,
      verdict: verdict(rangeFor(day, limit.basis), limit.mg_m3),
    })),
    findings: day.findings,
  });
});
