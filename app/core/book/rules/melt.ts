/**
 * What a melt may not say: a sponge, a bar, prills or slag that stand in another melt already, or that this melt itself made. A bar that had left by the
 * book, and bars heavier than what went in, may be true readings: they are kept and flagged.
 */
import type { Body } from '../../kinds/index.ts';
import { barPieces } from '../bar-pieces.ts';
import { leftOverIn } from '../melt-stock.ts';
import type { Asking, Rules } from './asking.ts';

/** Bars melted again are bars of the book, each melted once; one that had left the site is kept and flagged. */
function barsMelted({ added = [] }: Body<'melt'>, asking: Asking): void {
  const seen = new Set<string>();
  for (const [i, { bar }] of added.entries()) {
    if (bar === undefined) continue;
    const field = `body.added[${i}].bar`;
    const poured = barPieces(asking.book.current).get(bar);
    const melted = asking.book.current
      .of('melt')
      .some((r) => r.id !== asking.instead && r.body.added?.some((piece) => piece.bar === bar));
    if (!poured) asking.refuse('unknown-id', field, { id: bar, wanted: 'bar' });
    else if (poured.melt.id === asking.instead) asking.refuse('bar-into-itself', field, { label: poured.label });
    else if (melted || seen.has(bar)) asking.refuse('bar-melted', field, { label: poured.label });
    seen.add(bar);
  }
}

/** Prills and slag are kept by the melt that made them, and go into a pot once. */
function leftOver(
  named: readonly { readonly melt: string | undefined; readonly field: string }[],
  what: 'prills' | 'slag',
  asking: Asking,
): void {
  const seen = new Set<string>();
  for (const { melt, field } of named) {
    if (melt === undefined) continue;
    asking.known(melt, 'melt', field);
    const made = asking.book.current.of('melt').find((r) => r.id === melt);
    const again = asking.book.current.of('melt').some((r) => r.id !== asking.instead && leftOverIn(r, what).includes(melt));
    if (melt === asking.instead) asking.refuse('left-over-of-itself', field);
    else if (made && made.body[what] === undefined) asking.refuse(what === 'prills' ? 'no-prills' : 'no-slag', field);
    else if (again || seen.has(melt)) asking.refuse(what === 'prills' ? 'prills-melted' : 'slag-melted', field);
    seen.add(melt);
  }
}

export const meltRules: Rules = {
  melt: (body, asking) => {
    asking.keys(
      [...(body.added ?? []), ...body.bars, ...(body.samples ?? [])].map((piece) => ({ key: piece.key, field: 'body.bars' })),
    );
    const seen = new Set<string>();
    for (const [i, sponge] of body.sponges.entries()) {
      asking.known(sponge.charge, 'charge', `body.sponges[${i}].charge`);
      asking.weight(sponge.weight, `body.sponges[${i}].weight`);
      const melted = asking.book.current
        .of('melt')
        .some((r) => r.id !== asking.instead && r.body.sponges.some((s) => s.charge === sponge.charge));
      if (melted || seen.has(sponge.charge)) asking.refuse('sponge-melted', `body.sponges[${i}].charge`);
      seen.add(sponge.charge);
    }
    barsMelted(body, asking);
    leftOver(
      (body.added ?? []).map((piece, i) => ({ melt: piece.prills, field: `body.added[${i}].prills` })),
      'prills',
      asking,
    );
    leftOver(
      (body.slags ?? []).map((slag, i) => ({ melt: slag.melt, field: `body.slags[${i}].melt` })),
      'slag',
      asking,
    );
    for (const [i, slag] of (body.slags ?? []).entries()) asking.weight(slag.weight, `body.slags[${i}].weight`);
    for (const field of ['added', 'bars', 'samples'] as const)
      for (const [i, piece] of (body[field] ?? []).entries()) asking.weight(piece.weight, `body.${field}[${i}].weight`);
    asking.weight(body.prills, 'body.prills');
    asking.weight(body.slag, 'body.slag');
    if (body.sponges.length + (body.added?.length ?? 0) + (body.slags?.length ?? 0) === 0)
      asking.refuse('melt-of-nothing', 'body.sponges');
  },
};
