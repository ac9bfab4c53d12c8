/** What an entry touches, as links in groups: counted periods, closings, runs, lots, yields, papers, movements. */
import type { Book } from '../../core/book/book.ts';
import { latest, nameOf } from '../../core/book/registers.ts';
import { type OnPaper, touchesOf } from '../../core/book/touches.ts';
import { dayText } from '../../words/dates.ts';
import { daybookWords } from '../../words/daybook.ts';
import { entryName } from '../../words/daybook-naming.ts';
import { fateNames } from '../../words/retort.ts';
import { papersRoom } from '../../words/screens-papers.ts';
import { traceWords as words } from '../../words/trace.ts';
import { periodHref } from '../mercury/address.ts';
import { traceHref } from '../mercury/trace/href.ts';
import { chargeHref, entryHref, paperHref, roomHref } from '../shared/places.ts';

export interface StandLink {
  readonly text: string;
  readonly href: string;
}
export interface StandGroup {
  readonly title: string;
  readonly links: readonly StandLink[];
}

function paperLink(book: Book, { paper, id }: OnPaper): StandLink {
  const { title } = papersRoom.papers[paper];
  const vessel = book.registers.vessel.get(id);
  const of = id === '' ? '' : vessel ? nameOf(latest(vessel).body) : entryName(book, id);
  return {
    text: of === '' ? title : `${title}: ${of}`,
    href: id === '' ? `${roomHref('papers')}/${paper}` : paperHref(paper, id),
  };
}

/** The groups that have something in them. */
export function standsIn(book: Book, entry: string): readonly StandGroup[] {
  const { own, resting, periods, closings, runs, lots, yields, papers } = touchesOf(book, entry);
  const rests = new Map<string, number>();
  for (const { entry: by } of resting) rests.set(by, (rests.get(by) ?? 0) + 1);
  const groups: StandGroup[] = [
    { title: words.moves, links: own[0] ? [{ text: words.movesOwn(own.length), href: traceHref(own[0].entry) }] : [] },
    {
      title: words.resting,
      links: [...rests].map(([by, n]) => ({ text: words.restsOn(entryName(book, by), n), href: traceHref(by) })),
    },
    {
      title: words.periods,
      links: periods.map(({ period }) => ({
        text: words.period(period.from === null ? '' : dayText(period.from), dayText(period.to ?? '')),
        href: periodHref({ from: period.from ?? '', to: period.to ?? '' }),
      })),
    },
    {
      title: words.closings,
      links: closings.map((c) => ({ text: words.closing(c.body.version, dayText(c.to)), href: entryHref(c.id) })),
    },
    { title: words.runs, links: runs.map((run) => ({ text: entryName(book, run.id), href: chargeHref(run.id) })) },
    {
      title: words.lots,
      links: lots.map((lot) => ({ text: daybookWords.lotFate(lot.label, fateNames[lot.fate]), href: entryHref(lot.madeBy) })),
    },
    {
      title: words.yields,
      links: yields.map((id) => ({ text: words.yieldOf(entryName(book, id)), href: entryHref(id) })),
    },
    { title: words.papers, links: papers.map((paper) => paperLink(book, paper)) },
  ];
  return groups.filter(({ links }) => links.length > 0);
}
