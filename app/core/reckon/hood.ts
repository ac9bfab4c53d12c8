/** `reckon hood`: air a capture hood has to draw. */
import { decimalFromText, times, zero } from '../decimal.ts';
import { cubicFootM3, hoodM3s } from '../hood.ts';
import { quotient } from '../ratio.ts';
import { good } from '../result.ts';
import { z } from '../zod.ts';
import { num } from './answer.ts';
import { decimalNotNegative, topic } from './input.ts';

const exact = (text: string) => decimalFromText(text) ?? zero;

const schema = z.strictObject({
  capture_m_s: decimalNotNegative,
  distance_m: decimalNotNegative,
  area_m2: decimalNotNegative,
  flanged: z.boolean().optional(),
});

export const hoodTopic = topic(schema, (input) => {
  const m3s = hoodM3s({
    captureMs: input.capture_m_s,
    distanceM: input.distance_m,
    areaM2: input.area_m2,
    flanged: input.flanged ?? false,
  });
  return good({
    m3_s: num(m3s),
    m3_h: num(times(m3s, exact('3600'))),
    cfm: quotient(times(m3s, exact('60')), cubicFootM3),
  });
});
