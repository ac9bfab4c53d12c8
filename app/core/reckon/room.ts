/** `reckon room`: a ventilated room with a source. */
import { bad, good, problem } from '../result.ts';
import { concentrationAfter, doseOver, minutesTo, steadyMgM3 } from '../room.ts';
import { saturation } from '../vapour.ts';
import { z } from '../zod.ts';
import { orReason } from './answer.ts';
import { anyNumber, notNegative, oneOrMore, topic } from './input.ts';
import { withinVapourRange } from './vapour.ts';

const schema = z.strictObject({
  volume_m3: anyNumber,
  supply_m3_h: notNegative,
  supply_mg_m3: notNegative.optional(),
  start_mg_m3: notNegative,
  source_mg_h: notNegative.optional(),
  mixing: oneOrMore.optional(),
  hours: notNegative.optional(),
  target_mg_m3: notNegative.optional(),
  temperature_c: anyNumber.optional(),
});

export const roomTopic = topic(schema, (input) => {
  const { hours, target_mg_m3: target, temperature_c: temperatureC = 20 } = input;
  const problems = withinVapourRange(temperatureC, 'temperature_c');
  if (problems.length > 0) return bad(...problems);
  const saturatedMgM3 = saturation(temperatureC).mgM3;
  if (input.start_mg_m3 > saturatedMgM3)
    return bad(problem('above-saturation', 'start_mg_m3', { saturated: Number(saturatedMgM3.toPrecision(4)) }));
  const room = {
    volumeM3: input.volume_m3,
    supplyM3h: input.supply_m3_h,
    supplyMgM3: input.supply_mg_m3 ?? 0,
    startMgM3: input.start_mg_m3,
    sourceMgH: input.source_mg_h ?? 0,
    mixing: input.mixing ?? 1,
    saturatedMgM3,
  };
  const dose = hours === undefined ? null : doseOver(room, hours);
  return good({
    steady_mg_m3: orReason(steadyMgM3(room), 'no-air-supply'),
    ...(hours !== undefined && {
      at_end_mg_m3: orReason(concentrationAfter(room, hours), 'over-nothing'),
      mean_mg_m3: orReason(dose === null || hours === 0 ? null : dose / hours, 'over-nothing'),
      dose_mg_h_m3: orReason(dose, 'over-nothing'),
    }),
    ...(target !== undefined && { minutes_to_target: orReason(minutesTo(room, target), 'over-nothing') }),
  });
});
