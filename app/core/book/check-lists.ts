/**
 * The questions asked at a piece of work: those that come with the program, as the site has worded, left out or added to them. A list lets nobody
 * through: it is asked and recorded. What an old entry was asked is told by the list of its own time.
 */
import { compareMoments } from '../time.ts';
import type { Current, Reading } from './current.ts';
import { type Flag, flag } from './flags.ts';

/** A question by the name it is kept under; `asks` is put so that "yes" is the good answer. */
export interface Question {
  readonly check: string;
  readonly asks: string;
}
/** Where a question stands. */
export type Origin = 'shipped' | 'worded' | 'added';
export interface AskedQuestion extends Question {
  readonly origin: Origin;
}
export interface LeftOut extends Question {
  readonly why: string;
}
export interface CheckListNow {
  readonly questions: readonly AskedQuestion[];
  readonly leftOut: readonly LeftOut[];
}

/** The list that holds: the shipped one with the site's changes. A change to a question that is not there changes nothing. */
export function listFrom(shipped: readonly Question[], site: Reading<'check-list'>['body'] | null): CheckListNow {
  const worded = new Map((site?.worded ?? []).map((q) => [q.check, q.asks]));
  const out = new Map((site?.leftOut ?? []).map((q) => [q.check, q.why]));
  const asked = shipped.map(({ check, asks }): AskedQuestion => {
    const own = worded.get(check);
    return { check, asks: own ?? asks, origin: own === undefined ? 'shipped' : 'worded' };
  });
  const names = new Set(shipped.map((q) => q.check));
  const added = (site?.added ?? []).filter((q) => !names.has(q.check));
  return {
    questions: [
      ...asked.filter((q) => !out.has(q.check)),
      ...added.map(({ check, asks }): AskedQuestion => ({ check, asks, origin: 'added' })),
    ],
    leftOut: asked.flatMap(({ check, asks }) => {
      const why = out.get(check);
      return why === undefined ? [] : [{ check, asks, why }];
    }),
  };
}

/** The site's own words for a question at that moment, by the name it is kept under; undefined where it had none. */
export function wordingAt(current: Current, check: string, at: string): string | undefined {
  const works = new Map<string, string | undefined>();
  let before: string | undefined;
  for (const { body, happened } of current.of('check-list')) {
    if (compareMoments(happened, at) > 0) break;
    const own = [...(body.added ?? []), ...(body.worded ?? [])].find((q) => q.check === check)?.asks;
    works.set(body.work, own);
    before = own ?? before;
  }
  return [...works.values()].find((own) => own !== undefined) ?? before;
}

/** Flags of every check answered "no" in the kinds that the runs do not read. */
export function workCheckFlags(current: Current): readonly Flag[] {
  const kinds = ['clean-up', 'plate-work', 'cleaning', 'found', 'melt', 'transfer', 'open-day'] as const;
  return kinds.flatMap((kind) =>
    current
      .of(kind)
      .flatMap((r) =>
        (r.body.checks ?? [])
          .filter((c) => c.answer === 'no')
          .map((c) => flag('check-no', r.id, { check: c.check, note: c.note ?? '' })),
      ),
  );
}

/** A flag of a question in the site's own words carries them, as they were when it was asked. */
export function inSiteWords(current: Current, given: Flag): Flag {
  if (given.code !== 'check-no') return given;
  const asks = wordingAt(current, String(given.data.check), current.byId.get(given.entry)?.happened ?? '');
  return asks === undefined ? given : { ...given, data: { ...given.data, asks } };
}
