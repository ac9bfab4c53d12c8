/** The sheet of a vessel: what is typed, and the body it makes. */
import type { Body } from '../../core/kinds/index.ts';
import { textOr } from '../../daybook/form.svelte.ts';
import { noWeighing, type WeighingEntry, weighingEntry, weightOf } from '../shared/weighing-entry.ts';

export interface VesselValues {
  label: string;
  use: string;
  mercury: string;
  tare: WeighingEntry;
  seal: string;
  place: string;
  note: string;
  out: string;
}

export const noVessel = (scale = ''): VesselValues => ({
  label: '',
  use: '',
  mercury: '',
  tare: noWeighing(scale),
  seal: '',
  place: '',
  note: '',
  out: '',
});

export const vesselValues = (body: Body<'vessel'>): VesselValues => ({
  label: body.label,
  use: body.use,
  mercury: body.mercury ?? '',
  tare: body.tare ? weighingEntry(body.tare) : noWeighing(),
  seal: body.seal ?? '',
  place: body.place ?? '',
  note: body.note ?? '',
  out: body.out ?? '',
});

export const vesselBody = (v: VesselValues, of?: string): Record<string, unknown> => ({
  of,
  label: textOr(v.label),
  use: textOr(v.use),
  mercury: textOr(v.mercury),
  tare: weightOf(v.tare),
  seal: textOr(v.seal),
  place: textOr(v.place),
  note: textOr(v.note),
  out: textOr(v.out),
});
