/** The account as text for a person: reservations first, then the sum, what is left where, and what no account can say. */
import { decimalFromNumber, toText } from '../../app/core/decimal.ts';
import { basisTexts, accountWords as words } from '../../app/words/account.ts';
import { decimalText, withU } from '../../app/words/figures.ts';
import { pathTexts } from '../../app/words/places.ts';
import type { AccountJson, NotComputable } from './account-json.ts';

const grams = (g: number, u: number | null = null): string => withU(decimalFromNumber(g), u);
const isNot = (value: unknown): value is NotComputable =>
  typeof value === 'object' && value !== null && 'not_computable' in value;

/** Rows of a name and a figure, the figures on one edge. */
function aligned(rows: readonly (readonly [string, string])[]): string[] {
  const name = Math.max(0, ...rows.map(([text]) => text.length));
  const figure = Math.max(0, ...rows.map(([, text]) => text.length));
  return rows.map(([text, value]) => `  ${text.padEnd(name)}  ${value.padStart(figure)}`);
}

/** Entries named of each reservation that several have alike; the JSON names them all. */
const mostNamed = 5;

/** A line for each sentence, with the entries it stands for. */
function reserved(reservations: AccountJson['reservations']): string[] {
  const by = new Map<string, string[]>();
  for (const { entry, text } of reservations) by.set(text, [...(by.get(text) ?? []), entry]);
  return [...by].map(([text, entries]) => `  ${text} (${words.entries(entries.slice(0, mostNamed), entries.length)})`);
}

/** The second question, or why it has no answer. */
function usualLines(a: AccountJson): string[] {
  const { usual, expected_g, expected_u_g, excess_g, excess_u_g, excess_level } = a;
  if (isNot(excess_level) || !usual || excess_g === undefined || expected_g === undefined)
    return [words.noExcess(isNot(excess_level) ? excess_level.not_computable : '')];
  return [
    words.usual(
      grams(usual.rate_g, usual.rate_u_g),
      usual.per,
      usual.periods.map((p) => [p.from ?? '', p.to]),
    ),
    words.beyondUsual(grams(expected_g, expected_u_g ?? null), grams(excess_g, excess_u_g ?? null)),
    words.excess[excess_level],
  ];
}

/** What is taken over from closed periods, and the figure as it stands with it. */
function adjustmentLines({ adjustments, unaccounted_as_closed_g }: AccountJson): string[] {
  if (adjustments.length === 0 || unaccounted_as_closed_g === undefined) return [];
  return [
    '',
    words.adjustments,
    ...aligned([
      ...adjustments.map((c) => [words.adjustment(c.to, c.version), withU(decimalFromNumber(c.g), null, true)] as const),
      [words.onClosed, grams(unaccounted_as_closed_g)],
    ]),
    words.adjustmentsNote,
  ];
}

/** Lines to print. */
export function accountText(a: AccountJson, site: string): string[] {
  const { rows } = words;
  const unaccounted = grams(a.unaccounted_g, a.u_g > 0 ? a.u_g : null);
  return [
    `${words.title}, ${site}`,
    words.period(a.from, a.to),
    a.standing,
    '',
    ...(a.reservations.length === 0 ? [] : [words.reservations, ...reserved(a.reservations), '']),
    ...aligned([
      [rows.opening, grams(a.opening_g)],
      [rows.receipts, grams(a.receipts_g)],
      ...(a.invoice_g === 0 ? [] : [[rows.invoiced, grams(a.invoice_g)] as const]),
      [rows.found, grams(a.found_g)],
      [rows.removals, grams(a.removals_g)],
      [rows.released, grams(a.released_g)],
      [rows.closing, grams(a.closing_g)],
      [rows.unaccounted, unaccounted],
    ]),
    words.sum,
    ...adjustmentLines(a),
    '',
    isNot(a.loss_level) ? words.notComputable(a.loss_level.not_computable) : words.loss[a.loss_level],
    ...(isNot(a.z) ? [] : [words.z(decimalText(decimalFromNumber(a.z), 1))]),
    words.detectable(grams(a.detectable_g)),
    words.lost(grams(a.lost_g, a.lost_u_g > 0 ? a.lost_u_g : null)),
    ...usualLines(a),
    ...(isNot(a.ore_t) ? [] : [words.ore(toText(decimalFromNumber(a.ore_t)))]),
    words.perTonne(
      isNot(a.per_tonne_g)
        ? words.notComputable(a.per_tonne_g.not_computable)
        : grams(a.per_tonne_g, isNot(a.per_tonne_u_g) ? null : a.per_tonne_u_g),
    ),
    words.notEvaporated,
    words.notTheAir,
    '',
    words.paths,
    ...aligned(a.paths.map((p) => [pathTexts[p.path], words.between(grams(p.low_g), grams(p.high_g))])),
    '',
    ...(a.doubts.length === 0
      ? []
      : [
          words.doubts,
          ...a.doubts.slice(0, 5).map((d) => `  ${decimalText(decimalFromNumber(d.share * 100), 1)} %  ${d.text}`),
          '',
        ]),
    words.stocks,
    ...aligned(
      a.stocks.map((s) => [
        `${s.place} (${(basisTexts as Readonly<Record<string, string>>)[s.basis] ?? s.basis})`,
        grams(s.g, s.u_g > 0 ? s.u_g : null),
      ]),
    ),
    '',
    words.endMarks,
    ...a.end_marks.map((d) => `  ${d.desk}  ${d.end_mark}`),
  ];
}
