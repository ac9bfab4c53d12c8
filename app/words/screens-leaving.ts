/** Texts of the register of what is stored to go and what left the site: who decides each point, and never that a thing may travel (safety.md 6.1, 6.3, 6.5). */
import { massHead } from './figures.ts';

export const leavingWords = {
  name: 'What leaves the site',
  title: 'What leaves the site',
  note: 'Storage, waste and transport',
  says: 'Drums that stand here and the day they must go; mercury, amalgam, sponge, plates and waste sent away, with papers and carrier.',
  intro:
    'A register of what was written down, and no declaration. Class of waste, packing, papers, carrier and how long a drum may stand are settled by the authority and by licensed people of the place.',
  here: 'Drums that stand here',
  hereNote: 'Days as the site set them',
  hereNone: 'No drum holds waste by this book.',
  drum: 'Drum',
  begun: 'Begun',
  inIt: 'Waste in it',
  codes: 'Codes',
  due: 'Must go by',
  standing: 'Standing',
  noDay: 'no day set',
  past: (n: number) => (n === 1 ? 'past by 1 day' : `past by ${n} days`),
  left: (n: number) => (n === 0 ? 'today' : n === 1 ? '1 day left' : `${n} days left`),
  gone: 'Sent away',
  goneNote: 'Newest first',
  goneNone: 'Nothing of the kind has left the site by this book.',
  day: 'Day',
  what: 'What',
  get weight(): string {
    return massHead('Weight here');
  },
  get theirs(): string {
    return massHead('Their weight');
  },
  to: 'Received by',
  carrier: 'Carrier',
  carriedBy: 'Carrier · documents',
  document: 'Document',
  theirDocument: 'Their document',
  seal: 'Seal',
  checks: 'Checks',
  keptUntil: 'Papers kept until',
  entry: 'Entry',
  /** Checks answered, of how many, and how many of them no. */
  answered: (n: number, of: number, no: number) => `${n} of ${of}${no === 0 ? '' : `, ${no} answered no`}`,
  notWeighed: 'not recorded',
  copy: 'Copy as CSV',
  writeTransfer: 'Write up what leaves',
  writeWaste: 'Write up waste put into a drum',
  who: 'Who decides what',
  whoNote: 'None of it by this program',
  point: 'Point',
  decides: 'Decided by',
  inBook: 'What this book holds of it',
  points: [
    {
      point:
        'Where mercury and its waste stand: locked, cool, aired, on a tight floor with a rim, away from heat, aluminium, gold, ammonia and acetylene',
      decides: 'The site with its licensed person; the authority where it sets rules for storage',
      holds: 'Place and seal of each vessel in the register',
    },
    {
      point: 'Which class and code a waste has, and whether it is waste at all',
      decides: 'The authority, or a laboratory and a licensed remover by its rules',
      holds: 'The code as it was written down',
    },
    {
      point: 'How long a drum may stand, and how much of it',
      decides: 'The authority; it differs with place and quantity',
      holds: 'The day the site set, and the day the drum was begun',
    },
    {
      point: 'Who may carry it, packed and marked how, with which papers',
      decides: 'A carrier licensed for it and whoever is trained to sign for the load',
      holds: 'Carrier, number of the document, seal, and the checks answered',
    },
    {
      point: 'Whether the taker may take it',
      decides: 'The taker’s own licence and its authority',
      holds: 'Who received it, their weight, day and document',
    },
    {
      point: 'Whether mercury may leave the country, or be sold on',
      decides: 'The authority under the Minamata Convention and the law of the place',
      holds: 'The purpose as written',
    },
  ],
} as const;
