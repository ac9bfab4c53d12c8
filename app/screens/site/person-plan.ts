/** The sheet of a person: what is typed, and the body it makes. */
import type { Body } from '../../core/kinds/index.ts';
import { textOr } from '../../daybook/form.svelte.ts';

export interface PersonValues {
  name: string;
  roles: string[];
  note: string;
  left: string;
}

export const noPerson = (): PersonValues => ({ name: '', roles: [], note: '', left: '' });

export const personValues = (body: Body<'person'>): PersonValues => ({
  name: body.name,
  roles: [...body.roles],
  note: body.note ?? '',
  left: body.left ?? '',
});

export const personBody = (v: PersonValues, of?: string): Record<string, unknown> => ({
  of,
  name: textOr(v.name),
  roles: v.roles.length > 0 ? v.roles : undefined,
  note: textOr(v.note),
  left: textOr(v.left),
});
