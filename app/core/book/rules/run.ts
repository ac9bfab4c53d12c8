/** What a charge and a firing may not say: lots that are used up, times that run backwards, a retort that is not the charge's. */
import type { Body } from '../../kinds/index.ts';
import { compareMoments } from '../../time.ts';
import { usedUp } from '../lots.ts';
import type { Asking } from './asking.ts';

export function chargeRules(body: Body<'charge'>, asking: Asking): void {
  const others = body.others ?? [];
  asking.known(body.retort, 'retort', 'body.retort');
  asking.keys([
    ...body.rows.map((row, i) => ({ key: row.key, field: `body.rows[${i}].key` })),
    ...others.map((other, i) => ({ key: other.key, field: `body.others[${i}].key` })),
  ]);
  const seen = new Set<string>();
  for (const [i, row] of body.rows.entries()) {
    const field = `body.rows[${i}]`;
    if (row.take !== 'not-found') asking.weight(row.weight, `${field}.weight`);
    if (row.take === 'part') asking.weight(row.rest, `${field}.rest`);
    if (row.take === 'unwritten') continue;
    const lot = asking.book.lots.all.get(row.lot);
    if (!lot) asking.refuse('unknown-id', `${field}.lot`, { id: row.lot, wanted: 'lot' });
    else if (usedUp.has(lot.fate) && lot.charge !== asking.instead)
      asking.refuse(lot.fate === 'split' ? 'lot-split' : 'lot-used-up', `${field}.lot`, {
        label: lot.label,
        charge: lot.charge ?? '',
      });
    if (seen.has(row.lot)) asking.refuse('lot-twice', `${field}.lot`, { label: lot?.label ?? row.lot });
    seen.add(row.lot);
  }
  for (const [i, other] of others.entries()) {
    asking.weight(other.weight, `body.others[${i}].weight`);
    asking.known(other.vessel, 'vessel', `body.others[${i}].vessel`);
  }
  if (body.rows.length + others.length === 0) asking.refuse('charge-of-nothing', 'body.rows');
}

/** Stages of a firing in the order they must happen. */
const stages = ['lit', 'firstMercury', 'lastMercury', 'opened'] as const;

export function firingRules(body: Body<'firing'>, asking: Asking): void {
  const seen = new Set<string>();
  for (const [i, heat] of body.heats.entries()) {
    asking.known(heat.charge, 'charge', `body.heats[${i}].charge`);
    asking.weight(heat.sponge, `body.heats[${i}].sponge`);
    if (heat.charge === undefined) continue;
    if (seen.has(heat.charge)) asking.refuse('charge-twice', `body.heats[${i}].charge`);
    seen.add(heat.charge);
  }
  asking.known(body.retort, 'retort', 'body.retort');
  if (body.retort === undefined && seen.size < body.heats.length && seen.size === 0)
    asking.refuse('retort-missing', 'body.retort');
  const retorts = new Set([...seen].map((id) => asking.book.charges.all.get(id)?.retort));
  if (body.retort !== undefined && seen.size > 0 && !retorts.has(body.retort)) asking.refuse('retort-differs', 'body.retort');
  asking.weight(body.mercury?.weight, 'body.mercury.weight');
  asking.known(body.mercury?.vessel, 'vessel', 'body.mercury.vessel');
  asking.weight(body.water, 'body.water');
  let before: string | undefined;
  for (const stage of stages) {
    const at = body[stage];
    if (at === undefined) continue;
    asking.moment(at, `body.${stage}`);
    if (before !== undefined) inOrder(before, at, `body.${stage}`, asking);
    before = at;
  }
  if (body.finishFrom !== undefined && body.finishTo !== undefined)
    inOrder(body.finishFrom, body.finishTo, 'body.finishTo', asking);
  for (const [i, { at }] of (body.noted ?? []).entries()) asking.moment(at, `body.noted[${i}].at`);
  const { aimedC } = body;
  if (aimedC && aimedC.from > aimedC.to) asking.refuse('aim-reversed', 'body.aimedC.to', { from: aimedC.from, to: aimedC.to });
}

function inOrder(before: string, at: string, field: string, asking: Asking): void {
  if (compareMoments(at, before) < 0)
    asking.refuse('times-reversed', field, { before: before.slice(11, 16), at: at.slice(11, 16) });
}
