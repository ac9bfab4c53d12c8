/** The typed fields of the page on opening a retort too hot, read and refused field by field as the other reckonings do. */
import { type Opened, type Opening, opened } from '../../../core/opening.ts';
import { read } from '../../../core/read.ts';
import { anyNumber, notNegative, oneOrMore } from '../../../core/reckon/input.ts';
import { withinVapourRange } from '../../../core/reckon/vapour.ts';
import { bad, good, type Result } from '../../../core/result.ts';
import { standardPressureKpa } from '../../../core/vapour.ts';
import { z } from '../../../core/zod.ts';

const schema = z.strictObject({
  headspaceL: notNegative,
  temperatureC: anyNumber,
  pressureKpa: anyNumber.min(1).optional(),
  roomM3: anyNumber.min(0.1),
  roomC: anyNumber,
  changesPerHour: notNegative,
  mixing: oneOrMore,
  sourceMgH: notNegative,
  backgroundMgM3: notNegative,
  targetMgM3: notNegative,
});

/** What follows from the typed opening, or every problem by field. */
export function openingFrom(input: Readonly<Record<string, unknown>>): Result<Opened & { readonly opening: Opening }> {
  const got = read(schema, input);
  if (!got.ok) return got;
  const opening: Opening = { ...got.value, pressureKpa: got.value.pressureKpa ?? standardPressureKpa };
  const problems = [...withinVapourRange(opening.temperatureC, 'temperatureC'), ...withinVapourRange(opening.roomC, 'roomC')];
  if (problems.length > 0) return bad(...problems);
  const answer = opened(opening);
  return answer ? good({ ...answer, opening }) : bad();
}
