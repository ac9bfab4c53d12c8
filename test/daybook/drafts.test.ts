import 'fake-indexeddb/auto';
import { Dexie } from 'dexie';
import { describe, expect, test } from 'vitest';
import { openStore, storeFormat } from '../../app/daybook/drafts.ts';

let count = 0;
const fresh = (): string => `test-${++count}`;

async function opened(name: string) {
  const store = await openStore(name);
  if (!store.ok) throw new Error(store.problems[0]?.code);
  return store.value;
}

describe('what the window keeps for itself', () => {
  test('a draft is there again when the store is opened anew', async () => {
    const name = fresh();
    const first = await opened(name);
    await first.saveDraft({ form: 'scale', touched: '2026-03-14T09:20+13:00', content: { values: { label: 'Bench' } } });
    first.close();
    const second = await opened(name);
    expect((await second.draft('scale'))?.content).toEqual({ values: { label: 'Bench' } });
    second.close();
  });

  test('a draft that was dropped does not come back', async () => {
    const name = fresh();
    const first = await opened(name);
    await first.saveDraft({ form: 'scale', touched: '2026-03-14T09:20+13:00', content: 1 });
    await first.dropDraft('scale');
    first.close();
    const second = await opened(name);
    expect(await second.draft('scale')).toBeUndefined();
    expect(await second.drafts()).toEqual([]);
    second.close();
  });

  test('the drafts of one daybook are not those of another', async () => {
    const [one, other] = [await opened(fresh()), await opened(fresh())];
    await one.saveDraft({ form: 'scale', touched: '2026-03-14T09:20+13:00', content: 1 });
    expect(await other.drafts()).toEqual([]);
    one.close();
    other.close();
  });

  test('a store that a newer program wrote is refused and left as it is', async () => {
    const name = fresh();
    const first = await opened(name);
    await first.saveDraft({ form: 'scale', touched: '2026-03-14T09:20+13:00', content: 1 });
    await first.saveSetting('store-format', storeFormat + 1);
    first.close();
    const again = await openStore(name);
    expect(again.ok).toBe(false);
    expect(again.ok ? '' : again.problems[0]).toEqual({
      code: 'store-newer',
      field: '',
      data: { format: storeFormat + 1, known: storeFormat },
    });
    const raw = await new Dexie(`retort-daybook-${name}`).open();
    expect(await raw.table('drafts').count()).toBe(1);
    expect((await raw.table('settings').get('store-format')).value).toBe(storeFormat + 1);
    raw.close();
  });

  test('a setting is remembered', async () => {
    const name = fresh();
    const first = await opened(name);
    await first.saveSetting('writer', 'person-keeper');
    first.close();
    const second = await opened(name);
    expect(await second.setting('writer')).toBe('person-keeper');
    second.close();
  });
});
