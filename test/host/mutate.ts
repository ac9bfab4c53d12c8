/**
 * Hostile input for tests: valid samples with bytes turned, cut, doubled, moved and replaced by what parsers stumble over, and JSON values of any
 * shape. Every case follows from the seed and its number, and a failure names both; `DAYBOOK_SEED` sets another seed. Nothing here knows a parser.
 */
import { createHash } from 'node:crypto';
import { existsSync, lstatSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';

/** How many cases every parser is given, by bytes and by shapes together. */
export const casesEach = 100_000;
/** How many of them are shapes that fast-check makes. */
export const shapesEach = 20_000;
/** No single case may take longer, in milliseconds. */
export const mostMs = 1000;

export const seed = Number(process.env.DAYBOOK_SEED ?? 20_260_314);

/** Whole numbers below `below`, always the same ones for a seed (mulberry32, T. Ettinger, public domain; from memory). */
export function dice(start: number): (below: number) => number {
  let state = start >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296) * below);
  };
}

/** What is put into a sample: ends of ranges, marks of formats, characters that are not what they look like. */
const awkward = [
  ...[
    '0',
    '-0',
    '-1',
    '1e308',
    '1e999',
    '-1e999',
    '5e-324',
    '9007199254740993',
    '99999999999999999999999',
    '0.1',
    'NaN',
    'Infinity',
  ],
  ...['null', 'true', '[]', '{}', '""', '[[[[[[[[', '{"a":{"a":{"a":', '"__proto__":{},', '"constructor":1,', '"hash":"",'],
  ...['\\', '"', "'", ',', ':', ';', '%', '%s', '../', '..\\', '/etc/', 'C:\\', '\u0000', '\n', '\r\n', '\t', '\u001b[2J'],
  ...[
    'oz',
    'ton',
    'ozt',
    ' g',
    'e5',
    '−',
    '＝',
    '٣',
    '½',
    'µ',
    '\u202e',
    '\u200b',
    '\ufeff',
    '\u2028',
    '😀',
    '\\ud800',
    '\\u0000',
  ],
  ...[
    '=1+1',
    '@',
    '<b>',
    '<script>',
    '{text:',
    '%PDF-',
    '\ud800',
    '9'.repeat(400),
    ' '.repeat(400),
    'a'.repeat(5000),
    '('.repeat(300),
  ],
].map((text) => Buffer.from(text, 'utf8'));

const numeral = /-?\d+(?:\.\d+)?(?:[eE][-+]?\d+)?/g;

/** The sample with one place changed. */
function once(bytes: Buffer, roll: (below: number) => number): Buffer {
  const at = roll(bytes.length + 1);
  const end = Math.min(bytes.length, at + 1 + roll(12));
  const [before, behind] = [bytes.subarray(0, at), bytes.subarray(at)];
  switch (roll(9)) {
    case 0: {
      const turned = Buffer.from(bytes);
      if (turned.length > 0) turned[at % turned.length]! ^= 1 << roll(8);
      return turned;
    }
    case 1: {
      const set = Buffer.from(bytes);
      if (set.length > 0) set[at % set.length] = roll(256);
      return set;
    }
    case 2:
      return Buffer.concat([before, bytes.subarray(end)]);
    case 3:
      return Buffer.concat([before, bytes.subarray(at, end), behind]);
    case 4:
      return Buffer.from(before);
    case 5: {
      const from = roll(bytes.length + 1);
      return Buffer.concat([before, bytes.subarray(from, from + 1 + roll(40)), behind]);
    }
    case 6: {
      // another number where one stood: the slip that a shape does not show
      const text = bytes.toString('latin1');
      const found = [...text.matchAll(numeral)];
      const one = found[roll(found.length || 1)];
      if (!one) return Buffer.concat([before, awkward[roll(12)]!, behind]);
      return Buffer.concat([bytes.subarray(0, one.index), awkward[roll(12)]!, bytes.subarray(one.index + one[0].length)]);
    }
    case 7:
      return Buffer.concat([before, awkward[roll(awkward.length)]!, bytes.subarray(end)]);
    default:
      return Buffer.concat([before, awkward[roll(awkward.length)]!, behind]);
  }
}

/** The sample with one to four places changed. */
export function mutated(sample: Buffer, roll: (below: number) => number): Buffer {
  let bytes = sample;
  for (let left = 1 + roll(4); left > 0; left--) bytes = once(bytes, roll);
  return bytes;
}

/** What went wrong, with all that is needed to see it again. */
function told(name: string, what: string, input: unknown, error: unknown): Error {
  const shown = Buffer.isBuffer(input) ? JSON.stringify(input.toString('latin1')) : JSON.stringify(input);
  return new Error(`${name}: ${what} with seed ${seed} (set DAYBOOK_SEED): ${String(shown).slice(0, 2000)}`, { cause: error });
}

