/**
 * A look at a value that says yes only to what a schema plainly accepts as it stands, and makes nothing on the way: no copy, no list of issues. To
 * everything else it says nothing, and the schema itself is asked. It must never say yes to what the schema refuses
 * (`test/core/plainly.test.ts`). A journal of a hundred thousand entries passes here line by line.
 */
import type { z } from './zod.ts';

/** Whether the value is plainly one of the schema's. */
export type Look = (value: unknown) => boolean;

type Def = z.core.$ZodTypeDef & Readonly<Record<string, unknown>>;
type Check = z.core.$ZodCheck;

const never: Look = () => false;
const defOf = (schema: z.core.$ZodType): Def => schema._zod.def as unknown as Def;

/** Looks that were made, by schema. */
const made = new WeakMap<z.core.$ZodType, Look>();

/** The look for a schema; made once. */
export function plainLook(schema: z.core.$ZodType): Look {
  const known = made.get(schema);
  if (known) return known;
  // stands while its own parts are looked into, so that a ring of schemas ends
  made.set(schema, (value) => look(value));
  const look = checkedLook(schema);
  made.set(schema, look);
  return look;
}

/** What the schema is, and then its rules. */
function checkedLook(schema: z.core.$ZodType): Look {
  const shape = shapeLook(defOf(schema));
  // a format of text or number ("a whole number") is a check of its own
  const own = 'check' in schema._zod ? [schema as unknown as Check] : [];
  const rules = [...own, ...((defOf(schema).checks as readonly Check[] | undefined) ?? [])].map(ruleLook);
  if (rules.length === 0) return shape;
  const [only, second] = rules;
  if (only && !second) return (value) => shape(value) && only(value);
  return (value) => shape(value) && rules.every((rule) => rule(value));
}

/** One rule of a schema: a bound, or a rule of our own. What is not known here is put to the rule itself. */
function ruleLook(check: Check): Look {
  const def = check._zod.def as unknown as Readonly<Record<string, unknown>>;
  const { fn, maximum, minimum } = def;
  switch (def.check) {
    case 'max_length':
      return (value) => (value as string | unknown[]).length <= (maximum as number);
    case 'min_length':
      return (value) => (value as string | unknown[]).length >= (minimum as number);
    case 'custom':
      if (typeof fn === 'function') return (value) => fn(value) === true;
      return asked(check);
    default:
      return asked(check);
  }
}

/** A rule asked as the schema asks it: it holds where it raises nothing. */
const asked =
  (check: Check): Look =>
  (value) => {
    const payload: z.core.ParsePayload = { value, issues: [] };
    const answer: unknown = check._zod.check(payload as z.core.ParsePayload<never>);
    return answer === undefined && payload.issues.length === 0 && payload.value === value;
  };

/** What kind of value it is, and its parts. */
function shapeLook(def: Def): Look {
  switch (def.type) {
    case 'string':
      return def.coerce ? never : (value) => typeof value === 'string';
    case 'number':
      return def.coerce ? never : (value) => typeof value === 'number' && Number.isFinite(value);
    case 'enum': {
      const choices = new Set<unknown>(Object.values(def.entries as Readonly<Record<string, unknown>>));
      return (value) => typeof value === 'string' && choices.has(value);
    }
    case 'literal': {
      const choices = new Set(def.values as readonly unknown[]);
      return (value) => choices.has(value);
    }
    case 'unknown':
      return (value) => value !== undefined;
    case 'optional': {
      const inner = plainLook(def.innerType as z.core.$ZodType);
      return (value) => value === undefined || inner(value);
    }
    case 'nullable': {
      const inner = plainLook(def.innerType as z.core.$ZodType);
      return (value) => value === null || inner(value);
    }
    case 'array': {
      const element = plainLook(def.element as z.core.$ZodType);
      return (value) => Array.isArray(value) && value.every(element);
    }
    case 'union':
      return unionLook(def);
    case 'object':
      return objectLook(def);
    case 'record':
      return recordLook(def);
    default:
      return never;
  }
}

/** The value of a discriminator, where a choice has exactly one. */
function choiceValue(choice: z.core.$ZodType, discriminator: string): unknown {
  const shape = defOf(choice).shape as Readonly<Record<string, z.core.$ZodType>> | undefined;
  const at = shape?.[discriminator];
  const values = at && defOf(at).type === 'literal' ? (defOf(at).values as readonly unknown[]) : [];
  return values.length === 1 ? values[0] : undefined;
}

function unionLook(def: Def): Look {
  const choices = def.options as readonly z.core.$ZodType[];
  const { discriminator } = def;
  const told = typeof discriminator === 'string' ? choices.map((choice) => choiceValue(choice, discriminator)) : [];
  if (typeof discriminator === 'string' && new Set(told).size === choices.length && !told.includes(undefined)) {
    const byValue = new Map(choices.map((choice, i) => [told[i], plainLook(choice)]));
    return (value) => isRecord(value) && (byValue.get(value[discriminator]) ?? never)(value);
  }
  // a union of ours takes what any of its choices takes; another kind of union is not told here
  if (def.inclusive === false) return never;
  const looks = choices.map(plainLook);
  return (value) => looks.some((look) => look(value));
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Objects that allow nothing but their own members. */
function objectLook(def: Def): Look {
  const rest = def.catchall as z.core.$ZodType | undefined;
  if (!rest || defOf(rest).type !== 'never') return never;
  const members = Object.entries(def.shape as Readonly<Record<string, z.core.$ZodType>>).map(
    ([name, schema]) => [name, plainLook(schema)] as const,
  );
  return (value) => {
    if (!isRecord(value) || Object.getPrototypeOf(value) !== Object.prototype) return false;
    let found = 0;
    for (const [name, look] of members) {
      const part = Object.hasOwn(value, name) ? value[name] : undefined;
      if (!look(part)) return false;
      if (part !== undefined) found += 1;
    }
    // any other member, or one that is there and says nothing, is for the schema to judge
    let there = 0;
    for (const _ in value) there += 1;
    return there === found;
  };
}

/** Members of any name that hold anything: what one entry carries of another. */
function recordLook(def: Def): Look {
  const key = defOf(def.keyType as z.core.$ZodType);
  const anything = defOf(def.valueType as z.core.$ZodType).type === 'unknown';
  if (key.type !== 'string' || ((key.checks as readonly Check[] | undefined) ?? []).length > 0 || !anything) return never;
  return (value) => isRecord(value) && Object.getPrototypeOf(value) === Object.prototype && !Object.hasOwn(value, '__proto__');
}
