/** The site's own check lists, the answers "no", and drums with a day by which they must go. */
import { describe, expect, it } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { listFrom, wordingAt } from '../../app/core/book/check-lists.ts';
import { drumsOf } from '../../app/core/book/drums.ts';
import { outOfStepOf } from '../../app/core/book/out-of-step.ts';
import { checkDraft } from '../../app/core/book/rules.ts';
import { checkListAt, keptUntil, numbersMissing, stopRulesAt } from '../../app/core/book/site-says.ts';
import type { Body, Kind } from '../../app/core/kinds/index.ts';
import { flagText } from '../../app/words/flags.ts';
import { runChecks } from '../../app/words/run-checks.ts';
import { BookMaker } from './book-maker.ts';

const problems = <K extends Kind>(book: BookMaker, kind: K, body: Body<K>) =>
  checkDraft(
    readBook(book.entries),
    { id: 'asked-about', kind, body: body as Record<string, unknown>, happened: '2026-03-09T09:00+13:00', by: null },
    '2026-03-09T10:00+13:00',
  );

const march = (day: string, clock = '09:00') => `2026-03-${day}T${clock}+13:00`;

function listed() {
  const book = BookMaker.site();
  book.add(
    'list one',
    'check-list',
    {
      work: 'run-before',
      added: [{ check: 'gate-shut', asks: 'Gate shut' }],
      worded: [{ check: 'fire', asks: 'Both extinguishers at the door' }],
      leftOut: [{ check: 'no-food', why: 'asked at the gate' }],
    },
    { happened: march('05') },
  );
  return book;
}

describe('a check list of the site', () => {
  it('adds, words anew and leaves out, and keeps the names and the order of the rest', () => {
    const { current } = readBook(listed().entries);
    const site = checkListAt(current, 'run-before', march('06'))?.body ?? null;
    const { questions, leftOut } = listFrom(runChecks.before, site);
    const names = runChecks.before.map((q) => q.check).filter((check) => check !== 'no-food');
    expect(questions.map((q) => q.check)).toEqual([...names, 'gate-shut']);
    expect(questions.find((q) => q.check === 'fire')).toMatchObject({ asks: 'Both extinguishers at the door', origin: 'worded' });
    expect(leftOut).toMatchObject([{ check: 'no-food', why: 'asked at the gate' }]);
  });

  it('does not hold before its day, and the later list takes the place of the earlier whole', () => {
    const book = listed();
    book.add('list two', 'check-list', { work: 'run-before' }, { happened: march('08') });
    const { current } = readBook(book.entries);
    expect(checkListAt(current, 'run-before', march('04'))).toBeNull();
    expect(listFrom(runChecks.before, checkListAt(current, 'run-before', march('09'))?.body ?? null)).toEqual(
      listFrom(runChecks.before, null),
    );
    expect(checkListAt(current, 'run-during', march('09'))).toBeNull();
  });

  it('tells an old entry’s question in the words it was asked in', () => {
    const book = listed();
    book.add(
      'list two',
      'check-list',
      { work: 'run-before', worded: [{ check: 'fire', asks: 'Sand at the door' }] },
      { happened: march('08') },
    );
    const { current } = readBook(book.entries);
    expect(wordingAt(current, 'fire', march('06'))).toBe('Both extinguishers at the door');
    expect(wordingAt(current, 'fire', march('09'))).toBe('Sand at the door');
    expect(wordingAt(current, 'gate-shut', march('09'))).toBe('Gate shut');
    expect(wordingAt(current, 'fire', march('04'))).toBeUndefined();
  });

  it('refuses one question twice, and one both worded anew and left out', () => {
    const book = BookMaker.site();
    const ask = { check: 'fire', asks: 'Sand at the door' };
    expect(problems(book, 'check-list', { work: 'run-before', added: [ask, ask] }).map((p) => p.code)).toEqual([
      'question-twice',
    ]);
    expect(
      problems(book, 'check-list', { work: 'run-before', worded: [ask], leftOut: [{ check: 'fire', why: 'never lit' }] }).map(
        (p) => p.code,
      ),
    ).toEqual(['question-twice']);
  });
});

