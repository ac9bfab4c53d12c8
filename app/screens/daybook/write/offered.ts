/**
 * Which of the things a field may name are worth offering when something new is written: vessels still in use, drums for waste, charges whose sponge
 * can still be melted. It only shortens lists; what may be kept is asked in the core.
 */
import type { Book } from '../../../core/book/book.ts';
import { latest } from '../../../core/book/registers.ts';
import { registerKinds } from '../../../core/kinds/index.ts';
import type { Named } from '../../../words/daybook-shapes.ts';

type Fits = (id: string) => boolean;

/** Still in use on that day. */
function inUse(book: Book, to: Named, day: string): Fits {
  const kind = registerKinds.find((k) => k === to);
  if (!kind) return () => true;
  return (id) => {
    const thing = book.registers[kind].get(id);
    if (!thing) return false;
    const body = latest(thing as Parameters<typeof latest>[0]).body as { out?: string; left?: string };
    const last = body.out ?? body.left;
    return last === undefined || last >= day;
  };
}

function charges(book: Book, kind: string): Fits {
  const melted = new Set(book.current.of('melt').flatMap((r) => r.body.sponges.map((s) => s.charge)));
  const unmade = new Set(book.current.of('unmake').map((r) => r.body.charge));
  const left = new Set(
    book.current.of('transfer').flatMap((r) => (r.body.way === 'out' && r.body.charge ? [r.body.charge] : [])),
  );
  return (id) => {
    const fired = (book.charges.all.get(id)?.firings.length ?? 0) > 0;
    if (book.current.byId.get(id)?.struck) return false;
    if (kind === 'unmake') return !fired && !unmade.has(id);
    if (kind === 'melt') return fired && !melted.has(id) && !left.has(id);
    if (kind === 'transfer') return fired;
    return true;
  };
}

/** Whether a thing is offered for this field of a new entry of this kind, on that day. */
export function offeredFor(book: Book, kind: string, field: string, to: Named, day: string): Fits {
  if (to === 'charge') return charges(book, kind);
  const used = inUse(book, to, day);
  if (to !== 'vessel' || field !== 'drum') return used;
  const isDrum: Fits = (id) => {
    const thing = book.registers.vessel.get(id);
    return thing !== undefined && latest(thing).body.use === 'drum' && used(id);
  };
  // a site without a drum on its register may still put waste into something
  return [...book.registers.vessel.keys()].some(isDrum) ? isDrum : used;
}
