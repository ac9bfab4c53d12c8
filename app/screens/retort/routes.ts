/** Addresses of the forms of this room. "new" is shorter than any id, so no charge can stand under it. */
export const newForms = ['receipt', 'clean-up', 'charge', 'firing'] as const;
export type NewForm = (typeof newForms)[number];

export const newHref = (form: NewForm): string => `#/retort/new/${form}`;

/** The pages of lots stand under it; like "new" it is shorter than any id. */
export const lotKey = 'lot';

/** The page of a run that holds its readings against one another. */
export const readingsKey = 'readings';
export const readingsHref = (charge: string): string => `#/retort/${charge}/${readingsKey}`;

/** Amalgam by plate, over a period, and the clean-ups of one plate in it; like "new" it is shorter than any id. */
export const platesKey = 'plate';
export const platesHref = (period = 'all', plate?: string): string =>
  `#/retort/${platesKey}/${period}${plate === undefined ? '' : `/${plate}`}`;
