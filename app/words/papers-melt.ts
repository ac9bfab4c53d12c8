/** Texts of the melt sheet: sponge in, bars out, and what the difference may be, as bounds and never as one figure. */
import { massHead, massUnit } from './figures.ts';

export const meltPaper = {
  name: 'Melt sheet',
  subject: (bars: string, day: string) => `${bars}, ${day}`,
  noBars: 'no bar yet',
  number: (id: string) => `Filed under its own entry, ${id}`,
  noSponge: (what: string) =>
    `The sponge of “${what}” was weighed neither here nor at its firing: the shrinkage cannot be reckoned without it.`,
  uUnknown: 'How sure the shrinkage is cannot be said: at least one weighing in it has no known uncertainty.',

  melt: 'The melt',
  day: 'Melted',
  by: 'Recorded by',
  witness: 'Seen by',
  flux: 'Flux',
  note: 'Note',
  papersKept: 'From and with',

  figures: 'The melt in figures',
  item: 'Item',
  get grams(): string {
    return massUnit();
  },
  get U(): string {
    return massHead('± U (k = 2)');
  },
  sponge: (of: string) => `Sponge of ${of}`,
  spongeOld: (of: string) => `Sponge of ${of}, weighed at its firing`,
  added: (label: string) => `Added: ${label}`,
  into: 'Went in',
  bar: (label: string) => `less bar ${label}`,
  sample: (label: string) => `less sample ${label}`,
  shrinkage: 'Shrinkage',
  prills: 'less prills picked from the slag',
  net: 'Net loss of the melt',
  slag: 'Slag, set beside and in no figure above',
  shares: 'As shares of what went in',
  shrinkageOf: 'Shrinkage',
  netOf: 'Net loss',
  nothing: 'not computable: nothing that went in was weighed',
  exact: 'Amounts are exact sums of the readings; the only rounding is in U and in shares.',
  overCharge:
    'Bars and samples weigh more than what went in. As read this cannot be: look for old metal or prills that were added and not written down, and weigh again.',

  maybe: 'What the shrinkage may be',
  maybeNote: 'Bounds only: no weighing here tells these apart, and together they make up the shrinkage.',
  what: 'What',
  get least(): string {
    return massHead('At least');
  },
  get most(): string {
    return massHead('At most');
  },
  mercury: 'Mercury that the sponge still held, driven off in the pot',
  dirt: 'Dirt, ash and base metal burnt or gone into the slag',
  slagMetal: 'Metal in the slag, the prills among it',
  booked: (g: string) =>
    `The mercury account books ${g} as driven off by this melt: an estimate from the runs of these sponges, not a weighing.`,
  notBooked: 'The mercury account books nothing as driven off by this melt: no run of these sponges is closed.',
  notBounded: 'No bounds can be given: nothing shrank, by the readings.',

  cautions: 'Cautions',
  cautionList: [
    'Sponge holds mercury, also when it looks clean and weighs right. Melting it drives that off as vapour, which has no smell and no colour.',
    'That vapour has to be caught where it leaves the pot; a pot in an open room or beside a home is no place for it.',
    'Flux, slag, pot and hood lining can hold mercury afterwards and are kept as such until tested.',
    'The place’s rules and its licensed people come first. A figure on this sheet says nothing about the air.',
  ],
  checks: 'Checks, as answered',
  question: 'Asked',
  answer: 'Answer',
} as const;
