/** What one person breathed and the days of a person's checks, in the window: told by role, and nowhere in lists, papers' sentences or the due list. */
import { expect, test } from 'vitest';
import { paperNames } from '../../app/contract.ts';
import { readBook } from '../../app/core/book/book.ts';
import type { Reading } from '../../app/core/book/current.ts';
import { maySee } from '../../app/core/book/may-see.ts';
import { outOfStepOf } from '../../app/core/book/out-of-step.ts';
import { kinds } from '../../app/core/kinds/index.ts';
import { roles } from '../../app/core/kinds/person.ts';
import { hiddenHere } from '../../app/screens/daybook/hidden.ts';
import { csvOf, sectionsOf } from '../../app/screens/mercury/out-of-step/list.ts';
import { subjectsOf, withheldPapers } from '../../app/screens/papers/subjects.ts';
import { dueAt } from '../../app/screens/today/due.ts';
import { entryLine } from '../../app/words/daybook-line.ts';
import { BookMaker } from '../core/book-maker.ts';

const at = '2026-06-01T12:00+13:00';

function site() {
  const book = BookMaker.site();
  const officer = book.add('officer', 'person', { name: 'Watchful Officer', roles: ['safety-officer'] });
  const breathed = book.add('breathed', 'air-reading', {
    sample: 'personal',
    person: officer,
    unit: 'mg/m3',
    shows: '0.0317',
    from: '2026-03-05T09:00+13:00',
    to: '2026-03-05T10:00+13:00',
    temperatureC: 20,
  } as never);
  const health = book.add('health', 'check-due', {
    what: 'health-surveillance',
    person: officer,
    done: 'yes',
    next: '2026-04-17',
  });
  const place = book.add('kept', 'check-due', { what: 'extinguisher', done: 'yes', next: '2026-05-02' });
  const corrected = book.add('corrected', 'correction', {
    corrects: health,
    body: { what: 'health-surveillance', person: officer, done: 'yes', next: '2026-04-18' },
    why: 'misread',
  });
  return { read: readBook(book.entries), officer, keeper: book.keeper, breathed, health, place, corrected };
}
const { read, officer, keeper, breathed, health, place, corrected } = site();
const line = (id: string, whole = false) => entryLine(read, read.current.byId.get(id) as Reading, whole);

test('the sentence of such an entry names neither the person nor the figure nor the day; who writes it is read it whole', () => {
  for (const id of [breathed, health]) expect(line(id)).toContain('shown to the safety officer');
  expect(`${line(breathed)} ${line(health)}`).not.toMatch(/Watchful|0\.0317|April/);
  expect(line(breathed, true)).toMatch(/0\.0317.*Watchful Officer/);
  expect(line(health, true)).toMatch(/Watchful Officer.*18 April 2026/);
});

test('out of step names no person and no day, in the window and in its table', () => {
  const items = outOfStepOf(read, { at, lotDays: 30 });
  const shown = JSON.stringify(sectionsOf(read, items)) + csvOf(read, items);
  expect(shown).toContain('Health surveillance of one person is past its day');
  expect(shown).not.toMatch(/Watchful|2026-04-1[78]|1[78] April/);
});

test('the due list tells the checks of the place and none of a person', () => {
  const due = dueAt(read, at).map((d) => d.text);
  expect(due).toContain('Fire extinguisher: 2 May 2026');
  expect(due.join()).not.toMatch(/Health|April/);
});

test('the page of such an entry, and of its correction, is shown to the safety officer only', () => {
  const as = (writer: string | null, id: string) =>
    hiddenHere({ book: read, writer, clock: { now: () => at, offsetAt: () => '+13:00' } }, id);
  for (const id of [breathed, health, corrected]) {
    expect(as(officer, id)).toBeNull();
    for (const other of [keeper, null]) expect(as(other, id)).toContain('safety officer');
  }
  expect(as(keeper, place)).toBeNull();
});

test('what a person breathed can be chosen for one paper, which is withheld from all but the safety officer, and for no other', () => {
  const chosen = paperNames.filter((paper) => subjectsOf(read, paper).some(({ value }) => value === breathed));
  expect(chosen).toEqual(['personal-air-record']);
  expect(subjectsOf(read, 'personal-air-record').map(({ label }) => label)).toEqual(['5 March 2026, Watchful Officer']);
  const what = withheldPapers['personal-air-record'];
  expect(roles.filter((role) => what !== undefined && maySee([role], what))).toEqual(['safety-officer']);
});

test('no kind has a field for the result of a medical test', () => {
  const fields = (shape: unknown, seen = new Set<unknown>()): string[] => {
    if (shape === null || typeof shape !== 'object' || seen.has(shape)) return [];
    seen.add(shape);
    return Object.entries(shape).flatMap(([key, inner]) => [key, ...fields(inner, seen)]);
  };
  const named = [
    ...fields((kinds['check-due'] as unknown as { shape: object }).shape),
    ...Object.keys((kinds.incident as unknown as { shape: object }).shape),
  ];
  expect(named).toContain('next');
  expect(named.filter((name) => /^(result|urine|blood|level|finding|diagnosis|medical)/i.test(name))).toEqual([]);
});
