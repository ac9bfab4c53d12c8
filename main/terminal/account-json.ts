/** The account as the contract has it: grams, unrounded; what cannot be computed is said in the place of the number. */
import {
  type Account,
  detectableFactor,
  levelOf,
  perTonne,
  type StockLine,
  stockKind,
  zOf,
} from '../../app/core/book/account.ts';
import type { Book } from '../../app/core/book/book.ts';
import { adjustmentsInto, everyClosing, onClosedBasisUg } from '../../app/core/book/closings.ts';
import { type Doubt, doubtsOf } from '../../app/core/book/doubts.ts';
import type { LossPath } from '../../app/core/book/places.ts';
import { standingAt } from '../../app/core/book/site.ts';
import { type Excess, excessOf, type NoUsual, type RateBasis } from '../../app/core/book/usual.ts';
import { added, type Measured, uOf } from '../../app/core/measured.ts';
import { compareWithBound } from '../../app/core/time.ts';
import { accountReasons, accountWords, noUsualText } from '../../app/words/account.ts';
import { entryLine } from '../../app/words/daybook-line.ts';
import { doubtText } from '../../app/words/doubts.ts';
import { flagText } from '../../app/words/flags.ts';
import { placeNames } from '../../app/words/places.ts';
import type { Desk } from '../host/daybook-folder.ts';
import { leftOut } from '../host/left-out.ts';

export interface NotComputable {
  readonly not_computable: string;
}
export type Level = 'none' | 'warn' | 'act';

export interface AccountJson {
  readonly from: string | null;
  readonly to: string | null;
  readonly standing: string;
  readonly opening_g: number;
  readonly receipts_g: number;
  readonly removals_g: number;
  readonly closing_g: number;
  /** Of the receipts: flasks opened, invoice against weighed. */
  readonly invoice_g: number;
  readonly found_g: number;
  readonly released_g: number;
  readonly unaccounted_g: number;
  readonly u_g: number;
  /** Not accounted for with what was spilled and not gathered up. */
  readonly lost_g: number;
  readonly lost_u_g: number;
  readonly z: number | NotComputable;
  readonly detectable_g: number;
  readonly loss_level: Level | NotComputable;
  /** What the site's usual rate lets expect, and what lies beyond it; left out where there is no usual rate. */
  readonly expected_g?: number;
  readonly expected_u_g?: number;
  readonly excess_g?: number;
  readonly excess_u_g?: number;
  readonly excess_z?: number | NotComputable;
  readonly usual?: {
    readonly rate_g: number;
    readonly rate_u_g: number;
    readonly per: RateBasis;
    readonly amount: number;
    readonly periods: readonly {
      readonly from: string | null;
      readonly to: string;
      readonly opening: string;
      readonly closing: string;
    }[];
  };
  readonly excess_level: Level | NotComputable;
  /** What the period takes over from closed ones, each by its closing; above nothing where less was lost there than was put down. */
  readonly adjustments: readonly {
    readonly closing: string;
    readonly version: number;
    readonly to: string;
    readonly g: number;
    readonly entries: readonly string[];
  }[];
  /** Not accounted for on the figures as they were closed before; left out where nothing is taken over. */
  readonly unaccounted_as_closed_g?: number;
  readonly ore_t: number | NotComputable;
  readonly per_tonne_g: number | NotComputable;
  readonly per_tonne_u_g: number | NotComputable;
  readonly stocks: readonly {
    readonly place: string;
    readonly kind: string;
    readonly g: number;
    readonly u_g: number;
    readonly basis: string;
    readonly id: string;
  }[];
  readonly paths: readonly {
    readonly path: LossPath;
    readonly low_g: number;
    readonly high_g: number;
    readonly posted_g: number;
  }[];
  /** What makes most of the uncertainty, the largest first. */
  readonly doubts: readonly {
    readonly kind: Doubt['kind'];
    readonly of: string;
    readonly entry: string | null;
    readonly share: number;
    readonly cut: Doubt['cut'];
    readonly text: string;
  }[];
  readonly reservations: readonly { readonly entry: string; readonly code: string; readonly text: string }[];
  readonly end_marks: readonly { readonly desk: string; readonly entries: number; readonly end_mark: string }[];
}

/** Sources of doubt that are told; the rest is small beside them. */
const mostDoubts = 12;

const gramsIn = (value: Measured): number => value.ug / 1e6;
const not = (why: string): NotComputable => ({ not_computable: why });

/** The standing in force at the end of the period; one stated only later still tells, and is all there is. */
function standingOf(book: Book, to: string | null): string {
  const stated = book.current.of('standing');
  const inForce =
    to === null
      ? stated.at(-1)
      : to.length > 10
        ? (standingAt(book.current, to) ?? undefined)
        : stated.findLast((r) => compareWithBound(r.happened, to) <= 0);
  const told = inForce ?? stated[0];
  return told ? entryLine(book, told) : accountWords.noStanding;
}

