/**
 * The mercury balance of one period: what is unaccounted for, how well that is known, and how it stands to nothing and to the site's usual rate. Shared
 * errors are added with their signs before they are squared; a sealed flask in both stocks adds nothing. A balance never says anything about
 * the air. Method: methods.md 1.1 to 1.3 (JCGM 100:2008, equation (13); detectable loss at 95 % power and 5 % false alarm).
 */
import { compare, type Decimal, decimalFromText, isZero, minus, negative, plus, sum, times, toNumber, zero } from './decimal.ts';
import { quotient } from './ratio.ts';

export const roles = ['opening', 'receipt', 'found', 'removal', 'release', 'closing'] as const;
export type Role = (typeof roles)[number];

/** One line of the account, grams, exact. */
export interface BalanceItem {
  readonly role: Role;
  readonly g: Decimal;
  /** The item's own standard uncertainty. */
  readonly u: Decimal;
  /** The shared source of error it stands under, and how strongly (its grams when left out). */
  readonly group?: string | undefined;
  readonly coefficient?: Decimal | undefined;
  /** Number of an unbroken seal. */
  readonly sealedId?: string | undefined;
}

export type Level = 'none' | 'warn' | 'act';

/** A difference, its squared standard uncertainty, exact. */
export interface Difference {
  readonly g: Decimal;
  readonly variance: Decimal;
}

export interface BalanceFigures {
  readonly totals: Readonly<Record<Role, Decimal>>;
  readonly unaccounted: Difference;
  readonly randomVariance: Decimal;
  readonly groupCoefficients: ReadonlyMap<string, Decimal>;
  /** With what was measurably released counted as lost; the release's own errors drop out. */
  readonly lost: Difference;
}

const exact = (text: string): Decimal => decimalFromText(text) ?? zero;

/** Smallest loss found with 95 % power at 5 % false alarm, in standard uncertainties: twice 1.644853627. */
export const detectableFactor = exact('3.289707254');

const entersStock = (role: Role): boolean => role === 'opening' || role === 'receipt' || role === 'found';
const square = (a: Decimal): Decimal => times(a, a);

/** Items that stand under one seal, once in what came in and once in what left or stayed: they cancel exactly. */
export function sealedPairs(items: readonly BalanceItem[]): ReadonlySet<BalanceItem> {
  const sealed = items.filter((item) => item.sealedId !== undefined && item.role !== 'release');
  const count = (seal: string | undefined, entering: boolean) =>
    sealed.filter((item) => item.sealedId === seal && entersStock(item.role) === entering).length;
  const seals = new Set(sealed.map((item) => item.sealedId));
  const paired = new Set([...seals].filter((seal) => count(seal, true) === 1 && count(seal, false) === 1));
  return new Set(sealed.filter((item) => paired.has(item.sealedId)));
}

interface Errors {
  readonly random: Decimal;
  readonly coefficients: ReadonlyMap<string, Decimal>;
  readonly variance: Decimal;
}

function errorsOf(items: readonly BalanceItem[], groups: ReadonlyMap<string, Decimal>): Errors {
  const coefficients = new Map([...groups.keys()].map((name) => [name, zero]));
  for (const { group, coefficient, g, role } of items) {
    if (group === undefined) continue;
    const own = coefficient ?? g;
    coefficients.set(group, plus(coefficients.get(group) ?? zero, entersStock(role) ? own : negative(own)));
  }
  const random = sum(items.map((item) => square(item.u)));
  const shared = sum([...coefficients].map(([name, c]) => square(times(c, groups.get(name) ?? zero))));
  return { random, coefficients, variance: plus(random, shared) };
}

/** The account's figures; `groups` gives each shared source's relative standard uncertainty. */
export function balance(items: readonly BalanceItem[], groups: ReadonlyMap<string, Decimal>): BalanceFigures {
  const of = (role: Role) => sum(items.filter((item) => item.role === role).map((item) => item.g));
  const totals = {
    opening: of('opening'),
    receipt: of('receipt'),
    found: of('found'),
    removal: of('removal'),
    release: of('release'),
    closing: of('closing'),
  };
  const into = sum([totals.opening, totals.receipt, totals.found]);
  const lost = minus(minus(into, totals.removal), totals.closing);
  const sealed = sealedPairs(items);
  const open = items.filter((item) => !sealed.has(item));
  const all = errorsOf(open, groups);
  return {
    totals,
    unaccounted: { g: minus(lost, totals.release), variance: all.variance },
    randomVariance: all.random,
    groupCoefficients: all.coefficients,
    lost: {
      g: lost,
      variance: errorsOf(
        open.filter((item) => item.role !== 'release'),
        groups,
      ).variance,
    },
  };
}

/** Standard uncertainty in grams. */
export const uOfDifference = (difference: Difference): number => Math.sqrt(toNumber(difference.variance));

/** The difference in standard uncertainties; null when there is none to hold it against. */
export const zOf = (difference: Difference): number | null =>
  isZero(difference.variance) ? null : toNumber(difference.g) / uOfDifference(difference);

/** Above 2 standard uncertainties warn, above 3 act, either sign; compared exactly. Null when the uncertainty is zero. */
export function levelOf(difference: Difference): Level | null {
  if (isZero(difference.variance)) return null;
  const above = (k: string) => compare(square(difference.g), times(square(exact(k)), difference.variance)) > 0;
  return above('3') ? 'act' : above('2') ? 'warn' : 'none';
}

/** What is unaccounted for beyond the site's usual rate, grams per tonne with its own uncertainty. */
export function excessOver(unaccounted: Difference, oreT: Decimal, usual: { readonly gT: Decimal; readonly u: Decimal }) {
  const expected = times(oreT, usual.gT);
  return {
    expected,
    excess: {
      g: minus(unaccounted.g, expected),
      variance: plus(unaccounted.variance, square(times(oreT, usual.u))),
    } satisfies Difference,
  };
}

/** Grams per tonne; null without ore above zero. */
export const perTonneOre = (g: Decimal, oreT: Decimal | undefined): number | null =>
  oreT && oreT.digits > 0n ? quotient(g, oreT) : null;
