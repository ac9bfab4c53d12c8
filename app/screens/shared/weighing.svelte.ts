/**
 * The state of a weighing field: what the typed reading comes to, how sure it is, what is odd about it, and how the figure comes about. The
 * reckoning is the book's own (`weighedFrom`), so that the page never shows another figure than the one the book will use.
 */

import type { Flag } from '../../core/book/flags.ts';
import { latest, type Registers } from '../../core/book/registers.ts';
import { type Weighed, weighedFrom } from '../../core/book/weights.ts';
import type { Decimal } from '../../core/decimal.ts';
import { toText } from '../../core/decimal.ts';
import { uOf } from '../../core/measured.ts';
import { read } from '../../core/read.ts';
import type { Problem } from '../../core/result.ts';
import { type Weight, weight } from '../../core/shapes.ts';
import { massEntry } from '../../parts/mass-entry.ts';
import { uText, withU } from '../../words/figures.ts';
import { flagText } from '../../words/flags.ts';
import { problemText } from '../../words/problems.ts';
import { weighing as words } from '../../words/screens-weighing.ts';
import { unitSlip } from './unit-slip.ts';
import { isBlank, type WeighingEntry, weightOf } from './weighing-entry.ts';

/** What lies around the field. */
export interface Around {
  readonly registers: Registers;
  /** When it was read: the scale counts as it stood then. */
  readonly at: string;
  /** What it should weigh, where something says so (a label, an invoice), and what that is called. */
  readonly expected?: { readonly grams: Decimal; readonly what: string } | undefined;
}

/** Flags worth telling while a person still stands at the scale. */
const atTheScale: ReadonlySet<Flag['code']> = new Set([
  'tare-over-gross',
  'scale-over-maximum',
  'scale-below-minimum',
  'scale-out-of-date',
  'certificate-missing',
]);

const unspecified = { entry: 'this', path: 'weight' };

export class Weighing {
  readonly #entry: () => WeighingEntry;
  readonly #around: () => Around;

  constructor(entry: () => WeighingEntry, around: () => Around) {
    this.#entry = entry;
    this.#around = around;
  }

  get blank(): boolean {
    return isBlank(this.#entry());
  }

  /** The weight as the schema reads it; null while something is missing or wrong. */
  get weight(): Weight | null {
    const typed = weightOf(this.#entry());
    if (typed === undefined) return null;
    const got = read(weight, JSON.parse(JSON.stringify(typed)));
    return got.ok ? got.value : null;
  }

  /** What is wrong with one field of it, of the kind that can be seen while typing: never that something is still missing. */
  typing(field: 'gross' | 'tare' | 'mass' | 'u' | 'volume' | 'temperatureC'): readonly string[] {
    const typed = weightOf(this.#entry());
    const value = typed?.[field];
    if (typed === undefined || value === undefined) return [];
    const got = read(weight, JSON.parse(JSON.stringify(typed)));
    return got.ok ? [] : said(got.problems, field);
  }

  /** The weight worked out. */
  get weighed(): Weighed | null {
    const as = this.weight;
    const { registers, at } = this.#around();
    return as ? weighedFrom(as, { ...unspecified, at }, registers) : null;
  }

  /** Net ± expanded uncertainty, or why there is no ±. */
  get net(): string | null {
    const got = this.weighed;
    if (!got) return null;
    return got.uKnown ? withU(got.grams, uOf(got.net) / 1e6) : `${withU(got.grams, null)}, ${words.uNotKnown}`;
  }

  /** What to look at before it is kept. None of it stops anything. */
  get warnings(): readonly string[] {
    const got = this.weighed;
    if (!got) return [];
    const { expected } = this.#around();
    const slip = expected ? unitSlip(got.grams, expected.grams) : null;
    const told = got.flags.filter((f) => atTheScale.has(f.code)).map(flagText);
    return slip && expected ? [...told, words.slip[slip.slip](slip.quotient.toFixed(3), expected.what)] : told;
  }

  /** How the net comes about, as lines. */
  get working(): readonly { sort: 'reading' | 'scale' | 'formula' | 'source' | 'result'; text: string; figure?: string }[] {
    const got = this.weighed;
    if (!got) return [];
    return workingOf(got);
  }

  /** Fields for the tare of a vessel as it was last weighed empty; undefined when it never was. */
  tareOf(vessel: string): WeighingEntry['tare'] | undefined {
    const { registers, at } = this.#around();
    const thing = registers.vessel.get(vessel);
    const tare = thing ? latest(thing).body.tare : undefined;
    if (!tare) return undefined;
    if (tare.how === 'stated') return massEntry(tare.mass);
    if (tare.how === 'scale' && tare.tare === undefined) return massEntry(tare.gross);
    const { grams } = weighedFrom(tare, { ...unspecified, at }, registers);
    return { amount: toText(grams), unit: 'g' };
  }
}

const said = (problems: readonly Problem[], field: string): readonly string[] =>
  problems.filter((p) => p.field === field && p.code !== 'missing').map(problemText);

/** A standard uncertainty in micrograms as grams, for the eye. */
const standard = (ug: number): string => uText(ug / 1e6);

/** The working of a weight of the record: readings, scale, what makes up the uncertainty, method. */
export function workingOf(
  weighed: Weighed,
): readonly { sort: 'reading' | 'scale' | 'formula' | 'source' | 'result'; text: string; figure?: string }[] {
  const { as, scale, net, uKnown, grams } = weighed;
  const result = {
    sort: 'result',
    text: words.wNet,
    figure: uKnown ? withU(grams, uOf(net) / 1e6) : `${withU(grams, null)}, ${words.uNotKnown}`,
  } as const;
  if (as.how === 'volume')
    return [
      { sort: 'reading', text: words.wVolume(as.volume, as.temperatureC) },
      result,
      { sort: 'source', text: words.wMethodVolume },
    ];
  if (as.how === 'stated') return [{ sort: 'reading', text: words.wStated(as.mass, as.by ?? words.wSomebody) }, result];
  const parts = [...net.parts];
  const certificate = scale?.body.certificate;
  return [
    { sort: 'reading', text: as.tare === undefined ? words.wReading(as.gross) : words.wGross(as.gross) },
    ...(as.tare === undefined ? [] : [{ sort: 'reading', text: words.wTare(as.tare) } as const]),
    ...(scale ? [{ sort: 'scale', text: words.wScale(scale.body.label, scale.body.d) } as const] : []),
    ...(certificate
      ? [{ sort: 'scale', text: words.wCertificate(certificate.number, certificate.U, certificate.at) } as const]
      : []),
    ...parts.map(([source, ug]) => ({
      sort: 'formula' as const,
      text: source.startsWith('scale:') ? (certificate ? words.wSpan : words.wUnverified) : words.wScatter,
      figure: standard(ug),
    })),
    ...(uKnown ? [] : [{ sort: 'formula', text: words.wUnknown } as const]),
    result,
    { sort: 'source', text: words.wMethodWeighing },
  ];
}
