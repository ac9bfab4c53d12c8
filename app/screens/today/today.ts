/**
 * What is open, due or out of step on a day, and the next thing to write up, in the order a keeper needs it. A function of the book, the clock
 * and the drafts; it decides nothing and forgets nothing: what is not told here still stands in the daybook.
 */
import type { Book } from '../../core/book/book.ts';
import { reservations } from '../../core/book/flags.ts';
import type { Lot } from '../../core/book/lots.ts';
import type { Hidden } from '../../core/book/may-see.ts';
import type { Run } from '../../core/book/runs.ts';
import { standingAt } from '../../core/book/site.ts';
import { sum } from '../../core/decimal.ts';
import { uOf } from '../../core/measured.ts';
import { dayNumber, dayOf } from '../../core/time.ts';
import type { DraftRow } from '../../daybook/drafts.ts';
import { entryName } from '../../words/daybook-naming.ts';
import { exactMass } from '../../words/daybook-weights.ts';
import { withU } from '../../words/figures.ts';
import { findingWords } from '../../words/findings.ts';
import { flagText } from '../../words/flags.ts';
import { type SectionKey, todayWords as words } from '../../words/today.ts';
import { barHref } from '../bullion/hrefs.ts';
import { waitingOf } from '../bullion/waiting.ts';
import { everything, findingHref } from '../daybook/address.ts';
import { newHref } from '../retort/routes.ts';
import { firstSteps } from '../shared/first-steps.ts';
import { chargeHref, entryHref, standingHref } from '../shared/places.ts';
import { draftPlace } from './drafts.ts';
import { type Ahead, aheadAt, dueAt } from './due.ts';
import { recentFlags, runsToLookAt } from './looks.ts';

export interface Item {
  readonly key: string;
  readonly text: string;
  /** Said under it. */
  readonly more?: string;
  readonly href?: string | undefined;
  readonly mark?: { readonly text: string; readonly tone: 'fault' | 'warm' | 'cool' | 'plain' };
  /** A first step that may be left for later, or was. */
  readonly skip?: 'offered' | 'skipped';
}

export interface Section {
  readonly key: SectionKey;
  readonly items: readonly Item[];
}

export interface Today {
  /** The one thing to write up next. */
  readonly next: { readonly text: string; readonly href: string };
  readonly sections: readonly Section[];
  /** How far ahead things that fall due were looked for. */
  readonly ahead: Ahead;
}

/** Flags told at most; the daybook has them all. */
const mostFlags = 12;
/** Labels named of the lots of one clean-up. */
const mostLabels = 8;

const grams = (lots: readonly Lot[]): string => exactMass(sum(lots.map((lot) => lot.grams)));
const daysSince = (moment: string, now: string): number =>
  Math.max(0, (dayNumber(dayOf(now)) ?? 0) - (dayNumber(dayOf(moment)) ?? 0));
const chargeName = (book: Book, run: Run): string => run.charges.map((charge) => entryName(book, charge.id)).join(' + ');

/** The first steps as lines, those done or left for later marked; null once all are done. */
function stepItems(book: Book, now: string, skipped: ReadonlySet<string>): readonly (Item & { readonly done: boolean })[] | null {
  const steps = firstSteps(book, now);
  if (!steps) return null;
  return steps.map(({ key, done, href }) => {
    const later = !done && skipped.has(key);
    const mark = done ? words.stepDone : later ? words.stepLater : '';
    return {
      key,
      done,
      href,
      text: words.steps[key].label,
      more: words.steps[key].why,
      ...(mark === '' ? {} : { mark: { text: mark, tone: 'plain' as const } }),
      ...(done ? {} : { skip: later ? ('skipped' as const) : ('offered' as const) }),
    };
  });
}

function safeItems(book: Book, now: string): Item[] {
  const by = new Map<string, Lot[]>();
  for (const lot of book.lots.all.values()) {
    if (lot.fate !== 'in-safe' || book.current.byId.get(lot.madeBy)?.struck) continue;
    const list = by.get(lot.madeBy);
    if (list) list.push(lot);
    else by.set(lot.madeBy, [lot]);
  }
  return [...by].map(([id, lots]) => ({
    key: id,
    href: entryHref(id),
    text: words.lots(lots.length, lots.length > mostLabels ? '' : lots.map((lot) => lot.label).join(', '), grams(lots)),
    more: `${entryName(book, id)}, ${words.since(daysSince(lots[0]?.made ?? now, now))}`,
  }));
}

const gramsOf = (run: Run): string => exactMass(run.charge.grams);

function runItems(book: Book, runs: readonly Run[]): Item[] {
  return runs.map((run) => {
    const gap = run.last?.gap;
    const figures = run.last?.figures;
    return {
      key: run.id,
      href: chargeHref(run.id),
      text: gap
        ? words.gap(chargeName(book, run), withU(gap.grams, gap.uKnown ? uOf(gap.net) / 1e6 : null), gramsOf(run))
        : chargeName(book, run),
      more: (figures?.findings ?? []).map((finding) => findingWords[finding].says).join(' '),
    };
  });
}

