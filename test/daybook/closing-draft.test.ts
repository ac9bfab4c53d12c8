/** What is typed while a period is closed outlives the window, each closing by itself, and goes only when the period is closed. */
import 'fake-indexeddb/auto';
import { beforeEach, expect, test } from 'vitest';
import { good } from '../../app/core/result.ts';
import { Daybook } from '../../app/daybook/book.svelte.ts';
import { ClosingAsk } from '../../app/screens/mercury/closing/closing-ask.svelte.ts';
import { draftPlace } from '../../app/screens/today/drafts.ts';
import { bookId, clock, keeper, type TestHost, testHost } from './house.ts';

async function begun(host: TestHost = testHost([keeper])) {
  const daybook = new Daybook({ host, clock });
  await daybook.start();
  await daybook.write('person-keeper');
  return { host, daybook };
}

beforeEach(async () => {
  await new Promise((resolve) => {
    const gone = indexedDB.deleteDatabase(`retort-daybook-${bookId}`);
    gone.onsuccess = resolve;
    gone.onblocked = resolve;
  });
});

test('a remark typed before a crash is there again, with the id it will be closed under; Today leads back to it', async () => {
  const one = await begun();
  const ask = new ClosingAsk(one.daybook);
  ask.form.values.note = 'Counted twice.';
  await ask.form.saveDraft();
  const { id } = ask.form.draft();
  const [row] = await one.daybook.store.drafts();
  expect(row && draftPlace(one.daybook.book, row).href).toBe('#/mercury/close');
  one.daybook.store.close();

  const two = await begun(one.host);
  const again = new ClosingAsk(two.daybook);
  await again.open('');
  expect([again.form.values.note, again.form.draft().id]).toEqual(['Counted twice.', id]);
  two.daybook.store.close();
});

test('the next version of a closing has a draft of its own', async () => {
  const { daybook } = await begun();
  const ask = new ClosingAsk(daybook);
  ask.form.values.note = 'Counted twice.';
  await ask.form.saveDraft();
  await ask.open('closing-one');
  expect(ask.form.values.note).toBe('');
  ask.form.values.note = 'Misread.';
  await ask.form.saveDraft();
  await ask.open('');
  expect(ask.form.values.note).toBe('Counted twice.');
  daybook.store.close();
});

test('a period that was refused keeps its draft; one that is closed has none', async () => {
  const { host, daybook } = await begun();
  const chosen = { opening: undefined, closing: 'count-one', replaces: undefined };
  const ask = new ClosingAsk(daybook);
  ask.form.values.note = 'Counted twice.';
  host.silent = true;
  expect(await ask.send(chosen)).toBe(false);
  host.silent = false;
  expect((await daybook.store.drafts()).map((row) => row.form)).toEqual(['closing']);
  const plain = host.ask.bind(host);
  const asked: unknown[] = [];
  const answering = async (question: string, body: unknown) => {
    if (question !== 'close-period') return plain(question as never, body as never);
    asked.push(body);
    return good({ entry: host.lines[0], desk: { endMark: 'mark' } });
  };
  Object.assign(host, { ask: answering });
  expect(await ask.send(chosen)).toBe(true);
  expect(asked).toEqual([expect.objectContaining({ closing: 'count-one', note: 'Counted twice.' })]);
  expect(await daybook.store.drafts()).toEqual([]);
  expect(ask.form.values.note).toBe('');
  daybook.store.close();
});