/** Runs `parse` on one input: it must come back, in time, with a value that holds no number but finite ones. */
export function one(name: string, what: string, input: unknown, parse: () => unknown): void {
  const start = performance.now();
  let answer: unknown;
  try {
    answer = parse();
  } catch (error) {
    throw told(name, `${what} was not survived (${error instanceof Error ? error.message : error})`, input, error);
  }
  if (performance.now() - start > mostMs) throw told(name, `${what} took longer than ${mostMs} ms`, input, null);
  if (!allFinite(answer)) throw told(name, `${what} gave a number that is none`, input, null);
}

/** As `one`, for what answers later. */
export async function oneLater(name: string, what: string, input: unknown, parse: () => Promise<unknown>): Promise<void> {
  const start = performance.now();
  try {
    await parse();
  } catch (error) {
    throw told(name, `${what} was not survived (${error instanceof Error ? error.message : error})`, input, error);
  }
  if (performance.now() - start > mostMs) throw told(name, `${what} took longer than ${mostMs} ms`, input, null);
}

/** True where no number inside is NaN or infinite. */
export function allFinite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (value === null || typeof value !== 'object' || ArrayBuffer.isView(value)) return true;
  for (const key in value) if (!allFinite((value as Record<string, unknown>)[key])) return false;
  return true;
}

/** Every case by bytes: `samples` in turn, changed. Answers how many there were. */
export function byBytes(
  name: string,
  samples: readonly (string | Uint8Array)[],
  parse: (bytes: Buffer) => unknown,
  count = casesEach - shapesEach,
): number {
  const roll = dice(seed);
  const made = samples.map((sample) => Buffer.from(sample as string));
  for (let i = 0; i < count; i++) {
    const bytes = mutated(made[i % made.length]!, roll);
    one(name, `case ${i} of its bytes`, bytes, () => parse(bytes));
  }
  return count;
}

/** Texts of any characters, hostile ones often. */
export const anyText: fc.Arbitrary<string> = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 24 }),
  fc.string({ unit: 'grapheme', maxLength: 12 }),
  fc.constantFrom(...awkward.map((bytes) => bytes.toString('utf8'))),
);

/** Numbers, their ends and what stands for none. */
export const anyNumber: fc.Arbitrary<unknown> = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.integer(),
  fc.constantFrom(0, -0, 5e-324, 1.7976931348623157e308, -1.7976931348623157e308, 9_007_199_254_740_991),
);

const leaf = fc.oneof(anyText, anyNumber, fc.constantFrom(null, true, false, [], {}));
/** A value of JSON of any small shape. */
export const anyJson: fc.Arbitrary<unknown> = fc.oneof(
  leaf,
  fc.array(leaf, { maxLength: 4 }),
  fc.dictionary(fc.oneof(anyText, fc.constantFrom('__proto__', 'constructor', 'toString', 'length')), leaf, { maxKeys: 4 }),
);

/** Every place in a JSON value, as the keys that lead to it. */
function placesIn(value: unknown, at: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (value === null || typeof value !== 'object') return [at];
  const inner = Array.isArray(value) ? value.map((v, i) => [i, v] as const) : Object.entries(value);
  return [at, ...inner.flatMap(([key, v]) => placesIn(v, [...at, key]))];
}

/** A copy in which another value stands at the place. */
function put(value: unknown, place: readonly (string | number)[], other: unknown): unknown {
  const [key, ...rest] = place;
  if (key === undefined) return other;
  if (Array.isArray(value)) return value.map((v, i) => (i === key ? put(v, rest, other) : v));
  return Object.fromEntries(
    Object.entries(value as Record<string, unknown>).map(([k, v]) => [k, k === key ? put(v, rest, other) : v]),
  );
}

/** The samples with any value at any one place. */
export function shapesOf(samples: readonly unknown[]): fc.Arbitrary<unknown> {
  const places = samples.flatMap((sample) => placesIn(sample).map((place) => ({ sample, place })));
  return fc.tuple(fc.nat({ max: places.length - 1 }), anyJson).map(([i, other]) => {
    const { sample, place } = places[i]!;
    return put(sample, place, other);
  });
}

/** Every case by shapes: values that fast-check makes. */
export function byShapes<T>(name: string, values: fc.Arbitrary<T>, parse: (value: T) => unknown, count = shapesEach): number {
  // what failed is told as it is: making it smaller would hide which case it was
  const property = fc.property(values, (value) => one(name, 'a shape', value, () => parse(value)));
  fc.assert(property, { seed, numRuns: count, endOnFailure: true });
  return count;
}

/** What lies in a folder, all of it, in one line: name, kind and content of everything below it. */
export function printOf(folder: string): string {
  const hash = createHash('sha256');
  const walk = (dir: string, at: string): void => {
    for (const name of readdirSync(dir).toSorted()) {
      const path = join(dir, name);
      const about = lstatSync(path);
      hash.update(`${at}/${name} ${about.isDirectory() ? 'folder' : about.isFile() ? 'file' : 'other'} ${about.mode}\n`);
      if (about.isDirectory()) walk(path, `${at}/${name}`);
      else if (about.isFile()) hash.update(readFileSync(path)).update('\n');
    }
  };
  if (existsSync(folder)) walk(folder, '');
  return hash.digest('hex');
}
