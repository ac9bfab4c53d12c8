/** What an unfinished form is called and where it is taken up again, by the name its draft is kept under. */
import type { Book } from '../../core/book/book.ts';
import { works } from '../../core/kinds/check-list.ts';
import { type RegisterKind, registerKinds } from '../../core/kinds/index.ts';
import { asideOf } from '../../daybook/draft-shape.ts';
import type { DraftRow } from '../../daybook/drafts.ts';
import { entryName, nameIn } from '../../words/daybook-naming.ts';
import { kindNames } from '../../words/labels.ts';
import { todayWords } from '../../words/today.ts';
import { workNames } from '../../words/work-cautions.ts';
import { draftInAir } from '../air/drafts.ts';
import { draftInBullion } from '../bullion/hrefs.ts';
import { type Deed, deedHref, noteHref } from '../daybook/hrefs.ts';
import { plainHref, plainKind } from '../daybook/write/routes.ts';
import { closeHref, nextVersionHref } from '../mercury/closing/href.ts';
import { stockTakeHref } from '../mercury/stock-take/href.ts';
import { newForms, newHref } from '../retort/routes.ts';
import { asksHref, chargeHref, registerHref, saidHref, standingHref } from '../shared/places.ts';
import { saidKinds } from '../site/pages.ts';

export interface DraftPlace {
  readonly name: string;
  /** Undefined where the room it belongs to is not known. */
  readonly href: string | undefined;
  readonly touched: string;
}

const deeds: Readonly<Record<string, Deed>> = { correction: 'correct', strike: 'strike', note: 'note' };

/** Name and place of a draft. */
export function draftPlace(book: Book, { form, touched }: DraftRow): DraftPlace {
  const words = todayWords.draftOf;
  const unread = asideOf(form);
  if (unread !== null) {
    const of = draftPlace(book, { form: unread, touched, content: null });
    return { ...of, name: words.unread(of.name) };
  }
  const [kind = '', id] = [form.split('/', 1)[0], form.includes('/') ? form.slice(form.indexOf('/') + 1) : undefined];
  const place = (name: string, href: string | undefined): DraftPlace => ({ name, href, touched });
  const inRoom = draftInBullion(book, form) ?? draftInAir(form);
  if (inRoom) return place(inRoom.name, inRoom.href);
  if (kind === 'standing') return place(words.standing, standingHref);
  const register: RegisterKind | undefined = registerKinds.find((k) => k === kind);
  if (register && id === undefined) return place(kindNames[register], registerHref(register));
  if (register && id !== undefined)
    return place(words.restated(kindNames[register], nameIn(book, register, id, touched)), registerHref(register, id));
  const fresh = newForms.find((f) => f === kind);
  if (fresh && id === undefined) return place(kindNames[fresh], newHref(fresh));
  if (kind === 'firing' && id !== undefined) return place(words.firing(entryName(book, id)), chargeHref(id));
  if (kind === 'later' && id !== undefined) {
    const charge = book.charges.firings.get(id)?.charges[0];
    return place(words.later(entryName(book, id)), charge === undefined ? undefined : chargeHref(charge));
  }
  if (kind === 'note' && id === undefined) return place(kindNames.note, noteHref);
  if (kind === 'closing')
    return place(
      id === undefined ? kindNames.closing : words.restated(kindNames.closing, entryName(book, id)),
      id === undefined ? closeHref() : nextVersionHref(id),
    );
  if (form === 'stock-take/guided') return place(kindNames['stock-take'], stockTakeHref);
  const said = saidKinds.find((k) => k === kind);
  if (said && id === undefined) return place(kindNames[said], saidHref(said));
  const work = works.find((w) => w === id);
  if (kind === 'check-list' && work) return place(words.restated(kindNames['check-list'], workNames[work]), asksHref(work));
  const written = plainKind(kind);
  if (written && id === undefined) return place(kindNames[written], plainHref(written));
  const deed = deeds[kind];
  if (deed && id !== undefined) {
    const say = kind === 'correction' ? words.correction : kind === 'strike' ? words.strike : words.note;
    return place(say(entryName(book, id)), deedHref(id, deed));
  }
  return place(words.other(form), undefined);
}
