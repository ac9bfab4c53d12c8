/** Why nothing can be written in this window, and which addresses lead to a form: links there are held back with the reason. */
import type { Daybook } from '../../daybook/book.svelte.ts';
import { shell } from '../../words/screens-shell.ts';
import { newThing, partsOf } from './places.ts';

/** The reason in words; null while this window may write. */
export function noWriting(
  daybook: Pick<Daybook, 'open' | 'elsewhere' | 'reach'> & Partial<Pick<Daybook, 'state'>>,
): string | null {
  if (daybook.reach === 'shut') return shell.reasons.shut;
  if (daybook.open !== null && !daybook.open.writable) return shell.reasons.locked;
  if (daybook.state?.lock?.reads) return shell.reasons.reads;
  return daybook.elsewhere ? shell.reasons.elsewhere : null;
}

const deeds: ReadonlySet<string> = new Set(['correct', 'strike', 'note']);

/** Whether an address of the window leads to a form for an entry, rather than to something to read. */
export function leadsToWriting(href: string): boolean {
  const [room, first, second = ''] = partsOf(href);
  if (room === 'daybook')
    return first === 'note' || (first === 'write' && second !== '') || deeds.has(second.split('?', 1)[0] ?? '');
  if (room === 'site') return second === newThing;
  return room === 'retort' && first === 'new';
}
