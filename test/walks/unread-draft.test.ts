/** A draft that another version left, or that is damaged: the window says so on the form and in the Today room, shows what it holds, and keeps it. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { noteHref } from '../../app/screens/daybook/hrefs.ts';
import { roomHref } from '../../app/screens/shared/places.ts';
import { en } from '../../app/words/en.ts';
import { keeper } from '../host/drafts.ts';
import { openWalk, type WalkedWindow } from './window.ts';

let walk: WalkedWindow;
beforeAll(async () => {
  walk = await openWalk('Example Battery');
});
afterAll(() => walk?.close());

test('it is told with what it holds, stands in the Today room, and goes only when it is thrown away', async () => {
  const { page } = walk;
  await walk.keep([keeper]);
  await page.evaluate(async () => {
    const name = (await indexedDB.databases()).map((d) => d.name ?? '').find((n) => /^retort-daybook-(?!window)/.test(n)) ?? '';
    const db = await new Promise<IDBDatabase>((resolve) => {
      const asked = indexedDB.open(name);
      asked.onsuccess = () => resolve(asked.result);
    });
    const content = { id: 'b4f7c2d0-0000-4000-8000-000000000001', values: { text: 7, newer: 'from another version' } };
    await new Promise((resolve) => {
      const writing = db.transaction('drafts', 'readwrite');
      writing.objectStore('drafts').put({ form: 'note', touched: '2026-03-14T09:20+13:00', content });
      writing.oncomplete = resolve;
    });
    db.close();
  });
  await walk.go(noteHref);
  await page.getByText(en.unreadTitle).waitFor();
  await page.getByText(en.unreadHolds).click();
  await page.getByText('from another version').waitFor();
  expect(await walk.axe()).toEqual([]);
  await walk.go(roomHref('today'));
  await page.getByText('this draft could not be read; it is kept').waitFor();
  await walk.go(noteHref);
  await page.getByRole('button', { name: en.unreadDrop }).click();
  await page.getByText(en.unreadTitle).waitFor({ state: 'detached' });
  await walk.go(roomHref('today'));
  expect(await page.getByText('this draft could not be read').count()).toBe(0);
  expect(walk.errors).toEqual([]);
});
