/** `reckon reconcile`: readings that must agree, tested and adjusted. */
import { isZero, zero } from '../decimal.ts';
import { reconcile } from '../reconcile.ts';
import { bad, good, type Problem, problem } from '../result.ts';
import { z } from '../zod.ts';
import { notComputable, orReason } from './answer.ts';
import { decimal, decimalUncertainty, topic } from './input.ts';

const schema = z.strictObject({
  names: z.array(z.string()),
  values: z.array(decimal),
  u: z.array(decimalUncertainty),
  shared: z.array(z.strictObject({ names: z.array(z.string()), relative_u: decimalUncertainty })).optional(),
  constraints: z.array(z.record(z.string(), decimal)),
});
type Input = z.infer<typeof schema>;

function cannotBe({ names, values, u, shared = [], constraints }: Input): Problem[] {
  const problems: Problem[] = [];
  const unknown = (name: string, field: string) => {
    if (!names.includes(name)) problems.push(problem('name-not-given', field, { name: name.slice(0, 60) }));
  };
  names.forEach((name, i) => {
    if (names.indexOf(name) < i) problems.push(problem('name-twice', `names[${i}]`, { name: name.slice(0, 60) }));
  });
  if (names.length === 0) problems.push(problem('no-readings-named', 'names'));
  if (values.length !== names.length) problems.push(problem('how-many', 'values', { wanted: names.length, got: values.length }));
  if (u.length !== names.length) problems.push(problem('how-many', 'u', { wanted: names.length, got: u.length }));
  u.forEach((one, i) => {
    if (isZero(one)) problems.push(problem('u-zero', `u[${i}]`));
  });
  shared.forEach((one, i) => {
    one.names.forEach((name, j) => {
      unknown(name, `shared[${i}].names[${j}]`);
    });
  });
  if (constraints.length === 0) problems.push(problem('no-constraint', 'constraints'));
  constraints.forEach((constraint, i) => {
    for (const name of Object.keys(constraint)) unknown(name, `constraints[${i}].${name}`);
    if (Object.values(constraint).every(isZero)) problems.push(problem('empty-constraint', `constraints[${i}]`));
  });
  return problems;
}

export const reconcileTopic = topic(schema, (input) => {
  const { names, values, u, shared = [], constraints } = input;
  const problems = cannotBe(input);
  if (problems.length > 0) return bad(...problems);
  const got = reconcile({
    values,
    u,
    shared: shared.map((one) => ({
      members: names.flatMap((name, i) => (one.names.includes(name) ? [i] : [])),
      relativeU: one.relative_u,
    })),
    constraints: constraints.map((constraint) =>
      names.map((name) => (Object.hasOwn(constraint, name) ? (constraint[name] ?? zero) : zero)),
    ),
  });
  if (!got) return bad(problem('not-resolvable', 'constraints'));
  const byName = <T>(list: readonly T[]) => Object.fromEntries(names.map((name, i) => [name, list[i]]));
  const failed = notComputable('group-test-failed');
  return good({
    global: got.global,
    freedom: got.freedom,
    critical: got.critical,
    passes: got.passes,
    statistics: byName(got.statistics.map((s) => orReason(s, 'over-nothing'))),
    ...(got.suspect !== undefined && { suspect: names[got.suspect] }),
    adjusted: got.adjusted ? byName(got.adjusted) : failed,
    adjusted_u: got.adjustedU ? byName(got.adjustedU) : failed,
  });
});
