/** Which kinds are written here from their description, which have a form of their own, and where each is written. */
import { isKind } from '../../../core/kinds/index.ts';
import { kindsOf, type WrittenKind, writeGroups } from '../../../words/write-up.ts';
import { readingHref } from '../../air/address.ts';
import { formHref } from '../../bullion/hrefs.ts';
import { newForms, newHref } from '../../retort/routes.ts';
import { asksHref, saidHref } from '../../shared/places.ts';
import { noteHref } from '../hrefs.ts';

export const writtenKinds: readonly WrittenKind[] = writeGroups.flatMap((group) => [...kindsOf[group]]);

const ownForm = (kind: string): string | undefined => {
  const form = newForms.find((f) => f === kind);
  return form ? newHref(form) : kind === 'note' ? noteHref : undefined;
};

/** Kinds that have no form of their own: they are written from the description of their fields. */
export const plainKinds: readonly WrittenKind[] = writtenKinds.filter((kind) => ownForm(kind) === undefined);

/** The kind a page of this room writes; undefined where none is meant. */
export const plainKind = (name: string | undefined): WrittenKind | undefined =>
  name !== undefined && isKind(name) ? plainKinds.find((kind) => kind === name) : undefined;

/** The page that writes a kind from the description of its fields. Melts, assays and air readings have forms in their own room; their drafts of old open here. */
export const plainHref = (kind: WrittenKind, about?: string): string =>
  `#/daybook/write/${kind}${about === undefined ? '' : `/${about}`}`;

/** Where an entry of this kind is written; what a site sets for itself, in the room Site. `about`: a thing it begins with, as the charge of a melt or the bar of an assay. */
export function writeHref(kind: WrittenKind, about?: string): string {
  if (kind === 'melt' || kind === 'assay') return formHref(kind, about);
  if (kind === 'air-reading') return readingHref;
  if (kind === 'check-list') return asksHref();
  if (
    kind === 'stop-rules' ||
    kind === 'site-figures' ||
    kind === 'site-numbers' ||
    kind === 'retention' ||
    kind === 'lead-times' ||
    kind === 'site-notation'
  )
    return saidHref(kind);
  return ownForm(kind) ?? plainHref(kind, about);
}

export const writeListHref = '#/daybook/write';
