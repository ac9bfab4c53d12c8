/** Estimates as values: by a named method, or by the share of mercury in a weighed thing. */
import { massFromText } from '../../mass.ts';
import { type Measured, measured, scaled } from '../../measured.ts';

/** An estimate as a value: its shared error belongs to the method, its own to this estimate. */
export function estimated(
  e: { mass: string; method: string; sharedU?: number | undefined; ownU?: number | undefined },
  source: string,
): Measured {
  const mass = massFromText(e.mass, '');
  const ug = mass.ok ? mass.value.ug : 0;
  return measured(ug, [
    [`method:${e.method}`, ug * (e.sharedU ?? 0)],
    [source, ug * (e.ownU ?? 0)],
  ]);
}

/** Mercury in a weighed thing by its share; without one, anything between nothing and all of it. */
export function byShare(
  weight: Measured,
  share: { value: number; u?: number | undefined } | undefined,
  source: string,
): Measured {
  const value = share?.value ?? 0.5;
  const u = share ? (share.u ?? 0) : 0.5 / Math.sqrt(3);
  const rough = scaled(weight, value);
  return measured(Math.round(rough.ug), [...rough.parts, [source, Math.abs(weight.ug) * u]]);
}
