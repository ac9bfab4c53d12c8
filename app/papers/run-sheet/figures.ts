/**
 * The run in figures, set out as an account: what went in, less what came out, and what is left over. Charges caught together have one figure of
 * mercury and none each. What the run still waits for is left out, never put as nothing.
 */
import type { Content } from 'pdfmake/interfaces';
import { lessSum, type Sum } from '../../core/book/charges.ts';
import type { Opening, Run } from '../../core/book/runs.ts';
import { isZero, shifted, toNumber } from '../../core/decimal.ts';
import { uOf } from '../../core/measured.ts';
import { momentText } from '../../words/dates.ts';
import { decimalText, massText, percentText, withU } from '../../words/figures.ts';
import { notKnown, notRecorded, runSheet as words } from '../../words/papers.ts';
import { type BandSources, bandSourceNames, lossRule } from '../../words/retort-bands.ts';
import { gramsText, uText, withGrams } from '../amounts.ts';
import { aside, ledger, part, type Row, section, sentence, together } from '../ledger.ts';
import { openedText } from './moments.ts';

/** A share of the charge is shown to this many places of a percent. */
const gapPlaces = 3;

const line = (text: string, sum: Sum, more: Partial<Row> = {}): Row => ({
  cells: [text, gramsText(sum.grams), uText(sum.net, sum.uKnown)],
  ...more,
});

function waterRow({ water, waterKnown }: Opening): Row {
  if (waterKnown) return line(words.lessWater, water);
  const cells = isZero(water.grams) ? words.waterUnknown : words.waterPartly(gramsText(water.grams));
  return { cells: [words.lessWater, cells, ''] };
}

/** Made when they are wanted: their heads name the unit the paper is written in. */
const accountColumns = () => [
  { head: words.item, share: 60 },
  { head: words.grams, share: 20, amount: true },
  { head: words.U, share: 20, amount: true },
];

function account(run: Run, last: Opening): Content[] {
  const rows: Row[] = [line(words.charge, run.charge)];
  const { sponge, mercury, gap } = last;
  if (sponge) {
    rows.push(line(words.lessSponge, sponge));
    rows.push(line(words.drivenOff, lessSum(run.charge, sponge), { sum: true }));
  }
  if (mercury) rows.push(line(words.lessMercury, mercury));
  rows.push(waterRow(last));
  if (gap) rows.push(line(last.waterKnown ? words.gap : words.gapWithWater, gap, { sum: true, closing: true }));
  return ledger(accountColumns(), rows);
}

const percent = (share: number | null, places?: number): string => (share === null ? notKnown : percentText(share, places));

function usualText({ usual, bands }: Run, sources: BandSources): string {
  if (!usual) return words.usualNone;
  const said =
    usual.from === 'history'
      ? words.usualHistory(percentText(usual.ratio), usual.runs)
      : words.usualSite(percentText(usual.ratio));
  return `${said}${words.ratioBand(`${decimalText(shifted(bands.ratioBand, 2), 1)}\u00a0%`)}, ${bandSourceNames[sources.ratio]}`;
}

function shares(run: Run, last: Opening, sources: BandSources): Content[] {
  const { figures, gap } = last;
  if (!figures || !gap) return [];
  const amalgam = run.charges[0]?.holds === 'amalgam';
  const rows: [string, string][] = [
    [words.gapWithU, gap.uKnown ? withU(gap.grams, uOf(gap.net) / 1e6) : `${withGrams(gap.grams)}, ${words.gapNoU}`],
    [words.gapOfCharge, percent(figures.gapOfCharge, gapPlaces)],
    [words.band, words.bandUpTo(massText(figures.band, 2), lossRule(run.bands, sources, toNumber(figures.band)))],
    [words.spongeRatio, percent(figures.spongeRatio)],
    ...(amalgam ? [[words.usual, usualText(run, sources)] as [string, string]] : []),
    [words.caughtUpper, percent(figures.caughtUpper)],
  ];
  return [
    ...ledger(
      [
        { head: words.share, share: 45 },
        { head: words.comesTo, share: 55 },
      ],
      rows.map((cells) => ({ cells })),
    ),
    aside(`${words.exact} ${words.caughtWhy}`),
    ...(gap.net.ug > 0 ? [sentence(words.notAir)] : []),
  ];
}

