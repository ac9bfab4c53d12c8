/** Every kind of entry by its name on disk, with the schema of its body. To add a kind: a file beside this one, and a line here. */
import { type Draft, draft } from '../entry.ts';
import { problemsIn, read } from '../read.ts';
import { bad, good, type Problem, type Result, under } from '../result.ts';
import type { z } from '../zod.ts';
import { airReading } from './air-reading.ts';
import { assay } from './assay.ts';
import { authority } from './authority.ts';
import { barKept } from './bar-kept.ts';
import { battery, plate } from './battery.ts';
import { correction, note, strike } from './book.ts';
import { charge } from './charge.ts';
import { checkList, stopRules } from './check-list.ts';
import { cleanUp } from './clean-up.ts';
import { cleaning, squeeze } from './cleaning.ts';
import { closing } from './closing.ts';
import { crushing } from './crushing.ts';
import { firing } from './firing.ts';
import { transfer, waste } from './leaving.ts';
import { limit } from './limit.ts';
import { melt, unmake } from './melt.ts';
import { found, issue, returned, spill } from './mercury.ts';
import { meter } from './meter.ts';
import { outTurn } from './out-turn.ts';
import { parcel } from './parcel.ts';
import { person } from './person.ts';
import { plateWork } from './plate-work.ts';
import { receipt } from './receipt.ts';
import { retort } from './retort.ts';
import { scale } from './scale.ts';
import { settlement } from './settlement.ts';
import { siteFigures } from './site-figures.ts';
import { checkDue, incident, openDay, scaleCheck } from './site-life.ts';
import { siteNotation } from './site-notation.ts';
import { leadTimes, retention, siteNumbers } from './site-says.ts';
import { standing } from './standing.ts';
import { stockTake } from './stock-take.ts';
import { vessel } from './vessel.ts';

export const kinds = {
  standing,
  person,
  scale,
  vessel,
  battery,
  plate,
  retort,
  meter,
  parcel,
  authority,
  limit,
  crushing,
  receipt,
  issue,
  return: returned,
  'clean-up': cleanUp,
  cleaning,
  squeeze,
  'plate-work': plateWork,
  charge,
  unmake,
  firing,
  melt,
  assay,
  settlement,
  'bar-kept': barKept,
  transfer,
  'out-turn': outTurn,
  waste,
  spill,
  found,
  incident,
  'open-day': openDay,
  'scale-check': scaleCheck,
  'check-due': checkDue,
  'check-list': checkList,
  'stop-rules': stopRules,
  'site-figures': siteFigures,
  'site-numbers': siteNumbers,
  retention,
  'lead-times': leadTimes,
  'site-notation': siteNotation,
  'air-reading': airReading,
  'stock-take': stockTake,
  closing,
  note,
  correction,
  strike,
} as const;

export type Kind = keyof typeof kinds;
/** The body of a kind. */
export type Body<K extends Kind> = z.infer<(typeof kinds)[K]>;

/** Kinds that keep a register: a later entry with `of` restates the thing from its time on. */
export const registerKinds = [
  'person',
  'scale',
  'vessel',
  'battery',
  'plate',
  'retort',
  'meter',
  'parcel',
  'authority',
  'limit',
] as const satisfies readonly Kind[];
export type RegisterKind = (typeof registerKinds)[number];

export const isKind = (kind: string): kind is Kind => Object.hasOwn(kinds, kind);

/** Reads an asker's draft: envelope first, then the body by its kind. Problems name their field (`body.lots[0].weight.gross`). */
export function draftFrom(value: unknown): Result<Draft> {
  const outer = read(draft, value);
  if (!outer.ok) return outer;
  const { kind, body } = outer.value;
  if (!isKind(kind)) return bad({ code: 'unknown-kind', field: 'kind', data: { kind } });
  const inner = bodyFrom(kind, body);
  return inner.ok ? good({ ...outer.value, body: inner.value as Record<string, unknown> }) : inner;
}

const inBody = (p: Problem): Problem => ({ ...p, field: under('body', p.field).replace('.[', '[') });

/** Reads a body by its kind. */
export function bodyFrom<K extends Kind>(kind: K, body: unknown): Result<Body<K>> {
  const got = read(kinds[kind] as unknown as z.ZodType<Body<K>>, body);
  return got.ok ? got : bad(...got.problems.map(inBody));
}

/** Every problem of a body that is only looked at; none: it is one of its kind. */
export const bodyProblems = (kind: Kind, body: unknown): readonly Problem[] => problemsIn(kinds[kind], body).map(inBody);
