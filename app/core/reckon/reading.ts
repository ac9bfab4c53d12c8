/** `reckon reading`: one air reading seen three ways. */
import { findingsOf, normalisedMgM3, ofSaturation, partsPerBillion } from '../air-reading.ts';
import { bad, good } from '../result.ts';
import { z } from '../zod.ts';
import { orReason } from './answer.ts';
import { anyNumber, topic } from './input.ts';
import { withinVapourRange } from './vapour.ts';

const schema = z.strictObject({ mg_m3: anyNumber, temperature_c: anyNumber, pressure_kpa: anyNumber });

export const readingTopic = topic(schema, (input) => {
  const problems = withinVapourRange(input.temperature_c, 'temperature_c');
  if (problems.length > 0) return bad(...problems);
  const reading = { mgM3: input.mg_m3, temperatureC: input.temperature_c, pressureKpa: input.pressure_kpa };
  return good({
    normalised_mg_m3: orReason(normalisedMgM3(reading), 'over-nothing'),
    ppb: orReason(partsPerBillion(reading), 'over-nothing'),
    of_saturation: ofSaturation(reading),
    findings: findingsOf(reading),
  });
});
