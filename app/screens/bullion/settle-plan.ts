/** The form of a settlement: figures as exchanged, the contract's limit and rule, the umpire's figure where one is needed. */
import type { AssayRead } from '../../core/book/assays.ts';
import { decimalFromText } from '../../core/decimal.ts';
import { type Body, bodyFrom } from '../../core/kinds/index.ts';
import { type Settlement, settle } from '../../core/umpire.ts';
import { type FormPlan, textOr } from '../../daybook/form.svelte.ts';
import { ratioText } from './figures.ts';
import { draftName } from './hrefs.ts';

export interface SettleValues {
  bar: string;
  site: string;
  siteAssay: string;
  other: string;
  otherAssay: string;
  limit: string;
  rule: string;
  umpire: string;
  umpireAssay: string;
  contract: string;
  party: string;
  note: string;
}

/** What stands before a person who settles again: everything of the last one but the umpire it waited for. */
const from = (bar: string, last: Body<'settlement'> | undefined): SettleValues => ({
  bar,
  site: last?.site ?? '',
  siteAssay: last?.siteAssay ?? '',
  other: last?.other ?? '',
  otherAssay: last?.otherAssay ?? '',
  limit: last?.limit ?? '',
  rule: last?.rule ?? '',
  umpire: last?.umpire ?? '',
  umpireAssay: last?.umpireAssay ?? '',
  contract: last?.contract ?? '',
  party: last?.party ?? '',
  note: '',
});

export const settlePlan = (bar: string, last: Body<'settlement'> | undefined): FormPlan<SettleValues> => ({
  name: draftName('settle', bar),
  kind: 'settlement',
  start: () => from(bar, last),
  body: (v) => ({
    bar: textOr(v.bar),
    site: textOr(v.site),
    siteAssay: textOr(v.siteAssay),
    other: textOr(v.other),
    otherAssay: textOr(v.otherAssay),
    limit: textOr(v.limit),
    rule: textOr(v.rule),
    umpire: textOr(v.umpire),
    umpireAssay: textOr(v.umpireAssay),
    contract: textOr(v.contract),
    party: textOr(v.party),
    note: textOr(v.note),
  }),
});

/** The figure of an assay as it would be exchanged: rounded once, to two places. */
export const figureOf = (assay: AssayRead | undefined): string =>
  assay?.gold ? ratioText(assay.gold.permille, 2).replace(/\u202f/g, '') : '';

/** What the figures come to so far; null while they cannot be read. A rule not chosen yet changes nothing below the limit. */
export function settledSoFar(
  body: Record<string, unknown>,
): { readonly body: Body<'settlement'>; readonly settled: Settlement } | null {
  const read = bodyFrom('settlement', JSON.parse(JSON.stringify({ rule: 'nearer-mean', ...body })));
  if (!read.ok) return null;
  const [site, other, limit] = [read.value.site, read.value.other, read.value.limit].map(decimalFromText);
  if (!site || !other || !limit) return null;
  const umpire = read.value.umpire === undefined ? undefined : (decimalFromText(read.value.umpire) ?? undefined);
  return { body: read.value, settled: settle({ site, other, limit, umpire, rule: read.value.rule }) };
}
