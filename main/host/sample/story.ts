/** Writes the entries of an invented site one after another: makes ids, moments and weighings. Everything here is made up; no site is meant. */
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

/** Local offset of the invented site: it keeps one all year. */
const offset = '+10:00';

export class Story {
  readonly told: Told[] = [];
  readonly dice;
  by: string | null = null;
  #counts = new Map<string, number>();

  constructor(seed: number) {
    this.dice = diceFrom(seed);
  }

  /** Tells one entry; answers its id. Throws where the story contradicts the record's own shapes: that is a fault of the story. */
  tell<K extends Kind>(kind: K, day: string, clock: string, body: Body<K>, more: Partial<Draft> = {}): string {
    const n = (this.#counts.get(kind) ?? 0) + 1;
    this.#counts.set(kind, n);
    const id = `${kind}-${String(n).padStart(4, '0')}`;
    const happened = `${day}T${clock}${offset}`;
    const draft = { id, happened, by: kind === 'person' && this.by === null ? id : this.by, kind, body, ...more };
    const read = draftFrom(JSON.parse(JSON.stringify(draft)));
    if (!read.ok) throw new Error(`${id}: ${read.problems.map((p) => `${p.field}: ${problemText(p)}`).join('; ')}`);
    this.told.push({ draft: read.value, written: happened });
    return id;
  }

  /** A net mass in grams as read on a scale with a dish on it. */
  weigh(scale: string, netG: number, tareG: number, places = 2): Weight {
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
