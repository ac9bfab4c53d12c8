/** Makes the entries of a book for tests: one desk, ids by name, moments a minute apart unless given. Hashes are fillers: core never reads them. */
import type { Entry } from '../../app/core/entry.ts';
import type { Body, Kind } from '../../app/core/kinds/index.ts';

export interface Extra {
  readonly happened?: string;
  readonly by?: string | null;
  readonly written?: string;
  readonly desk?: string;
}

export class BookMaker {
  readonly entries: Entry[] = [];

  /** Adds an entry and answers its id, which is `${name}` padded to what an id needs. */
  add<K extends Kind>(name: string, kind: K, body: Body<K>, extra: Extra = {}): string {
    const n = this.entries.length + 1;
    const id = idOf(name);
    const clock = `2026-03-${String(1 + Math.floor(n / 60)).padStart(2, '0')}T08:${String(n % 60).padStart(2, '0')}+13:00`;
    this.entries.push({
      format: 1,
      desk: extra.desk ?? 'desk-one',
      n,
      prev: '0'.repeat(64),
      id,
      written: extra.written ?? extra.happened ?? clock,
      happened: extra.happened ?? clock,
      by: extra.by === undefined ? null : extra.by,
      kind,
      body: body as Record<string, unknown>,
      hash: 'f'.repeat(64),
    });
    return id;
  }

  /** A scale in grams; its certificate is good for every load. */
  scale(name: string, d = '0.01 g', certificateU: string | null = '0.03 g'): string {
    return this.add(name, 'scale', {
      label: name,
      maximum: '60 kg',
      d,
      ...(certificateU === null
        ? {}
        : { certificate: { U: certificateU, k: 2, at: '2000 g', on: '2026-01-10', due: '2027-01-10' } }),
    });
  }

  /** A site that clears old mercury, with a keeper, a scale, a retort and a bottle. */
  static site(): BookMaker & { keeper: string; bench: string; pot: string; bottle: string } {
    const book = new BookMaker();
    const keeper = book.add('keeper', 'person', { name: 'Keeper', roles: ['keeper'] });
    book.add('standing', 'standing', { held: [{ what: 'in-place' }], done: [{ what: 'clearing' }] });
    const bench = book.scale('bench scale');
    const pot = book.add('pot retort', 'retort', { label: 'Pot retort', capacity: '2 kg' });
    const bottle = book.add('bottle', 'vessel', { label: 'Working bottle', use: 'bottle', mercury: 'mixed' });
    return Object.assign(book, { keeper, bench, pot, bottle });
  }

  /** Lots of one clean-up from masses in grams, labelled A, B, C …; answers their ids. */
  lots(name: string, grams: readonly string[], scale?: string): string[] {
    const id = this.add(name, 'clean-up', {
      type: 'routine',
      lots: grams.map((g, i) => ({
        key: String(i + 1),
        label: `${name} ${String.fromCharCode(65 + i)}`,
        weight: scaled(g, scale),
        state: 'squeezed' as const,
        source: 'outside-plate' as const,
      })),
    });
    return grams.map((_, i) => `${id}/${i + 1}`);
  }
}

export const idOf = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .padEnd(6, '0');

/** A weight read on a scale, in grams. */
export const scaled = (g: string, scale?: string) => ({
  how: 'scale' as const,
  gross: `${g} g`,
  ...(scale === undefined ? {} : { scale }),
});

/** Somebody else's figure with its standard uncertainty, in grams. */
export const stated = (g: string, u?: string) => ({
  how: 'stated' as const,
  mass: `${g} g`,
  ...(u === undefined ? {} : { u: `${u} g` }),
});
