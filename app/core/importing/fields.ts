/**
 * What a column can be: every field of an entry of a kind by its path, read off the kind's own schema, so that a new kind can be imported as soon as it
 * has one. A number in a list stands as `[]`: "body.lots[].weight.gross".
 */
import { draft } from '../entry.ts';
import { type Kind, kinds, type RegisterKind, registerKinds } from '../kinds/index.ts';
import { day, decimalText, id, mass, moment, partId, partKey, someMass } from '../shapes.ts';
import type { z } from '../zod.ts';

/** How a cell of the column is read. */
export type CellKind = 'text' | 'mass' | 'volume' | 'number' | 'figure' | 'day' | 'moment' | 'choice' | 'name' | 'key';

/** What a name in a cell may stand for; an entry is named by its id alone. */
export type NamedThing = RegisterKind | 'lot' | 'bar' | 'charge' | 'entry';

export interface ImportField {
  readonly path: string;
  readonly cell: CellKind;
  /** Answers it takes, where they are listed. */
  readonly choices: readonly string[];
  /** What a name stands for. */
  readonly names: NamedThing | null;
}

export interface ImportFields {
  readonly leaves: ReadonlyMap<string, ImportField>;
  /** Paths of groups and lists. */
  readonly groups: ReadonlySet<string>;
}

/** Kinds that no table can add: a correction holds a body of another kind, a closing rests on files of its own. */
const notFromTables: ReadonlySet<Kind> = new Set(['correction', 'closing']);
export const canBeImported = (kind: Kind): boolean => !notFromTables.has(kind);
export const importableKinds: readonly Kind[] = (Object.keys(kinds) as Kind[]).filter(canBeImported);

const people = ['by', 'person', 'witness', 'present', 'people', 'guides', 'who'];
const vessels = ['vessel', 'into', 'drum'];

/** What a field of ids names, by the name of the field. */
function namedBy(path: string, kind: Kind): NamedThing {
  const key = (path.replaceAll('[]', '').split('.').at(-1) ?? '') as string;
  const register = registerKinds.find((one) => one === key);
  if (register) return register;
  if (key === 'of') return registerKinds.find((one) => one === kind) ?? 'entry';
  if (people.includes(key)) return 'person';
  if (vessels.includes(key)) return 'vessel';
  if (key === 'lot' || key === 'lots') return 'lot';
  if (key === 'bar' || key === 'charge') return key;
  return 'entry';
}

type Schema = z.core.$ZodType;

interface Found {
  readonly leaves: Map<string, ImportField>;
  readonly groups: Set<string>;
}

const cellOf = (schema: Schema, path: string): CellKind => {
  const is = (...ones: Schema[]) => ones.includes(schema);
  if (is(mass, someMass)) return 'mass';
  if (is(day)) return 'day';
  if (is(moment)) return 'moment';
  if (is(id, partId)) return 'name';
  if (is(partKey)) return 'key';
  if (is(decimalText)) return 'figure';
  return path.endsWith('.volume') ? 'volume' : 'text';
};

function walk(schema: Schema, path: string, kind: Kind, found: Found): void {
  const def = (schema as unknown as { _zod: { def: z.core.$ZodTypeDef } })._zod.def as unknown as Record<string, unknown> & {
    type: string;
  };
  const put = (cell: CellKind, choices: readonly string[] = []): void => {
    const before = found.leaves.get(path);
    found.leaves.set(path, {
      path,
      // a day or the words "none stated": the words are a choice beside it
      cell: before && before.cell !== 'choice' ? before.cell : cell,
      choices: [...new Set([...(before?.choices ?? []), ...choices])],
      names: cell === 'name' ? namedBy(path, kind) : (before?.names ?? null),
    });
  };
  switch (def.type) {
    case 'optional':
    case 'nullable':
      walk(def.innerType as Schema, path, kind, found);
      return;
    case 'object':
      found.groups.add(path);
      for (const [key, member] of Object.entries(def.shape as Record<string, Schema>))
        walk(member, path === '' ? key : `${path}.${key}`, kind, found);
      return;
    case 'array':
      found.groups.add(path);
      walk(def.element as Schema, `${path}[]`, kind, found);
      return;
    case 'union':
      for (const option of def.options as Schema[]) walk(option, path, kind, found);
      return;
    case 'enum':
      put('choice', Object.values(def.entries as Record<string, string>).map(String));
      return;
    case 'literal':
      put('choice', (def.values as unknown[]).map(String));
      return;
    case 'number':
      put('number');
      return;
    case 'string':
      put(cellOf(schema, path));
      return;
  }
}

const known = new Map<Kind, ImportFields>();

/** Every field of a kind that a column can hold, the envelope's first. */
export function importFields(kind: Kind): ImportFields {
  const before = known.get(kind);
  if (before) return before;
  const found: Found = { leaves: new Map(), groups: new Set() };
  const { kind: _k, body: _b, imported: _i, ...envelope } = draft.shape;
  for (const [key, member] of Object.entries(envelope)) walk(member, key, kind, found);
  walk(kinds[kind], 'body', kind, found);
  found.groups.delete('');
  known.set(kind, found);
  return found;
}

/** The path with every number in brackets taken out: how a field is looked up. */
export const plainPath = (path: string): string => path.replace(/\[\d+\]/g, '[]');

/** Whether the group at this path is a weight with the way it was come by. */
export const isWeight = (fields: ImportFields, path: string): boolean =>
  fields.leaves.has(`${path}.how`) && fields.leaves.has(`${path}.gross`) && fields.leaves.has(`${path}.mass`);