describe('a check answered no', () => {
  it('never stops the entry, and shows as a flag and out of step, in the site’s own words', () => {
    const book = listed();
    const plate = book.add('apron', 'plate', { label: 'Apron plate' });
    const checks = [
      { check: 'plate-cold', answer: 'no' as const, note: 'still warm' },
      { check: 'gate-shut', answer: 'no' as const },
      { check: 'people', answer: 'na' as const },
    ];
    const body = { plate, what: 'scaled' as const, checks };
    expect(problems(book, 'plate-work', body)).toEqual([]);
    const id = book.add('scaling', 'plate-work', body, { happened: march('06') });
    const read = readBook(book.entries);
    const flags = (read.flags.get(id) ?? []).filter((f) => f.code === 'check-no');
    expect(flags.map((f) => f.data.check)).toEqual(['plate-cold', 'gate-shut']);
    expect(flagText(flags[0]!)).toBe('“Plate cold, scaled wet, scrapings kept under water” was answered no: still warm.');
    expect(flagText(flags[1]!)).toBe('“Gate shut” was answered no.');
    const listedThere = outOfStepOf(read, { at: march('07'), lotDays: 30 }).filter((item) => item.group === 'checks');
    expect(listedThere.map((item) => item.opens)).toEqual([{ entry: id }, { entry: id }]);
  });

  it('names who answered only from the register of people', () => {
    const book = BookMaker.site();
    const plate = book.add('apron', 'plate', { label: 'Apron plate' });
    const checks = [{ check: 'plate-cold', answer: 'yes' as const, by: 'nobody-known' }];
    expect(problems(book, 'plate-work', { plate, what: 'scaled', checks })).toMatchObject([
      { code: 'unknown-id', field: 'body.checks[0].by' },
    ]);
  });
});

describe('a waste drum', () => {
  const weighed = (gross: string) => ({ how: 'stated' as const, mass: gross });
  function drummed() {
    const book = BookMaker.site();
    const drum = book.add('drum one', 'vessel', { label: 'Drum 1', use: 'drum' });
    const put = (name: string, day: string, more: object) =>
      book.add(name, 'waste', { drum, what: 'cloths', weight: weighed('2 kg'), ...more }, { happened: march(day) });
    put('cloths', '02', { due: '2026-03-20', code: 'W 1' });
    put('slag', '04', { due: '2026-03-15', started: '2026-02-27' });
    return { book, drum, put };
  }

  it('must go by the earliest day set, and is out of step from the day after', () => {
    const { book, drum } = drummed();
    const read = readBook(book.entries);
    expect(drumsOf(read.current, read.registers)).toMatchObject([
      { vessel: drum, started: '2026-02-27', due: '2026-03-15', codes: ['W 1'], left: null },
    ]);
    expect(drumsOf(read.current, read.registers)[0]?.mass.net.ug).toBe(4e9);
    const due = (day: string) => outOfStepOf(read, { at: march(day), lotDays: 30 }).filter((item) => item.code === 'drum-due');
    expect(due('15')).toEqual([]);
    expect(due('16')).toMatchObject([{ opens: { register: 'vessel', id: drum }, since: '2026-03-15' }]);
  });

  it('begins anew once it left, and what left keeps its papers', () => {
    const { book, drum, put } = drummed();
    const gone = book.add(
      'handed over',
      'transfer',
      { way: 'out', what: 'waste', party: 'a remover', vessel: drum, document: 'N 4', counts: 'loss' },
      { happened: march('10') },
    );
    put('sweepings', '12', {});
    const read = readBook(book.entries);
    const [here, left] = drumsOf(read.current, read.registers);
    expect(here).toMatchObject({ started: '2026-03-12', due: null, left: null });
    expect(left?.left?.id).toBe(gone);
    expect(outOfStepOf(read, { at: march('30'), lotDays: 30 }).some((item) => item.code === 'drum-due')).toBe(false);
  });
});

describe('what the site says of itself', () => {
  it('names the numbers it has not entered, and none once all are there', () => {
    const book = BookMaker.site();
    expect(numbersMissing(readBook(book.entries).current, march('05'))).toEqual([
      'emergency',
      'poison-centre',
      'remover',
      'authority',
    ]);
    const some = [{ for: 'poison-centre' as const, number: '000 100' }];
    book.add('numbers', 'site-numbers', { numbers: some }, { happened: march('05') });
    expect(numbersMissing(readBook(book.entries).current, march('05'))).toEqual(['emergency', 'remover', 'authority']);
  });

  it('has no stop rule until it sets one, and an empty list takes them back', () => {
    const book = BookMaker.site();
    expect(stopRulesAt(readBook(book.entries).current, march('05'))).toBeNull();
    book.add('rules', 'stop-rules', { rules: [{ of: 'wind', when: 'from the road' }] }, { happened: march('05') });
    book.add('rules back', 'stop-rules', { rules: [] }, { happened: march('07') });
    const { current } = readBook(book.entries);
    expect(stopRulesAt(current, march('06'))?.body.rules).toHaveLength(1);
    expect(stopRulesAt(current, march('08'))?.body.rules).toEqual([]);
  });

  it('keeps a record until the same day so many years on, and a leap day until the 28th', () => {
    expect(keptUntil('2026-03-14T10:00+13:00', 40)).toBe('2066-03-14');
    expect(keptUntil('2024-02-29', 5)).toBe('2029-02-28');
    expect(keptUntil('2024-02-29', 4)).toBe('2028-02-29');
  });
});
