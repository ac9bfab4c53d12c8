/** The way on after an entry was kept: of the registers and the standing the first step that is still open, of a count its account, of mercury moved the day's list. */
import { type Kind, registerKinds } from '../../core/kinds/index.ts';
import type { Daybook } from '../../daybook/book.svelte.ts';
import { mercuryRoom } from '../../words/screens-mercury.ts';
import { site } from '../../words/screens-site.ts';
import { todayWords } from '../../words/today.ts';
import { nextStep } from './first-steps.ts';
import { roomHref } from './places.ts';

export interface Onward {
  readonly text: string;
  readonly href: string;
  /** The one thing to do next. */
  readonly main: boolean;
}

const backToToday: readonly Kind[] = ['receipt', 'issue', 'return', 'spill', 'found'];

/** Ways on from a kept entry; none from kinds that have a way of their own. */
export function onwardFrom(daybook: Pick<Daybook, 'book' | 'clock'>, kind: Kind): readonly Onward[] {
  if (kind === 'stock-take') return [{ text: mercuryRoom.toRoom, href: roomHref('mercury'), main: true }];
  if (backToToday.includes(kind)) return [{ text: todayWords.title, href: roomHref('today'), main: false }];
  if (kind !== 'standing' && !registerKinds.some((k) => k === kind)) return [];
  const next = nextStep(daybook.book, daybook.clock.now());
  return [
    ...(next ? [{ text: todayWords.steps[next.key].label, href: next.href, main: true }] : []),
    { text: site.backToSite, href: roomHref('site'), main: false },
  ];
}