function flagItems(book: Book, now: string): Item[] {
  const flags = recentFlags(book, now);
  const items: Item[] = flags.slice(0, mostFlags).map((flag, i) => ({
    key: `${flag.entry} ${flag.code} ${i}`,
    href: entryHref(flag.entry),
    text: entryName(book, flag.entry),
    more: flagText(flag),
    ...(reservations.has(flag.code) ? { mark: { text: words.reservation, tone: 'fault' as const } } : {}),
  }));
  if (flags.length > mostFlags)
    items.push({
      key: 'more',
      href: findingHref({ ...everything, marked: true }),
      text: words.allMarked(flags.length - mostFlags),
    });
  return items;
}

/**
 * The day's page. `now` is the daybook's clock; `drafts` what forms left unfinished; `sees` whether who writes may see what is not for everybody; `skipped` the
 * first steps that somebody here left for later: they are told, and are not the next thing.
 */
export function todayOf(
  book: Book,
  now: string,
  drafts: readonly DraftRow[],
  sees: (what: Hidden) => boolean = () => false,
  skipped: ReadonlySet<string> = new Set(),
): Today {
  const stated = standingAt(book.current, now) !== null;
  const steps = stepItems(book, now, skipped);
  const safe = safeItems(book, now);
  const toFire = book.runs.filter((run) => run.awaits.includes('firing'));
  const awaiting = book.runs.filter((run) => run.awaits.length > 0 && !run.awaits.includes('firing'));
  const lotsWaiting = [...book.lots.all.values()].filter((lot) => lot.fate === 'in-safe').length;
  const waitsFor = (run: Run): string => run.awaits.map((what) => words.awaited[what]).join(', ');

  const all: Section[] = [
    {
      key: 'standing',
      items: stated || steps ? [] : [{ key: 'standing', text: words.stateIt, more: words.standing, href: standingHref }],
    },
    { key: 'first-steps', items: steps ?? [] },
    { key: 'safe', items: safe },
    {
      key: 'to-fire',
      items: toFire.map((run) => ({
        key: run.id,
        href: chargeHref(run.id),
        text: words.toFire(chargeName(book, run), gramsOf(run)),
        more: words.since(daysSince(run.charges[0]?.reading.happened ?? now, now)),
      })),
    },
    {
      key: 'awaiting',
      items: awaiting.map((run) => ({
        key: run.id,
        href: chargeHref(run.id),
        text: words.waitsFor(chargeName(book, run), waitsFor(run)),
      })),
    },
    {
      key: 'bullion',
      items: waitingOf(book).unassayed.map((bar) => ({
        key: bar.id,
        href: barHref(bar.id),
        text: `${bar.label}, ${exactMass(bar.weighed.grams)}`,
        more: words.since(daysSince(bar.melt.happened, now)),
      })),
    },
    { key: 'not-closed', items: runItems(book, runsToLookAt(book, now)) },
    {
      key: 'loose-firings',
      items: book.charges.unclaimed
        .filter((firing) => !firing.reading.struck)
        .map((firing) => ({ key: firing.id, href: entryHref(firing.id), text: words.looseFiring(firing.reading.happened) })),
    },
    { key: 'flags', items: flagItems(book, now) },
    {
      key: 'due',
      items: dueAt(book, now, sees).map((due, i) => ({
        key: `${i} ${due.text}`,
        href: due.href,
        text: due.text,
        mark:
          due.inDays < 0
            ? { text: words.overdue(-due.inDays), tone: 'fault' as const }
            : { text: words.dueIn(due.inDays), tone: 'warm' as const },
      })),
    },
    {
      key: 'drafts',
      items: drafts.map((row) => {
        const place = draftPlace(book, row);
        return { key: row.form, href: place.href, text: words.draft(place.name, place.touched) };
      }),
    },
    {
      key: 'not-understood',
      items:
        book.current.notUnderstood.length === 0
          ? []
          : [
              {
                key: 'unknown',
                href: findingHref({ ...everything, kind: 'unknown' }),
                text: words.unknown(book.current.notUnderstood.length),
              },
            ],
    },
  ];

  const step = steps?.find((s) => s.skip === 'offered');
  const [fire] = toFire;
  const [weigh] = awaiting;
  const next = step
    ? { text: words.nextOf.steps(step.text), href: step.href ?? standingHref }
    : !stated
      ? { text: words.stateIt, href: standingHref }
      : weigh
        ? { text: words.nextOf.weigh(chargeName(book, weigh), waitsFor(weigh)), href: chargeHref(weigh.id) }
        : fire
          ? { text: words.nextOf.fire(chargeName(book, fire)), href: chargeHref(fire.id) }
          : lotsWaiting > 0
            ? { text: words.nextOf.charge(lotsWaiting), href: newHref('charge') }
            : { text: words.nextOf.cleanUp, href: newHref('clean-up') };
  return { next, sections: all.filter((section) => section.items.length > 0), ahead: aheadAt(book, now, sees) };
}
