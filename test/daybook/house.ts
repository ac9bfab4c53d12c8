/** A small host in memory and a clock that stands still, for tests of the window's side of the record. */
import type { Answer, AskOf, Question } from '../../app/contract.ts';
import type { Draft, Entry } from '../../app/core/entry.ts';
import { bad, good, problem } from '../../app/core/result.ts';
import type { Host } from '../../app/daybook/host.ts';

export const clock = { now: () => '2026-03-14T09:20+13:00', offsetAt: () => '+13:00' } as const;

export const bookId = 'book-of-a-test';

/** A hash that is none, but has the shape of one. */
const mark = (n: number): string => n.toString(16).padStart(64, '0');

export interface TestHost extends Host {
  /** What reached the disk. */
  readonly lines: Entry[];
  /** Every question, in order. */
  readonly asked: Question[];
  /** From now on the host does not answer. */
  silent: boolean;
  /** From now on the host was started anew: it answers, and does not let this window in. */
  shut: boolean;
}

/** A host with one open daybook and one desk. */
export function testHost(before: readonly Draft[] = [], writable = true): TestHost {
  const lines: Entry[] = [];
  const asked: Question[] = [];
  const put = (draft: Draft): Entry => {
    const known = lines.find((e) => e.id === draft.id);
    if (known) return known;
    const entry = {
      ...draft,
      format: 1,
      desk: 'desk-of-a-test',
      n: lines.length + 1,
      prev: mark(lines.length),
      written: clock.now(),
      hash: mark(lines.length + 1),
    } as Entry;
    lines.push(entry);
    return entry;
  };
  for (const draft of before) put(draft);
  const desk = () => ({ desk: 'desk-of-a-test', entries: lines.length, endMark: mark(lines.length) });
  const state = () => ({
    version: '0',
    recents: [],
    newIn: 'Documents',
    now: clock.now(),
    book: {
      id: bookId,
      name: 'Test Battery',
      folder: 'Test Battery',
      ownDesk: 'desk-of-a-test',
      desks: [desk()],
      writable,
      notices: [],
    },
  });
  const host: TestHost = {
    lines,
    asked,
    silent: false,
    shut: false,
    async ask<Q extends Question>(question: Q, body: AskOf<Q>): Promise<Answer<Q>> {
      asked.push(question);
      if (host.silent) return bad(problem('host-silent', ''));
      if (host.shut) return bad(problem('no-session', ''));
      const value =
        question === 'entries'
          ? new TextEncoder().encode(lines.map((e) => `${JSON.stringify(e)}\n`).join(''))
          : question === 'keep'
            ? { entry: put(body as Draft), desk: desk() }
            : question === 'evidence'
              ? { file: `${mark((body as Uint8Array)[0] ?? 0)}.png` }
              : state();
      return good(value) as Answer<Q>;
    },
  };
  return host;
}

/** A draft of some kind with its envelope filled in. */
export const draftOf = (id: string, kind: string, body: Record<string, unknown>, by: string | null = null): Draft => ({
  id,
  happened: '2026-03-01T08:00+13:00',
  by,
  kind,
  body,
});

export const keeper = draftOf('person-keeper', 'person', { name: 'Keeper', roles: ['keeper'] }, 'person-keeper');