/** Reservations with their sentences, each once, and what is not understood here. */
function reservationsOf(book: Book, account: Account): AccountJson['reservations'] {
  const wanted = new Set(account.reservations.map((r) => `${r.entry} ${r.code}`));
  const flags = [...book.flags.values()].flat().filter((f) => wanted.has(`${f.entry} ${f.code}`));
  const strange = book.current.notUnderstood.map((e) => ({
    entry: e.id,
    code: 'not-understood',
    text: accountWords.notUnderstood(e.kind),
  }));
  const ends = account.uncounted.map((end) => ({ entry: '', code: `no-count-at-${end}`, text: accountWords.uncounted[end] }));
  return [...ends, ...flags.map((f) => ({ entry: f.entry, code: f.code, text: flagText(f) })), ...strange];
}

/** What of the desks is not counted at all. */
const leftOutRows = (desks: readonly Desk[]): AccountJson['reservations'] =>
  desks.flatMap((desk) => leftOut(desk).map((text) => ({ entry: '', code: 'desk-in-part', text })));

/** The second question: is it more than is usual here. */
function againstUsual(got: Excess | NoUsual) {
  if ('why' in got) return { excess_level: not(noUsualText(got)) };
  const { usual, amount, expected, excess } = got;
  const z = zOf(excess);
  return {
    expected_g: gramsIn(expected),
    expected_u_g: uOf(expected) / 1e6,
    excess_g: gramsIn(excess),
    excess_u_g: uOf(excess) / 1e6,
    excess_z: z ?? not(accountReasons.noUncertainty),
    usual: {
      rate_g: gramsIn(usual.rate),
      rate_u_g: uOf(usual.rate) / 1e6,
      per: usual.basis,
      amount,
      periods: usual.periods.map((p) => ({
        from: p.period.from,
        to: p.closing.happened,
        opening: p.opening?.id ?? '',
        closing: p.closing.id,
      })),
    },
    excess_level: z === null ? not(accountReasons.noUncertainty) : levelOf(z),
  };
}

/** What is taken over from closed periods. */
function takenOver(book: Book, account: Account): Pick<AccountJson, 'adjustments' | 'unaccounted_as_closed_g'> {
  const carried = adjustmentsInto(book, account.period);
  if (carried.length === 0) return { adjustments: [] };
  const closings = new Map(everyClosing(book).map((c) => [c.id, c]));
  return {
    adjustments: carried.map(({ of, ug, steps }) => ({
      closing: of,
      version: closings.get(of)?.body.version ?? 0,
      to: closings.get(of)?.to ?? '',
      g: ug / 1e6,
      entries: steps.map(({ entry }) => entry.id),
    })),
    unaccounted_as_closed_g: onClosedBasisUg(Math.round(account.unaccounted.ug), carried) / 1e6,
  };
}

/** The figures of an account, by the names of the contract. */
export function accountJson(book: Book, account: Account, desks: readonly Desk[]): AccountJson {
  const { unaccounted, ore, period } = account;
  const u = uOf(unaccounted) / 1e6;
  const z = zOf(unaccounted);
  const lost = added(unaccounted, account.released);
  const rate = perTonne(unaccounted, ore);
  const names = placeNames(
    book,
    account.stocks.map((line) => line.place),
  );
  return {
    from: period.from,
    to: period.to,
    standing: standingOf(book, period.to),
    opening_g: gramsIn(account.opening),
    receipts_g: gramsIn(account.receipts),
    removals_g: gramsIn(account.removals),
    closing_g: gramsIn(account.closing),
    invoice_g: gramsIn(account.invoiced),
    found_g: gramsIn(account.found),
    released_g: gramsIn(account.released),
    unaccounted_g: gramsIn(unaccounted),
    u_g: u,
    lost_g: gramsIn(lost),
    lost_u_g: uOf(lost) / 1e6,
    z: z ?? not(accountReasons.noUncertainty),
    detectable_g: detectableFactor * u,
    loss_level: z === null ? not(accountReasons.noUncertainty) : levelOf(z),
    ...againstUsual(excessOf(book, account)),
    ...takenOver(book, account),
    ore_t: ore === null ? not(accountReasons.noOre) : ore.ug / 1e12,
    per_tonne_g: rate?.g ?? not(accountReasons.noOre),
    per_tonne_u_g: rate?.uG ?? not(accountReasons.noOre),
    stocks: account.stocks.map((line: StockLine) => ({
      place: names.get(line.place) ?? line.place,
      kind: stockKind(line),
      g: gramsIn(line.mercury),
      u_g: uOf(line.mercury) / 1e6,
      basis: line.basis,
      id: line.place,
    })),
    paths: account.paths.map((p) => ({
      path: p.path,
      low_g: p.lowUg / 1e6,
      high_g: p.highUg / 1e6,
      posted_g: gramsIn(p.posted),
    })),
    doubts: doubtsOf(book, unaccounted)
      .slice(0, mostDoubts)
      .map(({ kind, of, entry, share, cut }) => ({
        kind,
        of,
        entry,
        share,
        cut,
        text: doubtText(book, { kind, of, entry, cut }),
      })),
    reservations: [...leftOutRows(desks), ...reservationsOf(book, account)],
    end_marks: desks.map((d) => ({ desk: d.desk, entries: d.entries, end_mark: d.endMark })),
  };
}
