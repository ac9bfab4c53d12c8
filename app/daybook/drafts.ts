/**
 * What the window keeps for itself in the browser's database: drafts, settings, and packed segments of the record as it was seen (segments.ts). The
 * record is not here; all of this can be thrown away. Every write is flushed to the disk (strict durability), so a draft outlives a crash and a power
 * cut. A store that a newer program wrote is not touched.
 */
import { Dexie, type Table } from 'dexie';
import { bad, good, problem, type Result } from '../core/result.ts';
import { isMoment } from '../core/time.ts';
import type { SegmentRow } from './segments.ts';

/** The number of this store's format. Dexie itself opens newer databases without a word, so it is checked here. */
export const storeFormat = 3;

/** A form as it was left, under the name of the form. */
export interface DraftRow {
  readonly form: string;
  /** When it was last touched; empty where that cannot be read. */
  readonly touched: string;
  readonly content: unknown;
}

interface SettingRow {
  readonly key: string;
  readonly value: unknown;
}

export interface Store {
  readonly draft: (form: string) => Promise<DraftRow | undefined>;
  readonly drafts: () => Promise<readonly DraftRow[]>;
  readonly saveDraft: (row: DraftRow) => Promise<void>;
  readonly dropDraft: (form: string) => Promise<void>;
  readonly setting: (key: string) => Promise<unknown>;
  readonly saveSetting: (key: string, value: unknown) => Promise<void>;
  /** Desk and first number of every segment that is stored, in order. */
  readonly segmentKeys: () => Promise<readonly (readonly [desk: string, first: number])[]>;
  /** A stored segment as it lies there: not yet looked at, so it may be anything. */
  readonly segment: (desk: string, first: number) => Promise<unknown>;
  readonly saveSegment: (row: SegmentRow) => Promise<void>;
  /** Drops all segments of a desk. */
  readonly dropSegments: (desk: string) => Promise<void>;
  readonly close: () => void;
}

/** A row as it may lie there: a name and a moment that are none become texts, so that whoever lists drafts meets nothing else. */
const rowOf = ({ form, touched, content }: { readonly [key in keyof DraftRow]?: unknown }): DraftRow => ({
  form: typeof form === 'string' ? form : '',
  touched: typeof touched === 'string' && isMoment(touched) ? touched : '',
  content,
});

const formatKey = 'store-format';

/**
 * Opens the store of one daybook by the daybook's random id, or the window's own under "window". Problems: `store-newer`, `store-unusable`
 * (private browsing, a full disk): then nothing is remembered and the page has to say so.
 */
export async function openStore(name: string): Promise<Result<Store>> {
  const db = new Dexie(`retort-daybook-${name}`, { chromeTransactionDurability: 'strict' });
  // every line of this list stays for ever; a change of shape is a new line
  db.version(1).stores({ drafts: 'form', settings: 'key' });
  db.version(2).stores({ drafts: 'form', settings: 'key', segments: '[desk+first]' });
  // segments of before held what is not for everybody: they go, and are packed anew from the record
  db.version(3)
    .stores({ drafts: 'form', settings: 'key', segments: '[desk+first]' })
    .upgrade((change) => change.table('segments').clear());
  const segments: Table<SegmentRow, [string, number]> = db.table('segments');
  const drafts: Table<DraftRow, string> = db.table('drafts');
  const settings: Table<SettingRow, string> = db.table('settings');
  // another window of a newer program wants to change the store: let go, and do not come back under it
  db.on('versionchange', () => db.close({ disableAutoOpen: true }));
  try {
    await db.open();
    const format = (await settings.get(formatKey))?.value;
    if (typeof format === 'number' && format > storeFormat) {
      db.close();
      return bad(problem('store-newer', '', { format, known: storeFormat }));
    }
    if (format !== storeFormat) await settings.put({ key: formatKey, value: storeFormat });
  } catch {
    db.close();
    return bad(problem('store-unusable', ''));
  }
  return good({
    draft: async (form) => {
      const row = await drafts.get(form);
      return row && rowOf(row);
    },
    drafts: async () => (await drafts.toArray()).map(rowOf),
    saveDraft: async (row) => {
      await drafts.put(row);
    },
    dropDraft: (form) => drafts.delete(form),
    setting: async (key) => (await settings.get(key))?.value,
    saveSetting: async (key, value) => {
      await settings.put({ key, value });
    },
    segmentKeys: () => segments.toCollection().primaryKeys(),
    segment: (desk, first) => segments.get([desk, first]),
    saveSegment: async (row) => {
      await segments.put(row);
    },
    dropSegments: async (desk) => {
      await segments.where('[desk+first]').between([desk, Dexie.minKey], [desk, Dexie.maxKey]).delete();
    },
    close: () => db.close(),
  });
}

/** Remembers nothing: stands in where the browser's database cannot be used, so that the record can still be kept. */
export const noStore: Store = {
  draft: async () => undefined,
  drafts: async () => [],
  saveDraft: async () => {},
  dropDraft: async () => {},
  setting: async () => undefined,
  saveSetting: async () => {},
  segmentKeys: async () => [],
  segment: async () => undefined,
  saveSegment: async () => {},
  dropSegments: async () => {},
  close: () => {},
};
