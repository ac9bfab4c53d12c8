/** Two desks in one folder correct the same entry, each before it sees the other's: both stay, and both are shown. */
import { expect, it } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import type { Entry } from '../../app/core/entry.ts';
import { readingsOf } from '../../app/screens/daybook/readings.ts';
import { aHost, bookIn } from './a-host.ts';
import { note } from './drafts.ts';

it('two corrections of one entry by two desks are both kept, flagged, and stand side by side', async () => {
  const [first, second] = [aHost(), aHost()];
  const { folder, ownDesk } = bookIn(await first.ask('open', { make: 'Shared' }));
  expect((await first.ask('keep', note(1))).ok).toBe(true);
  const opened = await second.host.openFolder(folder);
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  expect(opened.value).toMatchObject({ writable: true, desks: [{ entries: 1 }] });
  expect(opened.value.ownDesk).not.toBe(ownDesk);
  const correction = (id: string, text: string) => ({
    ...note(1),
    id,
    kind: 'correction',
    body: { corrects: note(1).id, body: { text }, why: `because ${text}` },
  });
  expect(await first.ask('keep', correction('fix-first', 'one reading'))).toMatchObject({ ok: true });
  expect(await second.ask('keep', correction('fix-second', 'other reading'))).toMatchObject({ ok: true });

  for (const { post } of [first, second]) {
    const lines = (await (await post('/ask/entries', '{}')).text()).trim().split('\n');
    const entries = lines.map((line) => JSON.parse(line) as Entry);
    expect(entries).toHaveLength(3);
    expect(new Set(entries.map(({ desk }) => desk)).size).toBe(2);
    const book = readBook(entries);
    const reading = book.current.byId.get(note(1).id);
    if (!reading) throw new Error('the note is there');
    expect([reading.contested, reading.corrections.length]).toEqual([true, 2]);
    expect(book.flags.get(note(1).id)?.map(({ code }) => code)).toContain('contested');
    // what the entry's page shows beside each other
    const readings = readingsOf(book, reading);
    expect(readings?.columns.map((c) => [c.id, c.sideBySide])).toEqual([
      [note(1).id, false],
      [expect.stringMatching(/^fix-/), true],
      [expect.stringMatching(/^fix-/), true],
    ]);
    expect(JSON.stringify(readings?.rows)).toMatch(/one reading.*other reading|other reading.*one reading/);
  }
  await first.host.close();
  await second.host.close();
});
