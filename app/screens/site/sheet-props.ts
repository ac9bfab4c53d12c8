/** What every sheet of a register is given, and how it reads back what it will keep. */
import { type Body, bodyFrom, type RegisterKind } from '../../core/kinds/index.ts';
import type { Daybook } from '../../daybook/book.svelte.ts';
import type { EntryForm } from '../../daybook/form.svelte.ts';
import { site } from '../../words/screens-site.ts';

export interface SheetProps<K extends RegisterKind> {
  /** The open daybook. */
  daybook: Daybook;
  /** The thing that is stated anew, with its state until now; left out: a new thing. */
  of?: { readonly id: string; readonly body: Body<K> } | undefined;
  /** Leaves the sheet without keeping. */
  oncancel: () => void;
}

/** What will be kept in one line; empty while the sheet is not complete. */
export function readBackOf<K extends RegisterKind, V extends object>(
  kind: K,
  form: EntryForm<V>,
  of: SheetProps<K>['of'],
  say: (body: Body<K>) => string,
  name: string,
): string {
  const body = bodyFrom(kind, form.draft().body);
  return body.ok ? site.register.readBack(name, say(body.value), of !== undefined) : '';
}
