/** Drafts that the rules of a new book accept, and hosts to keep them in. All persons and things are invented. */
import type { Draft } from '../../app/core/entry.ts';

/** When everything in these tests happens and is written. */
export const now = '2026-03-14T09:30:00+13:00';

/** A note, number `i` of many. */
export const note = (i: number, text = `Note ${i}`): Draft => ({
  id: `note-${String(i).padStart(6, '0')}`,
  happened: '2026-03-14T09:20+13:00',
  by: null,
  kind: 'note',
  body: { text },
});

/** The first person of a book, who writes their own entry. */
export const keeper: Draft = {
  id: 'person-keeper',
  happened: '2026-03-14T09:00+13:00',
  by: 'person-keeper',
  kind: 'person',
  body: { name: 'Keeper', roles: ['keeper'] },
};
