/**
 * The readings of a run that must agree with one another, and the sums that say how: label against weighing at charging, a part and the rest against
 * the whole, a sponge against its weighing at the melt, charge against what came out. Where something may truly have changed between two weighings,
 * that change is a term of its own with its own allowance, so that no sum is forced to close. Method: methods.md 2.1, 2.2.
 */
import { type Decimal, toNumber, zero } from '../../decimal.ts';
import { type Measured, measured } from '../../measured.ts';
import type { Weight } from '../../shapes.ts';
import type { Book } from '../book.ts';
import type { Charge } from '../charges.ts';
import type { Run } from '../runs.ts';
import { type Weighed, weighedFrom } from '../weights.ts';
import { fieldOfLot, heatOf, splitOf } from './where-read.ts';

/** What a term is of. `changed` and `stayed` are no readings: what may have changed between two weighings, what may have stayed in the retort. */
export const termKinds = [
  'label',
  'charged',
  'part',
  'rest',
  'other',
  'sponge',
  'melt',
  'mercury',
  'water',
  'changed',
  'stayed',
] as const;
export type TermKind = (typeof termKinds)[number];

export interface Term {
  readonly kind: TermKind;
  /** The lot, or the charge or firing, it is of: as people call lots, else an id. */
  readonly of: string;
  /** The entry it stands in and the field there; null for what is no reading. */
  readonly entry: string | null;
  readonly field: string;
  /** As it was written down; null for what is no reading. */
  readonly as: Weight | null;
  readonly grams: Decimal;
  readonly net: Measured;
}

/** Coefficients by term, which must come to nothing. */
export interface Sum {
  readonly kind: 'lot' | 'split' | 'sponge' | 'run';
  readonly of: string;
  readonly terms: ReadonlyMap<Term, 1 | -1>;
}

/** Why a sum that could have been asked was not. */
export interface LeftOut {
  readonly kind: Sum['kind'];
  readonly of: string;
  readonly why: 'u-not-known' | 'was-wet' | 'water-not-weighed';
}

export interface Together {
  readonly sums: readonly Sum[];
  readonly leftOut: readonly LeftOut[];
}

/** What a thing may change by between two weighings and need no look, as a share, at two standard uncertainties (as for the drift of a lot). */
export const changeShare = 0.005;

type Signed = Map<Term, 1 | -1>;

