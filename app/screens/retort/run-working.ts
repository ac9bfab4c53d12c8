/**
 * How each figure of a run comes about, as lines: what was read, on which scale with which certificate, how it was reckoned, by which method. It
 * only tells; the figures are the book's (`core/run.ts`, practice.md 2.10).
 */
import type { Charge, Firing, Sum } from '../../core/book/charges.ts';
import type { State } from '../../core/book/registers.ts';
import type { Weighed } from '../../core/book/weights.ts';
import { type Decimal, toText } from '../../core/decimal.ts';
import { type Measured, uOf } from '../../core/measured.ts';
import { massFigure, massText, massUnit, percentText, uText, withU } from '../../words/figures.ts';
import { marked } from '../../words/notation.ts';
import { retortRun } from '../../words/retort-run.ts';
import { entryHref } from '../shared/places.ts';
import type { Closing } from './closing.ts';
import { exactGrams } from './typed.ts';

/** A line of Working.svelte. */
export interface Line {
  readonly sort: 'reading' | 'scale' | 'formula' | 'source' | 'result' | 'note';
  readonly text: string;
  readonly figure?: string;
  readonly href?: string;
}

/** A reading a figure rests on. */
export interface Input {
  readonly text: string;
  readonly weighed: Pick<Weighed, 'grams' | 'scale'>;
  readonly href?: string;
}

/** Everything that was weighed for a run, in the order it was weighed. */
export interface Inputs {
  readonly charged: readonly Input[];
  readonly sponges: readonly Input[];
  readonly mercury: readonly Input[];
  readonly water: readonly Input[];
}

const words = retortRun.w;
/** Exact grams with all their places, or troy ounces. */
const figure = (value: Decimal): string => (massUnit() === 'g' ? marked(toText(value).replace('-', '−')) : massFigure(value, 4));
const exact = (value: Decimal): string => `${figure(value)}\u00a0${massUnit()}`;
const line = ({ text, weighed, href }: Input): Line => ({
  sort: 'reading',
  text,
  figure: exactGrams(weighed),
  ...(href ? { href } : {}),
});

/** What went in, reading by reading. */
export function chargedInputs(charges: readonly Charge[]): readonly Input[] {
  return charges.flatMap((charge) => [
    ...charge.rows.flatMap((row): Input[] =>
      row.charged ? [{ text: words.lot(row.label), weighed: { scale: null, ...row.charged }, href: entryHref(charge.id) }] : [],
    ),
    ...charge.others.map((other): Input => ({ text: other.label, weighed: other.weighed, href: entryHref(charge.id) })),
  ]);
}

/** What came out at these firings: of each charge the last sponge, all mercury, all water. */
export function caughtInputs(
  firings: readonly Firing[],
  nameOf: (charge: string) => string,
  many: boolean,
): Omit<Inputs, 'charged'> {
  const sponges = new Map<string, Input>();
  const mercury: Input[] = [];
  const water: Input[] = [];
  for (const [i, firing] of firings.entries()) {
    const href = entryHref(firing.id);
    for (const [charge, weighed] of firing.sponges)
      sponges.set(charge, { text: many ? `${words.sponge}, ${nameOf(charge)}` : words.sponge, weighed, href });
    if (firing.mercury)
      mercury.push({ text: firings.length > 1 ? words.mercuryOf(i + 1) : words.mercury, weighed: firing.mercury, href });
    if (firing.water) water.push({ text: words.water, weighed: firing.water, href });
  }
  return { sponges: [...sponges.values()], mercury, water };
}

/** The scales behind the readings, each once, with what its certificate says. */
function scaleLines(inputs: readonly Input[]): readonly Line[] {
  const scales = new Map<string, State<'scale'>>();
  for (const { weighed } of inputs) if (weighed.scale) scales.set(weighed.scale.entry, weighed.scale);
  return [...scales.values()].flatMap(({ entry, body }): Line[] => [
    { sort: 'scale', text: words.scale(body.label, body.d), href: entryHref(entry) },
    {
      sort: 'scale',
      text: body.certificate
        ? words.certificate(body.certificate.number ?? '', body.certificate.U, body.certificate.at)
        : words.noCertificate(body.label),
    },
  ]);
}

const standard = (ug: number): string => uText(ug / 1e6);

