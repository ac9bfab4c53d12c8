/** The sheet of a retort with its pipe and condenser: what is typed, and the body it makes. */
import type { Body } from '../../core/kinds/index.ts';
import { numberOr, textOr } from '../../daybook/form.svelte.ts';
import { type MassEntry, massEntry, massText, noMass } from '../../parts/mass-entry.ts';
import { noWeighing, type WeighingEntry, weighingEntry, weightOf } from '../shared/weighing-entry.ts';

export interface RetortValues {
  label: string;
  capacity: MassEntry;
  usualRatio: string;
  ratioBand: string;
  lossBand: string;
  lossAllowance: MassEntry;
  owner: string;
  loanFrom: string;
  loanSince: string;
  loanUntil: string;
  brushedOn: string;
  got: WeighingEntry;
  brushedVessel: string;
  inspectedOn: string;
  inspectedDue: string;
  inspectedBy: string;
  place: string;
  note: string;
  out: string;
}

export const noRetort = (scale = ''): RetortValues => ({
  label: '',
  capacity: noMass(),
  usualRatio: '',
  ratioBand: '',
  lossBand: '',
  lossAllowance: noMass(),
  owner: '',
  loanFrom: '',
  loanSince: '',
  loanUntil: '',
  brushedOn: '',
  got: noWeighing(scale),
  brushedVessel: '',
  inspectedOn: '',
  inspectedDue: '',
  inspectedBy: '',
  place: '',
  note: '',
  out: '',
});

const asTyped = (n: number | undefined): string => (n === undefined ? '' : String(n));

export const retortValues = (body: Body<'retort'>): RetortValues => ({
  label: body.label,
  capacity: massEntry(body.capacity),
  usualRatio: asTyped(body.usualRatio),
  ratioBand: asTyped(body.ratioBand),
  lossBand: asTyped(body.lossBand),
  lossAllowance: massEntry(body.lossAllowance),
  owner: body.owner ?? '',
  loanFrom: body.loan?.from ?? '',
  loanSince: body.loan?.since ?? '',
  loanUntil: body.loan?.until ?? '',
  brushedOn: body.brushed?.on ?? '',
  got: body.brushed ? weighingEntry(body.brushed.got) : noWeighing(),
  brushedVessel: body.brushed?.vessel ?? '',
  inspectedOn: body.inspected?.on ?? '',
  inspectedDue: body.inspected?.due ?? '',
  inspectedBy: body.inspected?.by ?? '',
  place: body.place ?? '',
  note: body.note ?? '',
  out: body.out ?? '',
});

/** A member of which any part was typed; the schema names what it still lacks. */
const any = (member: Record<string, unknown>): Record<string, unknown> | undefined =>
  Object.values(member).some((v) => v !== undefined) ? member : undefined;

export const retortBody = (v: RetortValues, of?: string): Record<string, unknown> => ({
  of,
  label: textOr(v.label),
  capacity: massText(v.capacity),
  owner: textOr(v.owner),
  loan: any({ from: textOr(v.loanFrom), since: textOr(v.loanSince), until: textOr(v.loanUntil) }),
  brushed: any({ on: textOr(v.brushedOn), got: weightOf(v.got), vessel: textOr(v.brushedVessel) }),
  inspected: any({ on: textOr(v.inspectedOn), due: textOr(v.inspectedDue), by: textOr(v.inspectedBy) }),
  usualRatio: numberOr(v.usualRatio),
  ratioBand: numberOr(v.ratioBand),
  lossBand: numberOr(v.lossBand),
  lossAllowance: massText(v.lossAllowance),
  place: textOr(v.place),
  note: textOr(v.note),
  out: textOr(v.out),
});