/** The readings and sums of a run. */
export function readingsOf(book: Book, run: Run): Together {
  const sums: Sum[] = [];
  const leftOut: LeftOut[] = [];
  const known = new Map<string, Term>();
  const unsure = new Set<Term>();
  const reading = (
    kind: TermKind,
    of: string,
    entry: string,
    field: string,
    weighed: Pick<Weighed, 'as' | 'grams' | 'net' | 'uKnown'>,
  ): Term => {
    const key = `${entry} ${field}`;
    const before = known.get(key);
    if (before) return before;
    const term: Term = { kind, of, entry, field, as: weighed.as, grams: weighed.grams, net: weighed.net };
    if (!weighed.uKnown || term.net.parts.size === 0) unsure.add(term);
    known.set(key, term);
    return term;
  };
  const weigh = (kind: TermKind, of: string, entry: string, field: string, weight: Weight): Term => {
    const at = book.current.byId.get(entry)?.happened ?? '';
    return reading(kind, of, entry, field, weighedFrom(weight, { entry, path: field, at }, book.registers));
  };
  const allowed = (kind: 'changed' | 'stayed', of: string, ug: number): Term => ({
    kind,
    of,
    entry: null,
    field: '',
    as: null,
    grams: zero,
    net: measured(0, [[`allowed:${kind}:${of}:${sums.length}`, ug]]),
  });
  const ask = (kind: Sum['kind'], of: string, terms: Signed) => {
    if ([...terms.keys()].some((term) => unsure.has(term))) leftOut.push({ kind, of, why: 'u-not-known' });
    else sums.push({ kind, of, terms });
  };
  /** Between two weighings of one thing: a real change stands beside them. */
  const mayHaveChanged = (of: string, terms: Signed, ug: number): Signed =>
    new Map([...terms, [allowed('changed', of, (changeShare / 2) * Math.abs(ug)), -1]]);

  /** A lot's label as readings: its own, or what its parent's leaves after the part; null where nothing was read. */
  const labelOf = (id: string): Signed | null => {
    const lot = book.lots.all.get(id);
    if (!lot) return null;
    if (lot.parent === null) {
      const field = fieldOfLot(book, lot.madeBy, id);
      return field ? new Map([[weigh('label', lot.label, lot.madeBy, field.path, field.weight), 1]]) : null;
    }
    const split = splitOf(book, lot.madeBy, id);
    if (!split) return null;
    const part = weigh('part', split.label, lot.madeBy, `rows[${split.index}].weight`, split.weight);
    if (split.isPart) return new Map([[part, 1]]);
    if (split.rest) return new Map([[weigh('rest', split.label, lot.madeBy, `rows[${split.index}].rest`, split.rest), 1]]);
    const parent = labelOf(lot.parent);
    return parent && new Map([...parent, [part, -1]]);
  };
  /** Where a lot was split and both halves were weighed, whole and halves must agree. */
  const splitSum = (charge: string, index: number, lot: string) => {
    const row = book.current.byId.get(charge)?.body as { readonly rows: Charge['reading']['body']['rows'] } | undefined;
    const own = row?.rows[index];
    const parent = labelOf(lot);
    const name = book.lots.all.get(lot)?.label ?? lot;
    if (own?.take !== 'part' || own.rest === undefined || !parent) return;
    if (sums.some((sum) => sum.kind === 'split' && sum.of === name)) return;
    const terms: Signed = new Map(parent);
    terms.set(weigh('part', name, charge, `rows[${index}].weight`, own.weight), -1);
    terms.set(weigh('rest', name, charge, `rows[${index}].rest`, own.rest), -1);
    ask('split', name, mayHaveChanged(name, terms, book.lots.all.get(lot)?.net.ug ?? 0));
  };

  const charged: Term[] = [];
  for (const charge of run.charges) {
    for (const [i, row] of charge.reading.body.rows.entries()) {
      if (row.take === 'not-found') continue;
      const lot = row.take === 'unwritten' ? undefined : book.lots.all.get(row.lot);
      const name = row.take === 'unwritten' ? row.label : (lot?.label ?? row.lot);
      const term = weigh(row.take === 'part' ? 'part' : 'charged', name, charge.id, `rows[${i}].weight`, row.weight);
      charged.push(term);
      if (!lot || row.take === 'unwritten') continue;
      if (row.take === 'part') splitSum(charge.id, i, row.lot);
      if (row.take !== 'whole') continue;
      if (lot.parent !== null) {
        const at = splitOf(book, lot.madeBy, row.lot);
        if (at) splitSum(lot.madeBy, at.index, lot.parent);
      }
      if (lot.state === 'scraped-wet' || lot.state === 'drained') leftOut.push({ kind: 'lot', of: name, why: 'was-wet' });
      else {
        const label = labelOf(row.lot);
        if (label) ask('lot', name, mayHaveChanged(name, new Map([...label, [term, -1]]), lot.net.ug));
      }
    }
    for (const [i, other] of charge.others.entries())
      charged.push(reading('other', other.label, charge.id, `others[${i}].weight`, other.weighed));
  }

  const sponges = new Map<string, Term>();
  const out: Term[] = [];
  const firings = [...new Set(run.openings.map((o) => o.firing))];
  for (const firing of firings) {
    for (const [charge, weighed] of firing.sponges)
      sponges.set(charge, reading('sponge', charge, firing.id, `heats[${heatOf(firing, charge)}].sponge`, weighed));
    if (firing.mercury) out.push(reading('mercury', firing.id, firing.id, 'mercury.weight', firing.mercury));
    if (firing.water) out.push(reading('water', firing.id, firing.id, 'water', firing.water));
  }
  for (const melt of book.current.of('melt'))
    for (const [i, { charge, weight }] of melt.body.sponges.entries()) {
      const sponge = sponges.get(charge);
      if (!sponge || !weight || !run.charges.some((c) => c.id === charge)) continue;
      const again = weigh('melt', charge, melt.id, `sponges[${i}].weight`, weight);
      ask(
        'sponge',
        charge,
        mayHaveChanged(
          charge,
          new Map([
            [sponge, 1],
            [again, -1],
          ]),
          sponge.net.ug,
        ),
      );
    }
  if (run.last !== null && run.awaits.length === 0 && run.last.figures) {
    const dry = run.last.waterKnown || run.charges.every((c) => c.reading.body.dry === 'yes');
    const stays = allowed('stayed', run.id, (toNumber(run.last.figures.band) * 1e6) / 2);
    const terms: Signed = new Map([
      ...charged.map((term) => [term, 1] as const),
      ...[...sponges.values(), ...out, stays].map((term) => [term, -1] as const),
    ]);
    if (dry) ask('run', run.id, terms);
    else leftOut.push({ kind: 'run', of: run.id, why: 'water-not-weighed' });
  }
  return { sums, leftOut };
}
