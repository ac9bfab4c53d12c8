/**
 * Everything in a book that can be looked for, made once for a book: lots, bars, what the registers hold, papers that entries name, files kept beside
 * them, and the entries themselves. Each carries the text it is found by and whether it tells what is not for everybody. It decides nothing.
 */
import { type RegisterKind, registerKinds } from '../kinds/index.ts';
import type { Role } from '../kinds/person.ts';
import { dayOf } from '../time.ts';
import { barPieces } from './bar-pieces.ts';
import type { Book } from './book.ts';
import { folded } from './fold.ts';
import type { Hidden } from './may-see.ts';
import { latest, nameOf, type Registered } from './registers.ts';
import { withheldOf } from './withheld.ts';

/** What can be found, in the order it is shown: things with a label first, entries last. */
export const foundThings = [
  'lot',
  'bar',
  'vessel',
  'scale',
  'meter',
  'retort',
  'battery',
  'plate',
  'parcel',
  'authority',
  'limit',
  'person',
  'document',
  'evidence',
  'entry',
] as const;
export type FoundThing = (typeof foundThings)[number];

export interface Findable {
  readonly what: FoundThing;
  /** Of a lot, a bar or a registered thing its own id; else that of the entry. */
  readonly id: string;
  /** The entry that tells of it: of a registered thing the one that first named it. */
  readonly entry: string;
  /** The kind of that entry. */
  readonly kind: string;
  /** What it is called; empty for an entry, whose sentence is made when it is shown. */
  readonly label: string;
  /** Days it happened, was made or was stated on, oldest first. */
  readonly days: readonly string[];
  /** What it tells that is not for everybody. */
  readonly hidden: Hidden | null;
  /** Folded: the label, and all it is found by. */
  readonly called: string;
  readonly text: string;
  /** Long marks found by their beginning only: ids, hashes, names of files. */
  readonly marks: readonly string[];
}

/** Words that only the words of the program hold: names of kinds and roles, a day as it is written out. */
export interface FindNames {
  readonly kind: (kind: string) => string;
  readonly role: (role: Role) => string;
  readonly day: (day: string) => string;
}

/** Fields that name a paper, wherever they stand in a body. */
const paperFields = new Set(['document', 'certificate']);
/** Fields whose `number` is that of a paper. */
const numbered = new Set(['certificate', 'authority']);

/** Every text in a body, with what the ids in it are called; names of papers besides. */
class BodyReader {
  readonly texts: string[] = [];
  readonly papers: string[] = [];
  readonly #names: ReadonlyMap<string, string>;
  readonly #ids: ReadonlySet<string>;

  constructor(names: ReadonlyMap<string, string>, ids: ReadonlySet<string>) {
    this.#names = names;
    this.#ids = ids;
  }

