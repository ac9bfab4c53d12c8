/**
 * What a reading of the air says as figures: milligrams a cubic metre, its sign, its time. The text as shown stays the record; nothing here rounds it,
 * and a temperature or pressure that was not recorded is never taken to be anything. Bounds of what is asked about are the project's own.
 */
import { idlhMgM3 } from '../air-reading.ts';
import { type Decimal, decimalFromText, shifted, toNumber, zero } from '../decimal.ts';
import type { AirQuestion, AirUnit } from '../kinds/air-reading.ts';
import type { Body } from '../kinds/index.ts';
import { minutesOf } from '../time.ts';
import { saturation } from '../vapour.ts';

export interface AirFigure {
  readonly mgM3: Decimal;
  readonly mark: '<' | '>' | undefined;
}

const inMg = (text: string, unit: AirUnit): Decimal => {
  const value = decimalFromText(text) ?? zero;
  return unit === 'ug/m3' ? shifted(value, -3) : value;
};

/** The figure of a reading, exact, in mg/m³, with its sign. */
export function airFigure({ shows, unit }: Pick<Body<'air-reading'>, 'shows' | 'unit'>): AirFigure {
  const mark = shows.startsWith('<') ? '<' : shows.startsWith('>') ? '>' : undefined;
  return { mgM3: inMg(mark === undefined ? shows : shows.slice(1), unit), mark };
}

/** The highest momentary figure, mg/m³; undefined where none was written down. */
export const airMax = ({ max, unit }: Pick<Body<'air-reading'>, 'max' | 'unit'>): Decimal | undefined =>
  max === undefined ? undefined : inMg(max, unit);

/** Minutes a reading lasted; 0 for a momentary one. */
export const airMinutes = ({ from, to }: Pick<Body<'air-reading'>, 'from' | 'to'>): number =>
  to === undefined ? 0 : (minutesOf(to) ?? 0) - (minutesOf(from) ?? 0);

/** Warmer than this, or colder than that, is asked about: 68 is a room in °F. */
export const askedAboveC = 45;
export const askedBelowC = -30;

/** What air holds at most at the stated temperature, mg/m³; null where none is stated: then it cannot be told. */
export const saturatedAt = (temperatureC: number | undefined): number | null =>
  temperatureC === undefined ? null : saturation(temperatureC).mgM3;

/** The larger of the figure and the highest seen, mg/m³. A `<` figure shows nothing that high. */
function highest(body: Body<'air-reading'>): number {
  const { mgM3, mark } = airFigure(body);
  return Math.max(mark === '<' ? 0 : toNumber(mgM3), toNumber(airMax(body) ?? zero));
}

/** Whether it is at or above the figure that is immediately dangerous to life or health. */
export const atIdlh = (body: Body<'air-reading'>): boolean => highest(body) >= idlhMgM3;

/** What a reading is asked about by itself: a temperature that looks like °F, more mercury than air of that temperature holds. */
export function questionsOf(body: Body<'air-reading'>): readonly Exclude<AirQuestion, 'unit'>[] {
  const asked: Exclude<AirQuestion, 'unit'>[] = [];
  const { temperatureC } = body;
  if (temperatureC !== undefined && (temperatureC > askedAboveC || temperatureC < askedBelowC)) asked.push('temperature');
  const holds = saturatedAt(temperatureC);
  if (holds !== null && highest(body) > holds) asked.push('figure');
  return asked;
}

/**
 * Whether the figure looks a thousandfold off against what the same meter showed before: all of those within a factor of 100 of each other, this one
 * between 300 and 3000 times larger or smaller than their middle one. At least three earlier readings without a sign are wanted.
 */
export function looksThousandfold(body: Body<'air-reading'>, earlier: readonly Body<'air-reading'>[]): boolean {
  const own = airFigure(body);
  const figures = earlier
    .map(airFigure)
    .filter((f) => f.mark === undefined)
    .map((f) => toNumber(f.mgM3))
    .filter((mg) => mg > 0)
    .toSorted((a, b) => a - b);
  const [least = 0, most = 0, middle = 0] = [figures[0], figures.at(-1), figures[figures.length >> 1]];
  const mg = toNumber(own.mgM3);
  if (figures.length < 3 || own.mark !== undefined || mg === 0 || most > 100 * least) return false;
  const apart = Math.max(mg / middle, middle / mg);
  return apart >= 300 && apart <= 3000;
}
