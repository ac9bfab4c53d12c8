/** Somebody puts back an old copy of the daybook: the window says so, hands out the entries that are missing, and forgets them only when told to. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recordOlder as words } from '../../app/words/record-older.ts';
import { readJournal } from '../../main/host/journal.ts';
import { keeper, note } from '../host/drafts.ts';
import { openWalk, type WalkedWindow } from './window.ts';

let walk: WalkedWindow;
beforeAll(async () => {
  walk = await openWalk('Example Battery');
});
afterAll(() => walk.close());

const journal = (): string => {
  const desks = join(walk.folder, 'desks');
  return join(desks, readdirSync(desks).find((name) => name.endsWith('.jsonl')) ?? '');
};

/** Lines of the record that the browser's own database holds. */
const seenLines = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    const name = (await indexedDB.databases()).map((d) => d.name ?? '').find((n) => /^retort-daybook-(?!window)/.test(n)) ?? '';
    const db = await new Promise<IDBDatabase>((resolve) => {
      const asked = indexedDB.open(name);
      asked.onsuccess = () => resolve(asked.result);
    });
    const rows = await new Promise<{ text: string }[]>((resolve) => {
      const asked = db.transaction('segments').objectStore('segments').getAll();
      asked.onsuccess = () => resolve(asked.result as { text: string }[]);
    });
    db.close();
    return rows.reduce((n, { text }) => n + text.split('\n').length - 1, 0);
  });

describe('an old copy put back', () => {
  it('is told in the window, with the missing entries to save; they complete the journal; the disk counts once a person says so', async () => {
    const { page } = walk;
    await walk.keep([keeper, note(1), note(2), note(3), note(4)]);
    await expect.poll(() => seenLines(page), { timeout: 20_000 }).toBe(5);
    const whole = readFileSync(journal(), 'utf8');
    const old = whole
      .split('\n')
      .slice(0, 3)
      .map((line) => `${line}\n`)
      .join('');
    writeFileSync(journal(), old);
    await page.reload();
    const notice = page.getByRole('alert').filter({ hasText: words.title });
    await notice.waitFor();
    expect(await notice.innerText()).toContain('2 entries of desk');
    expect(await walk.axe()).toEqual([]);

    const saving = page.waitForEvent('download');
    await notice.getByRole('button', { name: words.save({ count: 2, withheld: 0 }) }).click();
    const saved = await saving;
    expect(saved.suggestedFilename()).toMatch(/^desk-.*-from-4\.jsonl$/);
    const lines = readFileSync(await saved.path(), 'utf8');
    expect(old + lines).toBe(whole);
    const desk = saved.suggestedFilename().replace(/-from-4\.jsonl$/, '');
    expect(readJournal(Buffer.from(old + lines), desk).entries).toHaveLength(5);
    expect(await seenLines(page)).toBe(5);

    await notice.getByRole('button', { name: words.goByDisk }).click();
    await notice.getByRole('button', { name: words.goByDiskSure }).click();
    await notice.waitFor({ state: 'detached' });
    await expect.poll(() => seenLines(page), { timeout: 20_000 }).toBe(3);
    expect(walk.errors).toEqual([]);
  });
});