  read(value: unknown, key = '', inside = ''): void {
    if (typeof value === 'string') {
      const name = this.#names.get(value);
      if (name !== undefined) this.texts.push(name);
      else if (!this.#ids.has(value.split('/', 1)[0] ?? '')) this.texts.push(value);
      if (paperFields.has(key) || (key === 'number' && numbered.has(inside))) this.papers.push(value);
    } else if (typeof value === 'number') this.texts.push(String(value));
    else if (Array.isArray(value)) for (const item of value) this.read(item, key, inside);
    else if (value !== null && typeof value === 'object')
      for (const [field, item] of Object.entries(value)) this.read(item, field, key === '' ? inside : key);
  }
}

/** Everything of the book, the newest first within each sort of thing, the sorts in the order they are shown. */
export function readFindables(book: Book, say: FindNames): readonly Findable[] {
  const { current, registers } = book;
  const byThing = new Map<FoundThing, Findable[]>(foundThings.map((what) => [what, []]));
  const add = (item: Omit<Findable, 'called' | 'text'>, ...texts: readonly string[]) => {
    const called = folded(item.label);
    byThing.get(item.what)?.push({ ...item, called, text: folded([item.label, ...texts].join('\n')) });
  };
  const names = new Map<string, string>();
  const states = (thing: Registered<RegisterKind>) => thing.states.map(({ body }) => nameOf(body));
  for (const kind of registerKinds)
    for (const thing of registers[kind].values())
      names.set(thing.id, [...new Set(states(thing as Registered<RegisterKind>))].join(' '));
  for (const lot of book.lots.all.values()) names.set(lot.id, lot.label);
  for (const [id, { label }] of barPieces(current)) names.set(id, label);
  const ids = new Set(book.entries.map((entry) => entry.id));
  const hidden = withheldOf([...current.byId.values()].map((reading) => reading.entry));

  for (const lot of book.lots.all.values()) {
    if (current.byId.get(lot.madeBy)?.struck) continue;
    const days = [dayOf(lot.made)];
    const kind = current.byId.get(lot.madeBy)?.kind ?? '';
    add(
      { what: 'lot', id: lot.id, entry: lot.madeBy, kind, label: lot.label, days, hidden: null, marks: [lot.madeBy] },
      lot.seal ?? '',
    );
  }
  for (const [id, { label, melt }] of barPieces(current))
    add({ what: 'bar', id, entry: melt.id, kind: 'melt', label, days: [dayOf(melt.happened)], hidden: null, marks: [] });
  for (const kind of registerKinds)
    for (const thing of registers[kind].values() as Iterable<Registered<RegisterKind>>) {
      const { body } = latest(thing);
      const reader = new BodyReader(names, ids);
      for (const state of thing.states) reader.read(state.body);
      const roles = 'roles' in body ? body.roles.map(say.role) : [];
      const days = thing.states.map(({ from }) => dayOf(from));
      add(
        { what: kind, id: thing.id, entry: thing.id, kind, label: nameOf(body), days, hidden: null, marks: [] },
        ...roles,
        ...reader.texts,
      );
    }

  const name = (id: string | null) => (id === null ? '' : (names.get(id) ?? ''));
  const kinds = new Map<string, string>();
  for (const { entry, reading } of [
    ...[...current.byId.values()].map((reading) => ({ entry: reading.entry, reading })),
    ...current.notUnderstood.map((entry) => ({ entry, reading: null })),
  ]) {
    const reader = new BodyReader(names, ids);
    reader.read(entry.body, '', entry.kind);
    if (reading && reading.body !== entry.body) reader.read(reading.body, '', entry.kind);
    const happened = dayOf(reading?.happened ?? entry.happened);
    const kindName = kinds.get(entry.kind) ?? say.kind(entry.kind);
    kinds.set(entry.kind, kindName);
    const written = [happened, say.day(happened)];
    const own = { id: entry.id, entry: entry.id, kind: entry.kind, days: [happened], hidden: hidden.get(entry.id) ?? null };
    const people = [name(entry.by), ...(entry.witness ?? []).map(name)];
    const { form, transcribed, evidence = [] } = entry;
    const sheets = [form ? [form.number, form.page] : [], transcribed ? [transcribed.book, transcribed.page] : []]
      .map((parts) => parts.filter((part) => part !== undefined).join(', '))
      .filter((sheet) => sheet !== '');
    const shown = evidence.flatMap(({ shows }) => shows ?? []);
    add(
      { ...own, what: 'entry', label: '', marks: [entry.id, entry.hash] },
      kindName,
      ...written,
      ...people,
      ...sheets,
      ...shown,
      ...reader.texts,
    );
    for (const label of new Set([...reader.papers, ...sheets]))
      add({ ...own, what: 'document', label, marks: [] }, kindName, ...written);
    for (const { file, shows = '' } of evidence)
      add({ ...own, what: 'evidence', label: shows, marks: [file] }, kindName, ...written);
  }
  const last = (item: Findable): string => item.days.at(-1) ?? '';
  // of one day the entries too stand newest first, lots and labels as they were written
  for (const what of ['document', 'evidence', 'entry'] as const) byThing.get(what)?.reverse();
  for (const list of byThing.values()) list.sort((a, b) => (last(a) < last(b) ? 1 : last(a) > last(b) ? -1 : 0));
  return [...byThing.values()].flat();
}