/** A table of so many rows is kept on one page. */
const fewRows = 10;
const kept = (rows: number, block: readonly Content[]): Content[] => (rows > fewRows ? [...block] : together(block));

function openings(run: Run): Content[] {
  if (run.openings.length < 2) return [];
  const amount = (sum: Sum | null): string => (sum ? gramsText(sum.grams) : notRecorded);
  return kept(run.openings.length, [
    part(words.openings),
    aside(words.openingsNote),
    ...ledger(
      [
        { head: words.opening, share: 27 },
        { head: words.sponge, share: 12, amount: true },
        { head: words.mercury, share: 13, amount: true },
        { head: words.water, share: 13, amount: true },
        { head: words.gapG, share: 11, amount: true },
        { head: words.ofCharge, share: 12, amount: true },
        { head: words.ratio, share: 12, amount: true },
        { head: words.caught, share: 14, amount: true },
      ],
      run.openings.map((o, i) => ({
        cells: [
          `${i + 1}: ${openedText(o.firing)}`,
          amount(o.sponge),
          amount(o.mercury),
          o.waterKnown ? gramsText(o.water.grams) : words.waterUnknown,
          o.gap ? gramsText(o.gap.grams) : '',
          o.figures ? percent(o.figures.gapOfCharge, gapPlaces) : '',
          o.figures ? percent(o.figures.spongeRatio) : '',
          o.figures ? percent(o.figures.caughtUpper) : '',
        ],
      })),
    ),
  ]);
}

function perCharge(run: Run): Content[] {
  if (!run.together) return [];
  const spongeOf = (id: string) => run.openings.findLast((o) => o.firing.sponges.has(id))?.firing.sponges.get(id);
  return kept(run.charges.length, [
    part(words.perCharge),
    aside(words.perChargeNote),
    ...ledger(
      [
        { head: words.item, share: 46 },
        { head: words.chargeG, share: 18, amount: true },
        { head: words.sponge, share: 18, amount: true },
        { head: words.ratio, share: 18, amount: true },
      ],
      run.charges.map((charge, i) => {
        const sponge = spongeOf(charge.id);
        const ratio = sponge && !isZero(charge.total.grams) ? sponge.net.ug / charge.total.net.ug : null;
        return {
          cells: [
            words.chargeN(i + 1, momentText(charge.reading.happened)),
            gramsText(charge.total.grams),
            sponge ? gramsText(sponge.grams) : notRecorded,
            ratio === null ? '' : percentText(ratio),
          ],
        };
      }),
    ),
  ]);
}

/** What was weighed of an open run that nothing can be reckoned from yet. */
function soFar(run: Run): Content[] {
  const latest = run.openings.at(-1);
  const rows: Row[] = [line(words.charge, run.charge)];
  if (latest?.sponge) rows.push(line(words.weighedSponge, latest.sponge));
  if (latest?.mercury) rows.push(line(words.weighedMercury, latest.mercury));
  if (latest && !isZero(latest.water.grams)) rows.push(line(words.weighedWater, latest.water));
  return ledger(accountColumns(), rows);
}

/** Account, shares, and the state at each opening. */
export function figuresOf(run: Run, sources: BandSources): Content[] {
  const { last } = run;
  const openSince = last && last !== run.openings.at(-1) ? [sentence(words.figuresAsAt(run.openings.indexOf(last) + 1))] : [];
  return [
    section(words.figures),
    ...(run.together ? [sentence(words.together(run.charges.length))] : []),
    ...openSince,
    ...(last ? [...account(run, last), ...shares(run, last, sources)] : soFar(run)),
    ...openings(run),
    ...perCharge(run),
  ];
}
