/**
 * Reads an unknown value through a schema and turns what the schema finds wrong into problems of our own: the one place where Zod's issues
 * become codes. A schema's own rule carries its code in `params.code`.
 */
import { plainLook } from './plainly.ts';
import { bad, good, type Problem, problem, type Result, under } from './result.ts';
import type { z } from './zod.ts';

type Issue = z.core.$ZodIssue;

const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((at, key) => under(at, typeof key === 'number' ? key : String(key)), '');

/** Nothing stands in a field; a null that stands for the whole value is of the wrong type. */
const absent = (input: unknown, path: readonly PropertyKey[]): boolean =>
  input === undefined || (input === null && path.length > 0);

function problemsOf(issue: Issue, at: readonly PropertyKey[]): Problem[] {
  const path = [...at, ...issue.path];
  const field = pathText(path);
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => problem('unknown-field', under(field, key), { name: key.slice(0, 60) }));
    case 'custom': {
      const { code = 'not-accepted', ...data } = (issue.params ?? {}) as { code?: string } & Record<string, string | number>;
      return [problem(code, field, data)];
    }
    case 'invalid_type':
      return [absent(issue.input, path) ? problem('missing', field) : problem('wrong-type', field, { wanted: issue.expected })];
    case 'too_small':
      return [
        problem(issue.origin === 'string' || issue.origin === 'array' ? 'too-short' : 'too-small', field, {
          least: Number(issue.minimum),
        }),
      ];
    case 'too_big':
      return [
        problem(issue.origin === 'string' || issue.origin === 'array' ? 'too-long' : 'too-large', field, {
          most: Number(issue.maximum),
        }),
      ];
    case 'invalid_value':
      return [
        absent(issue.input, path)
          ? problem('missing', field)
          : problem('not-one-of', field, { choices: issue.values.map(String).join(', ') }),
      ];
    case 'invalid_union': {
      // a choice that was not made is missing, not badly written
      const made = issue.discriminator === undefined || (issue.input as Record<string, unknown> | null)?.[issue.discriminator];
      if (issue.errors.length === 0 && made == null) return [problem('missing', field)];
      const deepest = issue.errors.map((errors) => errors.flatMap((inner) => problemsOf(inner as Issue, path)));
      // the branch that came furthest says best what is wrong
      const best = deepest.toSorted((a, b) => a.length - b.length)[0];
      return best && best.length > 0 ? best : [problem('not-accepted', field)];
    }
    default:
      return [problem('not-accepted', field)];
  }
}

/** The value as the schema types it, or every problem with its field. */
export function read<T>(schema: z.ZodType<T>, value: unknown): Result<T> {
  const parsed = schema.safeParse(value, { reportInput: true });
  return parsed.success ? good(parsed.data) : bad(...parsed.error.issues.flatMap((issue) => problemsOf(issue, [])));
}

/**
 * Every problem of a value that is only looked at: none where it passes. What is plainly as the schema wants it is not read at all, which is most of
 * the work for a journal; everything else is read as above, so both always give the same answer.
 */
export function problemsIn(schema: z.ZodType, value: unknown): readonly Problem[] {
  if (plainLook(schema)(value)) return [];
  const got = read(schema, value);
  return got.ok ? [] : got.problems;
}

/** A rule of our own inside a schema: fails with `code` and its data where `holds` is false. */
export const rule = <T>(holds: (value: T) => boolean, code: string, data: Record<string, string | number> = {}) =>
  [holds, { params: { code, ...data } }] as const;
