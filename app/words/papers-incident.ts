/** Texts of the incident sheet, for an incident and for a spill. It repeats what was written down; medical results never stand in the book. */
import { massHead, massUnit } from './figures.ts';
import { marked } from './notation.ts';

export const incidentPaper = {
  name: 'Incident sheet',
  subject: (what: string, where: string, day: string) => `${what}${where}, ${day}`,
  incident: 'Incident',
  spill: 'Spill',
  at: (where: string) => `, ${where}`,
  number: (id: string) => `Filed under its own entry, ${id}`,

  facts: 'What, where, who',
  day: 'Happened',
  where: 'Where',
  people: 'People',
  by: 'Recorded by',
  witness: 'Seen by',
  vessel: 'Ran out of',
  told: 'Told',
  assessment: 'Medical assessment advised',
  answers: { yes: 'yes', no: 'no', na: 'does not apply' },
  papersKept: 'From and with',
  happened: 'What happened',
  done: 'What was done',
  cleaned: 'How it was cleaned up',
  note: 'Note',

  weights: 'What was spilled',
  item: 'Item',
  get grams(): string {
    return massUnit();
  },
  get U(): string {
    return massHead('± U (k = 2)');
  },
  lost: 'Ran out',
  recovered: (vessel: string) => `less gathered up, into ${vessel}`,
  recoveredAlone: (vessel: string) => `Gathered up, into ${vessel}`,
  rest: 'Not gathered up',
  noLost: 'How much ran out is not known; what is still where it fell cannot be reckoned and is not nothing.',
  noRecovered: 'Nothing gathered up is on the record.',
  overGathered: 'More was gathered up than was written down as run out: one of the two is wrong.',
  inside: {
    yes: 'It lies inside an issue that was booked, and is not taken from the vessel again.',
    no: 'It does not lie inside an issue that was booked.',
    na: 'Whether it lies inside an issue does not apply.',
  },

  cautions: 'Cautions',
  get spillCautions() {
    return [
      'Mercury that is not gathered up goes on giving off vapour, without smell or colour, from cracks and beads too small to see. It does not air away overnight.',
      marked(
        'Some places want a call to the authority from a set amount on, as the United States do at one pound (453.6 g) let into the environment. Ask the authority; no amount is too small to ask.',
      ),
      'No broom, no vacuum cleaner that is not made for mercury, no drain.',
    ];
  },
  cautionList: [
    'Whether the place may be used again is for the safety officer and licensed people to say, by readings at the floor and where people breathe; no weight on this sheet tells it.',
    'Where mercury was heated in a closed place, everybody who was there is seen by a doctor, even those who feel well: tell them heated mercury, when, where, for how long and what a meter showed.',
    'Whoever may have breathed or touched it asks a doctor. Results of medical tests never stand in this book.',
  ],

  air: 'The air on that day and the three after',
  airNote: 'As the meters showed it, at places; what one person breathed is not on this paper.',
  airNone: 'No reading of a place is written up for these days. What was breathed is not known from this book.',
  when: 'When',
  place: 'Where',
  shown: 'Shown',

  byHand: 'To fill in by hand',
  byHandNote: 'What the entry has no field for. Never the result of a medical test.',
  question: 'Asked',
  answer: 'Answer',
  handRows: [
    'Who was there or came in, by role, and for how long',
    'Heated or cold; how hot; indoors, with what doors and fans',
    'Who was told to see a doctor; which doctor or poison centre was told, and when',
    'Authority asked whether it must be reported, and its answer',
    'Where the waste stands: containers, labels',
    'Air read again by whom, at the floor and at the mouth, and who said what comes next',
  ],
  numbers: 'Numbers of this site',
  noNumber: '…………………………………',
  firstAid: 'First aid',

  signatures: 'Signatures',
  signaturesNote: 'A signature here says that the person has read this sheet, nothing more.',
  role: 'Who',
  nameHead: 'Name',
  signature: 'Signature and day',
  roles: ['Recorded by', 'Person concerned', 'Person concerned', 'Safety officer', 'Told: authority or doctor'],
} as const;
