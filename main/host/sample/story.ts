/**
 * Writes the entries of an invented site one after another: makes ids, moments and weighings. Everything here is made up; no site is meant.
 *
 * What the sample has to tell, each found by the account without being told of it (test/terminal/sample.test.ts):
 * - a sponge fired too short, then fired again (`charge-0002`): heavy at first, as usual after the second fire;
 * - a leaking lute (`charge-0003`): short of mercury with a sponge as usual;
 * - mercury weighed wet (`charge-0004`): more out than in;
 * - a wet charge (`charge-0007`): mercury and water, and nobody can tell which;
 * - flask 2, opened and found lighter than its invoice: the supplier's figure, no loss;
 * - a count of the bottle with two figures swapped, found and put right after its period was closed: an adjustment that the next period takes over;
 * - a slow loss through the well's drain over the last six counted periods, which no one of them shows and the row of them does;
 * - mercury found under the floor, on its own line.
 */
import type { Draft } from '../../../app/core/entry.ts';
import { type Body, draftFrom, type Kind } from '../../../app/core/kinds/index.ts';
import type { Weight } from '../../../app/core/shapes.ts';
import { problemText } from '../../../app/words/problems.ts';
import { diceFrom } from './dice.ts';

/** An entry to be written and when it was written down. */
export interface Told {
  readonly draft: Draft;
  readonly written: string;
}

/** A weight read on a scale. */
export type ScaleWeight = Extract<Weight, { how: 'scale' }>;

export class Story {
  readonly told: Told[] = [];
  readonly dice;
  /** The scatter of scales and of estimates: dice of their own, so that another weighing changes nothing that happened. */
  readonly scatter;
  /** Local offset of the invented site: it keeps one all year. */
  readonly offset = '+10:00';
  by: string | null = null;
  #counts = new Map<string, number>();

  constructor(seed: number) {
    this.dice = diceFrom(seed);
    this.scatter = diceFrom(seed + 0x9e3779b9);
  }

  /** Tells one entry; answers its id. Throws where the story contradicts the record's own shapes: that is a fault of the story. */
  tell<K extends Kind>(kind: K, day: string, clock: string, body: Body<K>, more: Partial<Draft> = {}): string {
    const n = (this.#counts.get(kind) ?? 0) + 1;
    this.#counts.set(kind, n);
    const id = `${kind}-${String(n).padStart(4, '0')}`;
    const happened = `${day}T${clock}${this.offset}`;
    const draft = { id, happened, by: kind === 'person' && this.by === null ? id : this.by, kind, body, ...more };
    const read = draftFrom(JSON.parse(JSON.stringify(draft)));
    if (!read.ok) throw new Error(`${id}: ${read.problems.map((p) => `${p.field}: ${problemText(p)}`).join('; ')}`);
    this.told.push({ draft: read.value, written: happened });
    return id;
  }

  /** Everything told so far, in the order it was written down. */
  inOrder(): readonly Told[] {
    return [...this.told].sort((a, b) => (a.written < b.written ? -1 : a.written > b.written ? 1 : 0));
  }

  /** The body of an entry that was told. */
  bodyOf<K extends Kind>(kind: K, id: string): Body<K> {
    const found = this.told.find(({ draft }) => draft.id === id && draft.kind === kind);
    if (!found) throw new Error(`${id} was not told`);
    return found.draft.body as Body<K>;
  }

  /** A net mass in grams as read on a scale with a dish on it. */
  weigh(scale: string, netG: number, tareG: number, places = 2): ScaleWeight {
    const tare = tareG.toFixed(places);
    return {
      how: 'scale',
      scale,
      gross: `${(Number(tare) + Number(netG.toFixed(places))).toFixed(places)} g`,
      tare: `${tare} g`,
    };
  }
}

/** The day so many days after another. */
export function later(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

/** A reading with the tens and the units of its grams swapped: how a display is copied wrong. Throws where the two are the same figure. */
export function swappedFigures(weight: ScaleWeight): ScaleWeight {
  const gross = weight.gross.replace(/(\d)(\d)\./, '$2$1.');
  if (gross === weight.gross) throw new Error(`${weight.gross}: swapping changes nothing`);
  return { ...weight, gross };
}
