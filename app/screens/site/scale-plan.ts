/** The sheet of a scale and its calibration: what is typed, and the body it makes. */
import type { Body } from '../../core/kinds/index.ts';
import { numberOr, textOr } from '../../daybook/form.svelte.ts';
import { type MassEntry, massEntry, massText, noMass } from '../../parts/mass-entry.ts';

export interface ScaleValues {
  label: string;
  maximum: MassEntry;
  d: MassEntry;
  U: MassEntry;
  at: MassEntry;
  due: string;
  k: string;
  number: string;
  on: string;
  s: MassEntry;
  linearity: MassEntry;
  accuracyClass: string;
  e: MassEntry;
  tolerance: string;
  place: string;
  out: string;
}

export const noScale = (): ScaleValues => ({
  label: '',
  maximum: noMass(),
  d: noMass(),
  U: noMass(),
  at: noMass(),
  due: '',
  k: '',
  number: '',
  on: '',
  s: noMass(),
  linearity: noMass(),
  accuracyClass: '',
  e: noMass(),
  tolerance: '',
  place: '',
  out: '',
});

export const scaleValues = (body: Body<'scale'>): ScaleValues => ({
  label: body.label,
  maximum: massEntry(body.maximum),
  d: massEntry(body.d),
  U: massEntry(body.certificate?.U),
  at: massEntry(body.certificate?.at),
  due: body.certificate?.due ?? '',
  k: body.certificate?.k === undefined ? '' : String(body.certificate.k),
  number: body.certificate?.number ?? '',
  on: body.certificate?.on ?? '',
  s: massEntry(body.s),
  linearity: massEntry(body.linearity),
  accuracyClass: body.accuracy?.class ?? '',
  e: massEntry(body.accuracy?.e),
  tolerance: body.tolerance === undefined ? '' : String(body.tolerance),
  place: body.place ?? '',
  out: body.out ?? '',
});

/** A member of which any part was typed; the schema names what it still lacks. */
const any = (member: Record<string, unknown>): Record<string, unknown> | undefined =>
  Object.values(member).some((v) => v !== undefined) ? member : undefined;

export const scaleBody = (v: ScaleValues, of?: string): Record<string, unknown> => ({
  of,
  label: textOr(v.label),
  maximum: massText(v.maximum),
  d: massText(v.d),
  s: massText(v.s),
  linearity: massText(v.linearity),
  certificate: any({
    U: massText(v.U),
    k: numberOr(v.k),
    at: massText(v.at),
    number: textOr(v.number),
    on: textOr(v.on),
    due: textOr(v.due),
  }),
  accuracy: any({ class: textOr(v.accuracyClass), e: massText(v.e) }),
  tolerance: numberOr(v.tolerance),
  place: textOr(v.place),
  out: textOr(v.out),
});
