/** `reckon vapour`: what saturated air holds. */
import { bad, good, problem } from '../result.ts';
import { hotFromC, saturation, vapourFromC, vapourToC } from '../vapour.ts';
import { z } from '../zod.ts';
import { orReason } from './answer.ts';
import { anyNumber, topic } from './input.ts';

/** Whether the vapour correlation covers a temperature, as problems. */
export const withinVapourRange = (temperatureC: number, field: string) =>
  temperatureC < vapourFromC || temperatureC > vapourToC
    ? [problem('vapour-range', field, { from: vapourFromC, to: vapourToC })]
    : [];

const schema = z.strictObject({ temperature_c: anyNumber, pressure_kpa: anyNumber.optional() });

export const vapourTopic = topic(schema, ({ temperature_c: temperatureC, pressure_kpa: pressureKpa }) => {
  const problems = withinVapourRange(temperatureC, 'temperature_c');
  if (problems.length > 0) return bad(...problems);
  const { pressurePa, mgM3, ppm, boiling } = saturation(temperatureC, pressureKpa);
  return good({
    pressure_pa: pressurePa,
    saturated_mg_m3: mgM3,
    saturated_ppm: orReason(ppm, 'over-nothing'),
    findings: [...(boiling ? ['boiling'] : []), ...(temperatureC > hotFromC ? ['hot-for-room-air'] : [])],
  });
});