/** What the uncertainty of a figure is made of: the scatter of its readings, and for each scale what its readings share. */
function partsOfU(net: Measured, inputs: readonly Input[]): readonly Line[] {
  const labels = new Map(inputs.flatMap(({ weighed: { scale } }) => (scale ? [[`scale:${scale.entry}`, scale.body.label]] : [])));
  const own = [...net.parts].filter(([source]) => !labels.has(source) && source !== 'density of mercury');
  const scatter = Math.sqrt(own.reduce((squares, [, u]) => squares + u * u, 0));
  return [
    ...(own.length > 0 ? [{ sort: 'formula', text: words.scatter(own.length), figure: standard(scatter) } as const] : []),
    ...[...net.parts].flatMap(([source, u]): Line[] => {
      const label = labels.get(source);
      if (label === undefined && source !== 'density of mercury') return [];
      return [{ sort: 'formula', text: label === undefined ? words.density : words.span(label), figure: standard(Math.abs(u)) }];
    }),
    { sort: 'note', text: words.uRule },
  ];
}

/** The gap: charge − sponge − water − mercury. `bandRule`: where its band comes from. */
export function gapLines(inputs: Inputs, charge: Sum, closing: Closing, bandRule: string): readonly Line[] {
  const all = [...inputs.charged, ...inputs.sponges, ...inputs.mercury, ...inputs.water];
  const { gap, sponge, water, mercury } = closing;
  return [
    ...inputs.charged.map(line),
    { sort: 'formula', text: words.chargeSum, figure: exactGrams(charge) },
    ...inputs.sponges.map(line),
    ...inputs.mercury.map(line),
    ...inputs.water.map(line),
    ...(closing.waterKnown ? [] : [{ sort: 'note', text: words.waterNotKnown } as const]),
    ...scaleLines(all),
    {
      sort: 'formula',
      text: `${words.gapFormula}: ${[charge, sponge, water, mercury].map((s) => figure(s.grams)).join(' − ')}`,
      figure: exact(gap.grams),
    },
    ...(gap.uKnown ? partsOfU(gap.net, all) : []),
    gap.uKnown
      ? { sort: 'formula', text: words.u, figure: withU(gap.grams, uOf(gap.net) / 1e6).replace(/^.* ± /, '') }
      : { sort: 'note', text: words.uNotKnown },
    { sort: 'formula', text: words.band(bandRule), figure: exact(closing.figures.band) },
    { sort: 'result', text: words.gapExact, figure: exact(gap.grams) },
    { sort: 'source', text: words.methodU },
    { sort: 'note', text: words.gapSigns },
  ];
}

const shareLines = (formula: string, upper: Decimal, lower: Decimal, share: number | null): readonly Line[] => [
  { sort: 'formula', text: `${formula}: ${figure(upper)} ÷ ${figure(lower)}` },
  { sort: 'result', text: formula, figure: share === null ? retortRun.notComputable : percentText(share, 3) },
  { sort: 'source', text: words.method },
];

/** The other figures, each from the totals. */
export const ratioLines = (charge: Sum, { sponge, figures }: Closing): readonly Line[] =>
  shareLines(words.ratio, sponge.grams, charge.grams, figures.spongeRatio);

export const gapShareLines = (charge: Sum, { gap, figures }: Closing): readonly Line[] =>
  shareLines(words.share, gap.grams, charge.grams, figures.gapOfCharge);

export const caughtLines = (charge: Sum, { sponge, water, mercury, figures }: Closing): readonly Line[] => [
  {
    sort: 'formula',
    text: `${words.caught}: ${figure(mercury.grams)} ÷ (${[charge, sponge, water].map((s) => figure(s.grams)).join(' − ')})`,
  },
  {
    sort: 'result',
    text: words.caught,
    figure: figures.caughtUpper === null ? retortRun.notComputable : percentText(figures.caughtUpper, 3),
  },
  { sort: 'note', text: retortRun.caughtHint },
  { sort: 'source', text: words.method },
];

export const drivenLines = (charge: Sum, { sponge, figures }: Closing): readonly Line[] => [
  { sort: 'formula', text: `${words.driven}: ${figure(charge.grams)} − ${figure(sponge.grams)}` },
  { sort: 'result', text: words.driven, figure: exact(figures.drivenOff) },
  { sort: 'note', text: retortRun.drivenOffHint },
  { sort: 'source', text: words.method },
];

/** A share in percent for the eye, or why there is none. */
export const shareText = (share: number | null): string => (share === null ? retortRun.notComputable : percentText(share));

/** A decimal of grams for the eye, as exact as it was read up to a tenth of a milligram. */
export const gramsShown = (grams: Decimal): string => massText(grams, Math.min(4, (toText(grams).split('.')[1] ?? '').length));
