/**
 * One reading of mercury in air, exactly as the meter showed it, with its `<` or `>`, and what a stranger needs to judge it: meter and zero, where
 * and for whom, what was going on, when. What was not written down stays not recorded and is never filled in. Fields: safety.md 4.
 */
import { rule } from '../read.ts';
import { id, label, moment } from '../shapes.ts';
import { z } from '../zod.ts';

/** Somebody's breathing zone; a place where people work; a place where visitors go. */
export const airSamples = ['personal', 'area', 'visitor-area'] as const;
export const airHeights = ['floor', 'waist', 'breathing'] as const;
export const airUnits = ['mg/m3', 'ug/m3'] as const;
export const airModes = ['mean', 'spot'] as const;
export const onOff = ['on', 'off', 'none'] as const;
export const openShut = ['open', 'shut', 'none'] as const;
/** What a reading is asked about; the answer is that it was read so. */
export const airQuestions = ['temperature', 'figure', 'unit'] as const;

export type AirSample = (typeof airSamples)[number];
export type AirUnit = (typeof airUnits)[number];
export type AirQuestion = (typeof airQuestions)[number];

/** As displayed: digits with a point, with `<` or `>` before them where the meter showed it. */
const shown = z.string().refine(...rule((t: string) => /^[<>]?\d{1,9}(\.\d{1,9})?$/.test(t), 'air-figure'));
const unmarked = z.string().refine(...rule((t: string) => /^\d{1,9}(\.\d{1,9})?$/.test(t), 'decimal-text'));
/** A zero may drift below nothing. */
const zeroShown = z.string().refine(...rule((t: string) => /^[<-]?\d{1,9}(\.\d{1,9})?$/.test(t), 'air-figure'));

interface Shape {
  readonly sample: AirSample;
  readonly person?: string | undefined;
  readonly place?: string | undefined;
  readonly mode?: 'mean' | 'spot' | undefined;
  readonly to?: string | undefined;
  readonly max?: string | undefined;
}

const at = (field: keyof Shape, holds: (reading: Shape) => boolean, code: string) => {
  const path: PropertyKey[] = [field];
  return [holds, { params: { code }, path }] as const;
};

export const airReading = z
  .strictObject({
    sample: z.enum(airSamples),
    /** Whose breathing zone; personal readings only. */
    person: id.optional(),
    place: label.optional(),
    height: z.enum(airHeights).optional(),
    /** From the source. */
    distanceM: z.number().min(0).max(1000).optional(),
    activity: label.optional(),
    fans: z.enum(onOff).optional(),
    hood: z.enum(onOff).optional(),
    doors: z.enum(openShut).optional(),
    meter: id.optional(),
    /** What it showed in clean air, in the unit of the reading. */
    zero: z.strictObject({ before: zeroShown.optional(), after: zeroShown.optional() }).optional(),
    temperatureC: z.number().min(-38.83).max(356.62).optional(),
    pressureKpa: z.number().min(40).max(115).optional(),
    /** Whether the meter itself brings its figure to 25 °C and 101.325 kPa. */
    normalised: z.enum(['yes', 'no']).optional(),
    mode: z.enum(airModes).optional(),
    from: moment,
    /** Left out: a momentary reading. */
    to: moment.optional(),
    /** The shift it belongs to, as worked. */
    shift: z.strictObject({ from: moment, to: moment }).optional(),
    unit: z.enum(airUnits),
    shows: shown,
    /** Highest momentary value seen while an average was taken, in the same unit. */
    max: unmarked.optional(),
    /** The charge of the run it was taken at. */
    run: id.optional(),
    sampler: id.optional(),
    /** What it was asked about and is so all the same. */
    sure: z.array(z.enum(airQuestions)).max(airQuestions.length).optional(),
    note: label.optional(),
  })
  .refine(...at('person', (r) => r.sample !== 'personal' || r.person !== undefined, 'air-person-missing'))
  .refine(...at('person', (r) => r.sample === 'personal' || r.person === undefined, 'air-person-not-asked'))
  .refine(...at('place', (r) => r.sample === 'personal' || r.place !== undefined, 'air-place-missing'))
  .refine(...at('to', (r) => r.mode !== 'mean' || r.to !== undefined, 'air-no-end'))
  .refine(...at('to', (r) => r.mode !== 'spot' || r.to === undefined, 'air-spot-lasts'))
  .refine(...at('max', (r) => r.max === undefined || r.to !== undefined, 'air-max-of-spot'));
