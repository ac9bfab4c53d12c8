/** The registers: people, scales, vessels and retorts, each with all the states it has been in. What held on a day is asked with that day. */
import { type Body, type RegisterKind, registerKinds } from '../kinds/index.ts';
import { compareMoments } from '../time.ts';
import type { Current } from './current.ts';

/** One state of a registered thing: what was stated, from when on, by which entry. */
export interface State<K extends RegisterKind> {
  readonly from: string;
  readonly entry: string;
  readonly body: Body<K>;
}

/** A registered thing. Its id is that of the entry that first named it. */
export interface Registered<K extends RegisterKind> {
  readonly id: string;
  /** Oldest first; never empty. */
  readonly states: readonly State<K>[];
}

export type Register<K extends RegisterKind> = ReadonlyMap<string, Registered<K>>;

/** All registers of a book, by kind. */
export type Registers = { readonly [K in RegisterKind]: Register<K> };

function register<K extends RegisterKind>(current: Current, kind: K): Register<K> {
  const things = new Map<string, State<K>[]>();
  for (const reading of current.of(kind)) {
    const body = reading.body as Body<K> & { of?: string | undefined };
    const id = body.of !== undefined && current.byId.get(body.of)?.kind === kind ? body.of : reading.id;
    const state: State<K> = { from: reading.happened, entry: reading.id, body };
    const states = things.get(id);
    if (states) states.push(state);
    else things.set(id, [state]);
  }
  return new Map([...things].map(([id, states]) => [id, { id, states: states.sort((a, b) => compareMoments(a.from, b.from)) }]));
}

export const readRegisters = (current: Current): Registers =>
  Object.fromEntries(registerKinds.map((kind) => [kind, register(current, kind)])) as unknown as Registers;

/** How the thing stood at that moment; before its first statement, as first stated. */
export function stateAt<K extends RegisterKind>(thing: Registered<K>, moment: string): State<K> {
  const first = thing.states[0];
  if (!first) throw new Error('a registered thing has at least one state');
  // the states are in order: the last that is not later is found by halving, for a retort is restated at every brushing out
  let low = 0;
  let high = thing.states.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const state = thing.states[middle];
    if (state && compareMoments(state.from, moment) <= 0) low = middle + 1;
    else high = middle;
  }
  return thing.states[low - 1] ?? first;
}

/** How the thing stands by its last statement. */
export function latest<K extends RegisterKind>(thing: Registered<K>): State<K> {
  const last = thing.states.at(-1);
  if (!last) throw new Error('a registered thing has at least one state');
  return last;
}

/** What a person, scale, vessel or retort is called. */
export const nameOf = (body: { label?: string; name?: string }): string => body.label ?? body.name ?? '';
