/**
 * Masses as they are read off a scale: decimal text with its unit, kept exactly, beside an exact value in grams and whole micrograms.
 * A bare "oz" or "ton" is never guessed. Unit factors: National Institute of Standards and Technology, Handbook 44, appendix C,
 * section 4 (exact by the 1959 international pound of 453.59237 g; read through the references of methods.md section 4).
 */
import { type Decimal, dividedWhole, decimalFromText as decimal, isZero, plus, rounded, shifted, times, toNumber, toText, zero } from './decimal.ts';
import { bad, good, type Problem, problem, type Result } from './result.ts';

/** Units a mass may be written in. Case-sensitive. `gr dwt ozt lbt` are troy, `oz-av lb` avoirdupois. */
export const massUnits = ['ug', 'mg', 'g', 'kg', 't', 'gr', 'dwt', 'ozt', 'lbt', 'oz-av', 'lb', 'short-ton', 'long-ton'] as const;
export type MassUnit = (typeof massUnits)[number];

const exact = (text: string): Decimal => decimal(text) ?? zero;

/** Grams in one of each unit, exact. */
export const gramsPer: Readonly<Record<MassUnit, Decimal>> = {
  ug: exact('0.000001'),
  mg: exact('0.001'),
  g: exact('1'),
  kg: exact('1000'),
  t: exact('1000000'),
  gr: exact('0.06479891'),
  dwt: exact('1.55517384'),
  ozt: exact('31.1034768'),
  lbt: exact('373.2417216'),
  'oz-av': exact('28.349523125'),
  lb: exact('453.59237'),
  'short-ton': exact('907184.74'),
  'long-ton': exact('1016046.9088'),
};

/** A mass as somebody wrote it down. */
export interface Mass {
  /** Exactly as read: "2.50 g" stays "2.50 g". */
  readonly text: string;
  /** Grams, exact. */
  readonly grams: Decimal;
  /** Whole micrograms, half-even: a safe integer. What the book adds. */
  readonly ug: number;
}

/** Longest text looked at; a mass never needs more. */
const longest = 80;
const word = /^(?:\d+(?:\.\d+)?|\.\d+)$/;

/**
 * Reads "955.6 g" or "18 ozt 18 dwt": plain decimals with a point, each followed by its unit, units from large to small and each once.
 * Problems: mass-not-text, mass-empty, mass-too-long, mass-bare-ounce, mass-bare-ton, mass-sign, mass-comma, mass-exponent, mass-unit, mass-no-unit,
 * mass-number, mass-order, mass-too-large.
 */
export function massFromText(text: unknown, field: string): Result<Mass> {
  if (typeof text !== 'string') return bad(problem('mass-not-text', field));
  const tidy = text.trim();
  const refuse = (code: string, data: Problem['data'] = {}): Result<Mass> => bad(problem(code, field, { read: tidy.slice(0, 40), ...data }));
  if (tidy === '') return refuse('mass-empty');
  if (tidy.length > longest) return refuse('mass-too-long');
  const words = tidy.split(/\s+/).flatMap((w) => w.match(/^[\d.]+(?=[A-Za-z])|[A-Za-z].*$|.+/g) ?? []);
  let grams = zero;
  let last = Number.POSITIVE_INFINITY;
  for (let i = 0; i < words.length; i += 2) {
    const number = words[i] ?? '';
    const unit = words[i + 1];
    if (number.includes(',')) return refuse('mass-comma');
    if (/^[-+−]/.test(number)) return refuse('mass-sign');
    if (/^\d+(\.\d+)?$/.test(number) && unit !== undefined && /^e[-+]?\d+$/i.test(unit)) return refuse('mass-exponent');
    if (/^[\d.]+e[-+]?\d+$/i.test(number)) return refuse('mass-exponent');
    if (!word.test(number) || number.startsWith('.')) return refuse('mass-number', { part: number });
    if (unit === undefined) return refuse('mass-no-unit');
    if (/^(oz|ozs|ounces?)\.?$/i.test(unit)) return refuse('mass-bare-ounce');
    if (/^(tons?)\.?$/i.test(unit)) return refuse('mass-bare-ton');
    const factor = (gramsPer as Record<string, Decimal | undefined>)[unit];
    if (!factor || !Object.hasOwn(gramsPer, unit)) return refuse('mass-unit', { unit });
    const size = toNumber(factor);
    if (size >= last) return refuse('mass-order');
    last = size;
    grams = plus(grams, times(exact(number), factor));
  }
  const ug = Number(rounded(shifted(grams, 6), 0).digits);
  if (!Number.isSafeInteger(ug)) return refuse('mass-too-large');
  return good({ text: tidy, grams, ug });
}

/** Micrograms as gram text with all its places: 955600000 becomes "955.600000". */
export const gramsText = (ug: number): string => toText({ digits: BigInt(ug), places: 6 });

/** The mass in another unit, unrounded as a double. */
export function massIn(grams: Decimal, unit: MassUnit): number {
  // 40 guard digits before the one conversion to a double
  return toNumber(shifted({ digits: dividedWhole(shifted(grams, 40), gramsPer[unit]), places: 0 }, -40));
}

/** Troy notation "18 ozt 18 dwt 0 gr": grains half-even to 4 places, trailing zeros dropped, carried at 24 grains and 20 pennyweights. */
export function troyText(grams: Decimal): string {
  const perTenThousandth = times(gramsPer.gr, exact('0.0001'));
  const tenThousandths = dividedWhole(grams, perTenThousandth);
  const sign = tenThousandths < 0n ? '-' : '';
  const size = tenThousandths < 0n ? -tenThousandths : tenThousandths;
  const perDwt = 240000n;
  const dwt = size / perDwt;
  const grains = toText({ digits: size % perDwt, places: 4 }).replace(/\.?0+$/, '');
  return `${sign}${dwt / 20n} ozt ${dwt % 20n} dwt ${grains} gr`;
}

/** Whether nothing at all was read. */
export const isNothing = (mass: Mass): boolean => isZero(mass.grams);
