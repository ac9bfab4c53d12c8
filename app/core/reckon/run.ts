/** `reckon run`: one charge, one or more firings, judged at each opening of the retort. */
import { compare, type Decimal, isZero, minus, plus, sum, times, zero } from '../decimal.ts';
import { bad, good, type Problem, problem } from '../result.ts';
import { caughtLower, judgeRun, type RunBands, type RunFigures, runKinds, startingLossBand, startingRatioBand } from '../run.ts';
import { z } from '../zod.ts';
import { num, orReason } from './answer.ts';
import { decimalNotNegative, decimalUncertainty, grams, topic } from './input.ts';

const firing = z.strictObject({ sponge: grams, mercury: grams, water: grams.optional() });
type Firing = z.infer<typeof firing>;

const schema = z.strictObject({
  kind: z.enum(runKinds).optional(),
  charge: z.array(grams),
  firings: z.array(firing),
  condenser_before_g: decimalNotNegative.optional(),
  condenser_after_g: decimalNotNegative.optional(),
  bar: grams.optional(),
  prills: grams.optional(),
  u_g: z
    .strictObject({
      charge: decimalUncertainty.optional(),
      sponge: decimalUncertainty.optional(),
      mercury: decimalUncertainty.optional(),
    })
    .optional(),
  usual_ratio: decimalNotNegative.optional(),
  ratio_band: decimalNotNegative.optional(),
  loss_band: decimalNotNegative.optional(),
  loss_allowance_g: decimalNotNegative.optional(),
});
type Input = z.infer<typeof schema>;

const squares = (values: readonly (Decimal | undefined)[]): Decimal => sum(values.map((u) => times(u ?? zero, u ?? zero)));

const bandsOf = (input: Input): RunBands => ({
  kind: input.kind ?? 'amalgam',
  usualRatio: input.usual_ratio,
  ratioBand: input.ratio_band ?? startingRatioBand,
  lossBand: input.loss_band ?? startingLossBand,
  lossAllowance: input.loss_allowance_g,
});

function cannotBe(charge: Decimal, firings: readonly Firing[]): Problem[] {
  const problems: Problem[] = [];
  if (isZero(charge)) problems.push(problem('charge-weighs-nothing', 'charge'));
  if (firings.length === 0) problems.push(problem('no-firing', 'firings'));
  if (!isZero(charge))
    firings.forEach(({ sponge }, i) => {
      if (compare(sponge, charge) > 0) problems.push(problem('sponge-over-charge', `firings[${i}].sponge`));
    });
  return problems;
}

const asAnswer = (run: RunFigures) => ({
  sponge_ratio: orReason(run.spongeRatio, 'over-nothing'),
  gap_g: num(run.gap),
  gap_of_charge: orReason(run.gapOfCharge, 'over-nothing'),
  caught_upper: orReason(run.caughtUpper, 'no-charge-driven-off'),
  findings: run.findings,
});

export const runTopic = topic(schema, (input) => {
  const { firings } = input;
  const charge = sum(input.charge);
  const problems = cannotBe(charge, firings);
  if (problems.length > 0) return bad(...problems);

  const uGapSquared = input.u_g && squares([input.u_g.charge, input.u_g.sponge, input.u_g.mercury]);
  const condenserChange = minus(input.condenser_after_g ?? zero, input.condenser_before_g ?? zero);
  const bands = bandsOf(input);
  let mercury = zero;
  let water = zero;
  let waterKnown = true;
  // what the retort shows at each opening: the sponge of that firing, mercury and water of all so far
  const openings = firings.map((one) => {
    mercury = plus(mercury, one.mercury);
    water = plus(water, one.water ?? zero);
    waterKnown &&= one.water !== undefined;
    return judgeRun({ charge, sponge: one.sponge, mercury, water, waterKnown, condenserChange, uGapSquared }, bands);
  });
  const last = openings.at(-1);
  const sponge = firings.at(-1)?.sponge ?? zero;
  if (!last) return bad(problem('no-firing', 'firings'));
  const { findings, ...figures } = asAnswer(last);
  return good({
    charge_g: num(charge),
    sponge_g: num(sponge),
    mercury_g: num(mercury),
    driven_off_g: num(last.drivenOff),
    gap_g: figures.gap_g,
    gap_of_charge: figures.gap_of_charge,
    ...(uGapSquared && { u_gap_g: Math.sqrt(num(uGapSquared)) }),
    sponge_ratio: figures.sponge_ratio,
    caught_upper: figures.caught_upper,
    ...(input.bar && {
      caught_lower: orReason(
        caughtLower({ charge, mercury, water, bar: input.bar, prills: input.prills ?? zero }),
        'caught-above-one',
      ),
    }),
    per_firing: openings.map(asAnswer),
    findings,
  });
});
