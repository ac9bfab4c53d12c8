/**
 * What an assay and a settlement may not say: a thing nobody knows, gold heavier than the sample it came from, a proof that found more than was
 * taken by over five parts in a hundred, metal heavier in water than in air. A result that cannot be (gold and silver over 1000) is a reading all
 * the same: it is kept and flagged. Sources: methods.md 5.2, 5.5.
 */

import { compare, type Decimal, decimalFromText, times, zero } from '../../decimal.ts';
import type { AssaySubject } from '../../kinds/assay.ts';
import type { Body } from '../../kinds/index.ts';
import { gramsFromText } from '../../mass.ts';
import { barPieces } from '../bar-pieces.ts';
import type { Asking, Rules } from './asking.ts';

type Assay = Body<'assay'>;

/** A mass that has passed its shape, in exact grams. */
function grams(text: string): Decimal {
  const got = gramsFromText(text, '');
  return got.ok ? got.value : zero;
}

const mostFound = decimalFromText('1.05') ?? zero;

/** Fields that name which one was assayed, by what it is. */
const namedBy: Readonly<Record<AssaySubject, readonly ('bar' | 'charge' | 'parcel' | 'vessel' | 'which')[]>> = {
  ore: ['parcel', 'which'],
  tailings: ['parcel', 'which'],
  concentrate: ['parcel', 'which'],
  sponge: ['charge'],
  bar: ['bar'],
  mercury: ['vessel', 'which'],
  residue: ['vessel', 'which'],
  waste: ['vessel', 'which'],
};

function subject(body: Assay, asking: Asking): void {
  asking.known(body.charge, 'charge', 'body.charge');
  asking.known(body.parcel, 'parcel', 'body.parcel');
  asking.known(body.vessel, 'vessel', 'body.vessel');
  bar(body.bar, 'body.bar', asking);
  const names = namedBy[body.subject];
  if (names.every((name) => body[name] === undefined)) asking.refuse('assay-of-what', `body.${names[0] ?? 'which'}`);
  for (const name of ['bar', 'charge', 'parcel', 'vessel'] as const)
    if (body[name] !== undefined && !names.includes(name)) asking.refuse('assay-of-two', `body.${name}`);
}

function bar(id: string | undefined, field: string, asking: Asking): void {
  if (id !== undefined && !barPieces(asking.book.current).has(id)) asking.refuse('unknown-id', field, { id, wanted: 'bar' });
}

function weighings(body: Assay, asking: Asking): void {
  if (body.method === 'fire-assay') {
    for (const [i, { sample, cornet }] of body.replicates.entries())
      if (compare(grams(cornet), grams(sample)) > 0) asking.refuse('cornet-over-sample', `body.replicates[${i}].cornet`);
    for (const [i, { taken, found }] of (body.proofs ?? []).entries())
      if (compare(grams(found), times(grams(taken), mostFound)) > 0)
        asking.refuse('proof-over-taken', `body.proofs[${i}].found`, { taken, found });
  }
  if (body.method === 'density' && compare(grams(body.water), grams(body.air)) >= 0)
    asking.refuse('heavier-in-water', 'body.water', { air: body.air, water: body.water });
  if (body.method === 'titration' && body.subject !== 'bar' && body.subject !== 'sponge')
    asking.refuse('titration-of-metal', 'body.method');
  if (body.method === 'density' && body.subject !== 'bar') asking.refuse('density-of-bar', 'body.method');
  if (body.method === 'outside' && [body.result.gold, body.result.silver, body.result.mercury].every((x) => x === undefined))
    asking.refuse('assay-of-nothing', 'body.result.gold');
}

/** The assay is here and is one of this bar. */
function assayOf(id: string | undefined, of: string, field: string, asking: Asking): void {
  if (id === undefined) return;
  asking.known(id, 'assay', field);
  const reading = asking.book.current.byId.get(id);
  if (reading?.kind === 'assay' && (reading.body as Assay).bar !== of) asking.refuse('assay-of-another', field);
}

export const bullionRules: Rules = {
  assay: (body, asking) => {
    subject(body, asking);
    weighings(body, asking);
  },
  settlement: (body, asking) => {
    bar(body.bar, 'body.bar', asking);
    assayOf(body.siteAssay, body.bar, 'body.siteAssay', asking);
    assayOf(body.otherAssay, body.bar, 'body.otherAssay', asking);
    assayOf(body.umpireAssay, body.bar, 'body.umpireAssay', asking);
    const assays = [body.siteAssay, body.otherAssay, body.umpireAssay].filter((x) => x !== undefined);
    if (new Set(assays).size < assays.length) asking.refuse('assay-twice', 'body.otherAssay');
    if (body.umpireAssay !== undefined && body.umpire === undefined) asking.refuse('umpire-figure', 'body.umpire');
    if ((body.siteSilver === undefined) !== (body.otherSilver === undefined))
      asking.refuse('silver-of-one', body.siteSilver === undefined ? 'body.siteSilver' : 'body.otherSilver');
    if (body.umpireSilver !== undefined && body.siteSilver === undefined) asking.refuse('silver-of-one', 'body.siteSilver');
    if (body.siteSilver !== undefined && body.silverLimit === undefined) asking.refuse('silver-limit', 'body.silverLimit');
  },
  'bar-kept': (body, asking) => {
    bar(body.bar, 'body.bar', asking);
    for (const [i, id] of (body.present ?? []).entries()) asking.known(id, 'person', `body.present[${i}]`);
  },
  'out-turn': (body, asking) => {
    for (const [i, id] of body.transfers.entries()) {
      const field = `body.transfers[${i}]`;
      asking.known(id, 'transfer', field);
      const reading = asking.book.current.byId.get(id);
      if (reading?.kind === 'transfer' && (reading.body as Body<'transfer'>).way === 'in') asking.refuse('out-turn-of-in', field);
      if (body.transfers.indexOf(id) < i) asking.refuse('named-twice', field);
    }
    asking.weight(body.received, 'body.received');
    asking.weight(body.melted, 'body.melted');
    if ([body.received, body.melted, body.gold, body.silver].every((x) => x === undefined))
      asking.refuse('out-turn-empty', 'body.received');
    for (const metal of ['gold', 'silver'] as const) {
      const found = body[metal];
      if (found?.permille !== undefined && body.melted === undefined && body.received === undefined && found.fine === undefined)
        asking.refuse('out-turn-weight', 'body.melted');
    }
  },
};
