/** `reckon balance`: one period's mercury balance. */
import {
  type BalanceItem,
  balance,
  type Difference,
  detectableFactor,
  excessOver,
  levelOf,
  perTonneOre,
  roles,
  uOfDifference,
  zOf,
} from '../balance.ts';
import { compare, type Decimal, toNumber, zero } from '../decimal.ts';
import { bad, good, type Problem, problem } from '../result.ts';
import { z } from '../zod.ts';
import { num, orReason } from './answer.ts';
import { decimal, decimalNotNegative, decimalUncertainty, topic } from './input.ts';

const schema = z.strictObject({
  items: z.array(
    z.strictObject({
      name: z.string(),
      role: z.enum(roles),
      g: decimalNotNegative,
      u_g: decimalUncertainty.optional(),
      group: z.string().optional(),
      coefficient: decimal.optional(),
      sealed_id: z.string().optional(),
    }),
  ),
  groups: z.record(z.string(), decimalUncertainty),
  ore_t: decimal.optional(),
  usual_g_t: decimalNotNegative.optional(),
  usual_u_g_t: decimalUncertainty.optional(),
});
type Input = z.infer<typeof schema>;

function cannotBe({ items }: Input, groups: ReadonlyMap<string, Decimal>): Problem[] {
  const underSeal = new Map<string, Decimal>();
  return items.flatMap((item, i): Problem[] => {
    const problems: Problem[] = [];
    if (item.group !== undefined && !groups.has(item.group))
      problems.push(problem('group-not-given', `items[${i}].group`, { name: item.group.slice(0, 60) }));
    if (item.sealed_id === undefined) return problems;
    const other = underSeal.get(item.sealed_id);
    if (other && compare(other, item.g) !== 0)
      problems.push(problem('seal-unequal', `items[${i}].g`, { seal: item.sealed_id.slice(0, 60) }));
    underSeal.set(item.sealed_id, other ?? item.g);
    return problems;
  });
}

function excessAnswer(unaccounted: Difference, { ore_t: oreT, usual_g_t: gT, usual_u_g_t: u = zero }: Input) {
  if (!oreT || !gT) return {};
  const { expected, excess } = excessOver(unaccounted, oreT, { gT, u });
  return {
    expected_g: num(expected),
    excess_g: num(excess.g),
    excess_u_g: uOfDifference(excess),
    excess_z: orReason(zOf(excess), 'no-uncertainty'),
    excess_level: orReason(levelOf(excess), 'no-uncertainty'),
  };
}

export const balanceTopic = topic(schema, (input) => {
  const groups = new Map(Object.entries(input.groups));
  const problems = cannotBe(input, groups);
  if (problems.length > 0) return bad(...problems);
  const items = input.items.map(
    (item): BalanceItem => ({
      role: item.role,
      g: item.g,
      u: item.u_g ?? zero,
      group: item.group,
      coefficient: item.coefficient,
      sealedId: item.sealed_id,
    }),
  );
  const { totals, unaccounted, randomVariance, groupCoefficients, lost } = balance(items, groups);
  const u = uOfDifference(unaccounted);
  const oreT = input.ore_t;
  const hasOre = oreT !== undefined && oreT.digits > 0n;
  const { excess_level: excessLevel, ...excess } = { excess_level: undefined, ...excessAnswer(unaccounted, input) };
  return good({
    opening_g: num(totals.opening),
    receipts_g: num(totals.receipt),
    found_g: num(totals.found),
    removals_g: num(totals.removal),
    released_g: num(totals.release),
    closing_g: num(totals.closing),
    unaccounted_g: num(unaccounted.g),
    random_variance_g2: num(randomVariance),
    group_coefficients_g: Object.fromEntries([...groupCoefficients].map(([name, c]) => [name, num(c)])),
    u_g: u,
    z: orReason(zOf(unaccounted), 'no-uncertainty'),
    detectable_g: toNumber(detectableFactor) * u,
    lost_g: num(lost.g),
    lost_u_g: uOfDifference(lost),
    per_tonne_g: orReason(perTonneOre(unaccounted.g, oreT), 'no-ore'),
    per_tonne_u_g: orReason(hasOre ? u / num(oreT) : null, 'no-ore'),
    ...excess,
    loss_level: orReason(levelOf(unaccounted), 'no-uncertainty'),
    ...(excessLevel !== undefined && { excess_level: excessLevel }),
  });
});
