/** The site's standing in words, for the head of every paper: what it says it holds and does with mercury, and that only the site says so. */
import type { Book } from '../core/book/book.ts';
import { standingAt } from '../core/book/site.ts';
import type { Body } from '../core/kinds/index.ts';
import { dayText } from '../words/dates.ts';
import { doneWords, frameWords, heldWords, standingWords } from '../words/papers.ts';

type Standing = Body<'standing'>;
interface Where {
  readonly place?: string | undefined;
  readonly since?: string | undefined;
  readonly until?: string | undefined;
}

const whereText = ({ place, since, until }: Where): string =>
  [
    place === undefined ? '' : standingWords.at(place),
    since === undefined ? '' : `, ${standingWords.since(dayText(since))}`,
    until === undefined ? '' : `, ${standingWords.until(dayText(until))}`,
  ].join('');

const doneText = (item: Standing['done'][number]): string => {
  const { authority } = item;
  const named = authority
    ? `: ${standingWords.authority(
        authority.name,
        authority.number,
        authority.expiry === 'none stated' ? standingWords.noExpiry : standingWords.expires(dayText(authority.expiry)),
        authority.covers,
      )}`
    : '';
  return `${doneWords[item.what]}${named}${whereText(item)}`;
};

/** Sentences that state the standing in force at that moment, or that none was stated. */
export function standingText(book: Book, moment: string): [name: string, text: string][] {
  const inForce = standingAt(book.current, moment);
  const stated = inForce ?? book.current.of('standing')[0];
  if (!stated) return [[frameWords.stated, frameWords.noStanding]];
  const { held, done, note } = stated.body;
  const on = dayText(stated.happened);
  return [
    [frameWords.held, held.map((item) => `${heldWords[item.what]}${whereText(item)}`).join('; ')],
    [frameWords.done, done.map(doneText).join('; ')],
    ...(note === undefined ? [] : [[frameWords.standingNote, note] as [string, string]]),
    [frameWords.stated, inForce ? frameWords.standingStated(on) : frameWords.standingLater(on)],
  ];
}
