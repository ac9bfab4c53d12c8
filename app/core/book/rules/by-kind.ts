/** The rules of each kind of entry, by its name. A kind without a line here has no rules beyond its shape. */
import { type Kind, type RegisterKind, registerKinds } from '../../kinds/index.ts';
import { nameOf, type Registered, stateAt } from '../registers.ts';
import { airRules } from './air.ts';
import type { Asking, Rules } from './asking.ts';
import { bullionRules } from './bullion.ts';
import { checkedRules, checkListRules } from './checks.ts';
import { closingRules } from './closing.ts';
import { meltRules } from './melt.ts';
import { chargeRules, firingRules } from './run.ts';
import { stockTakeRules } from './stock-take.ts';
import { madeLots, yearRules } from './year.ts';

const rules: Rules = {
  vessel: (body, asking) => asking.weight(body.tare, 'body.tare'),
  scale: ({ certificate }, asking) => {
    asking.pastDay(certificate?.on, 'body.certificate.on');
    if (certificate?.on !== undefined && certificate.due !== undefined && certificate.due < certificate.on)
      asking.refuse('due-before', 'body.certificate.due', { on: certificate.on, due: certificate.due });
  },
  retort: ({ brushed, inspected }, asking) => {
    asking.weight(brushed?.got, 'body.brushed.got');
    asking.known(brushed?.vessel, 'vessel', 'body.brushed.vessel');
    asking.pastDay(brushed?.on, 'body.brushed.on');
    asking.pastDay(inspected?.on, 'body.inspected.on');
  },
  receipt: (body, asking) => {
    asking.known(body.vessel, 'vessel', 'body.vessel');
    asking.weight(body.weight, 'body.weight');
  },
  'clean-up': (body, asking) => {
    asking.known(body.parcel, 'parcel', 'body.parcel');
    madeLots(body.lots, 'body.lots', asking);
    for (const [i, { plates = [] }] of body.lots.entries())
      for (const [n, id] of plates.entries()) asking.known(id, 'plate', `body.lots[${i}].plates[${n}]`);
    asking.weight(body.strained?.weight, 'body.strained.weight');
    asking.known(body.strained?.vessel, 'vessel', 'body.strained.vessel');
    for (const [i, id] of (body.present ?? []).entries()) asking.known(id, 'person', `body.present[${i}]`);
  },
  ...yearRules,
  ...meltRules,
  ...bullionRules,
  ...airRules,
  'stock-take': stockTakeRules,
  charge: chargeRules,
  firing: firingRules,
  closing: closingRules,
  'check-list': checkListRules,
  'stop-rules': ({ setBy }, asking) => asking.known(setBy, 'person', 'body.setBy'),
  'site-figures': ({ falseAlarm, residualShare, lotDays }, asking) => {
    if (!falseAlarm && !residualShare && !lotDays) asking.refuse('no-figure', 'body');
  },
  note: ({ about }, asking) => {
    if (about !== undefined && !asking.book.current.byId.has(about))
      asking.refuse('unknown-id', 'body.about', { id: about, wanted: 'entry' });
  },
  strike: ({ strikes }, asking) => {
    const target = asking.book.current.byId.get(strikes);
    if (!target) asking.refuse('unknown-id', 'body.strikes', { id: strikes, wanted: 'entry' });
    else if (target.kind === 'strike') asking.refuse('strike-of-strike', 'body.strikes');
    else if (target.struck) asking.refuse('already-struck', 'body.strikes');
  },
};

/** Two things of one register under one name could not be told apart on a form. */
function registerRules(
  kind: RegisterKind,
  body: { of?: string; label?: string; name?: string },
  happened: string,
  asking: Asking,
): void {
  asking.known(body.of, kind, 'body.of');
  const name = nameOf(body).trim();
  const things = asking.book.registers[kind].values() as Iterable<Registered<RegisterKind>>;
  for (const thing of things) {
    const itself = thing.id === body.of || thing.states.some((state) => state.entry === asking.instead);
    if (!itself && nameOf(stateAt(thing, happened).body as { label?: string; name?: string }).trim() === name)
      asking.refuse('name-taken', kind === 'person' ? 'body.name' : 'body.label', { name });
  }
}

/** Asks all the rules of a kind. */
export function rulesOf(kind: Kind, body: unknown, happened: string, asking: Asking): void {
  const register = registerKinds.find((k) => k === kind);
  checkedRules(body, asking);
  if (register) registerRules(register, body as { of?: string }, happened, asking);
  (rules[kind] as ((body: unknown, asking: Asking, happened: string) => void) | undefined)?.(body, asking, happened);
}
