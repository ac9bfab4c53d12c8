/** Which kinds are written here from their description, which have a form of their own, and where each is written. */
import { isKind } from '../../../core/kinds/index.ts';
import { kindsOf, type WrittenKind, writeGroups } from '../../../words/write-up.ts';
import { newForms, newHref } from '../../retort/routes.ts';
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

/** Where an entry of this kind is written. `about`: a thing it begins with, as the charge of a melt. */
export const writeHref = (kind: WrittenKind, about?: string): string =>
  ownForm(kind) ?? `#/daybook/write/${kind}${about === undefined ? '' : `/${about}`}`;

export const writeListHref = '#/daybook/write';
