/** The forms of a note and of a strike. */
import { type FormPlan, textOr } from '../../daybook/form.svelte.ts';

export interface NoteValues {
  text: string;
}
/** A note, about an entry or about nothing in particular. */
export const notePlan = (about: string | undefined): FormPlan<NoteValues> => ({
  name: about === undefined ? 'note' : `note/${about}`,
  kind: 'note',
  start: () => ({ text: '' }),
  body: (v) => ({ text: textOr(v.text), about }),
});

export interface StrikeValues {
  why: string;
}
export const strikePlan = (strikes: string): FormPlan<StrikeValues> => ({
  name: `strike/${strikes}`,
  kind: 'strike',
  start: () => ({ why: '' }),
  body: (v) => ({ strikes, why: textOr(v.why) }),
});
