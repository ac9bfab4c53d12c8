/**
 * Weights that want a second look: two weighings of one thing that stand to each other as two units, doses that do not make their weight, a tare over
 * its gross, one mass written twice. Factors: unit-slip.ts (practice.md 3).
 */
import { type Decimal, decimalFromNumber, shifted } from '../../decimal.ts';
import { massFromText } from '../../mass.ts';
import { unitSlip } from '../../unit-slip.ts';
import type { Book } from '../book.ts';
import type { Reading } from '../current.ts';
import { placeParts } from '../places.ts';
import { weighedFrom } from '../weights.ts';
import { fromFlags, type OutOfStep, ofEntry } from './item.ts';

const gramsOf = (ug: number): Decimal => shifted(decimalFromNumber(ug), -6);

/** What two weights are of: a word of app/words/out-of-step.ts. */
export type Twice = 'lot' | 'sides' | 'doses' | 'sponge' | 'count';

function slip(reading: Pick<Reading, 'id' | 'happened'>, of: Twice, grams: Decimal, expected: Decimal, name = ''): OutOfStep[] {
  const found = unitSlip(grams, expected);
  if (!found) return [];
  const data = { of, slip: found.slip, quotient: found.quotient, name };
  return [ofEntry('weights', 'unit-slip', reading.id, reading.happened, data)];
}

export function weightsOutOfStep(book: Book): OutOfStep[] {
  const { current, registers } = book;
  const weigh = (reading: Reading, weight: Parameters<typeof weighedFrom>[0], path: string): Decimal =>
    weighedFrom(weight, { entry: reading.id, path, at: reading.happened }, registers).grams;
  return [
    ...[...book.charges.all.values()].flatMap((charge) =>
      charge.rows.flatMap((row) =>
        row.take === 'whole' && row.lot && row.charged
          ? slip(charge.reading, 'lot', row.charged.grams, row.lot.grams, row.label)
          : [],
      ),
    ),
    ...current.of('transfer').flatMap((reading) => {
      const { weight, theirs, party } = reading.body;
      return weight && theirs
        ? slip(reading, 'sides', weigh(reading, theirs.weight, 'theirs.weight'), weigh(reading, weight, 'weight'), party)
        : [];
    }),
    ...current.of('issue').flatMap((reading) => {
      const each = reading.body.doses ? massFromText(reading.body.doses.each, '') : null;
      if (!reading.body.doses || !each?.ok) return [];
      const byCount = gramsOf(reading.body.doses.count * each.value.ug);
      return slip(reading, 'doses', weigh(reading, reading.body.weight, 'weight'), byCount);
    }),
    ...current.of('melt').flatMap((reading) =>
      reading.body.sponges.flatMap(({ charge, weight }, i) => {
        const before = book.charges.all
          .get(charge)
          ?.firings.findLast((f) => f.sponges.has(charge))
          ?.sponges.get(charge);
        return weight && before ? slip(reading, 'sponge', weigh(reading, weight, `sponges[${i}].weight`), before.grams) : [];
      }),
    ),
    ...counted(book),
    ...fromFlags(book, 'weights', ['count-differs'], ({ data }) => Number(data.ug) < 0),
    ...fromFlags(book, 'weights', ['tare-over-gross', 'doses-differ', 'equal-masses', 'part-over-lot']),
  ];
}

/** What a count weighed in a place against what the book had there. */
function counted(book: Book): OutOfStep[] {
  const held = new Map<string, number>();
  const found: OutOfStep[] = [];
  for (const m of book.movements.all) {
    const before = held.get(m.to) ?? 0;
    const reading = book.current.byId.get(m.entry);
    if (m.basis === 'counted' && reading?.kind === 'stock-take' && placeParts(m.to).kind === 'vessel')
      found.push(...slip(reading, 'count', gramsOf(before + m.mercury.ug), gramsOf(before), m.to));
    held.set(m.to, before + m.mercury.ug);
    held.set(m.from, (held.get(m.from) ?? 0) - m.mercury.ug);
  }
  return found;
}
