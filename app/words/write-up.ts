/**
 * What can be written up, in the groups a keeper thinks in: each kind with one line that says when it is wanted, and the cautions that stand before
 * some of them. The cautions are general practice (safety.md 5.1, 5.4, 5.6), call nothing safe, and are headed by what they defer to.
 */
import type { Kind } from '../core/kinds/index.ts';

export const writeGroups = ['crushing', 'amalgam', 'retort', 'bullion', 'leaving', 'site'] as const;
export type WriteGroup = (typeof writeGroups)[number];

export const groupNames: Readonly<Record<WriteGroup, string>> = {
  crushing: 'Crushing and feeding',
  amalgam: 'Amalgam',
  retort: 'Retort and melt',
  bullion: 'Assay and settlement',
  leaving: 'Leaving the site',
  site: 'Site',
};

/** Kinds of each group, in the order of the work. */
export const kindsOf = {
  crushing: ['crushing', 'receipt', 'issue', 'return', 'plate-work'],
  amalgam: ['clean-up', 'cleaning', 'squeeze'],
  retort: ['charge', 'unmake', 'firing', 'melt'],
  bullion: ['assay', 'settlement', 'bar-kept'],
  leaving: ['transfer', 'out-turn', 'waste'],
  site: [
    'stock-take',
    'spill',
    'found',
    'incident',
    'open-day',
    'air-reading',
    'scale-check',
    'check-due',
    'check-list',
    'stop-rules',
    'site-figures',
    'site-numbers',
    'retention',
    'lead-times',
    'site-notation',
    'note',
    'battery',
    'plate',
    'meter',
    'parcel',
    'authority',
    'limit',
  ],
} as const satisfies Readonly<Record<WriteGroup, readonly Kind[]>>;
export type WrittenKind = (typeof kindsOf)[WriteGroup][number];

/** When each is written, in a line. */
export const explains: Readonly<Record<WrittenKind, string>> = {
  crushing: 'A day’s crushing: which battery, what was fed and how much, and whether mercury went with it.',
  receipt: 'Mercury that came to the site, or was here when the book began.',
  issue: 'Mercury taken out of a vessel: onto the plates, into the mortar box or the pan, or drawn off into another vessel.',
  return:
    'Mercury that came back to a vessel and is in no other entry, as from a trap. What a cleaning or a firing gave is written there.',
  'plate-work': 'A plate set, silvered, scaled, steamed, stripped, taken up or sold, and what it is thought to hold.',
  'clean-up': 'Amalgam gathered off plates, mortar box, traps or pan, weighed and labelled.',
  cleaning: 'Dirty amalgam washed and cleaned: what went in, the balls made, and the mercury strained off.',
  squeeze: 'Lots squeezed into balls, and the mercury that ran out.',
  charge: 'Balls and lots put into a retort, weighed again as they go in.',
  unmake: 'A charge taken out again before it was fired: its lots go back to the safe.',
  firing: 'A firing: the sponge left behind and the mercury caught.',
  melt: 'Sponges melted: the bars, the samples, the prills and the slag.',
  assay:
    'What a sample of ore, tailings, sponge, bar or anything else was found to hold: by fire, by titration, by density, or by a laboratory.',
  settlement: 'Two laboratories’ figures for one bar, the rule of the contract, and the umpire where one was called.',
  'bar-kept': 'Where a bar is kept from now on: shown to keeper and assayer only, and on no paper.',
  'out-turn': 'What a refiner or buyer made of what was sent: their weights, fineness, deductions and charges, beside ours.',
  transfer: 'Anything that leaves the site or comes to it from another: to whom, for what, under which papers.',
  waste: 'Waste put into a drum, with the mercury in it as far as it is known.',
  'stock-take': 'A count of what is there: every vessel, every part of the circuit, every drum, each answered.',
  spill: 'Mercury spilled: where, how much is thought to have run out, how much was gathered up.',
  found: 'Mercury or residues that turned up and were on no book.',
  incident: 'Something went wrong or nearly did: what happened, who was there, what was done, who was told.',
  'open-day': 'Visitors, by count and never by name: where they were, and what was covered or shut.',
  'air-reading':
    'Mercury in air as the meter showed it, with its sign: where, for whom, from when to when, and what was going on.',
  'scale-check': 'A scale tried with a check weight. A failed one puts the readings since the last good one in doubt.',
  'check-due': 'A check that falls due again: only its date and whether it was done, never a result.',
  'check-list': 'What the site asks at a work: questions added, worded otherwise or left out, with who looked the list over.',
  'stop-rules': 'When a fire is stopped here: a reading, a temperature, the wind, whatever the site itself has set.',
  'site-figures':
    'What this site chose for its mercury account: mercury left in sponge, the false alarm of the sequence test, days of a lot in store. A figure left out is the program’s own.',
  'site-numbers':
    'The numbers to call: emergency, poison centre, licensed remover, authority. They stand on the spill page and the wall sheet.',
  retention: 'How long this site keeps which records, and by which rule. Nothing is deleted when a period ends.',
  'lead-times':
    'How many days before its day this site wants to be told of a thing that falls due, and how often it counts its stock.',
  'site-notation':
    'How this site writes decimals, masses, temperatures and days. Window and papers follow it; readings keep their unit and digits, and record, CSV and terminal stay with points and grams.',
  note: 'Anything else worth writing down.',
  battery: 'A battery of stamps, for the register.',
  plate: 'An amalgamation plate, for the register.',
  meter: 'A vapour meter with its calibration, for the register.',
  parcel: 'Ore of one owner that wants a return of its own, for the register.',
  authority: 'A licence, permit or consent as the site holds it, for the register.',
  limit:
    'A limit for mercury in air: whose, how much, averaged over what, out of which paper, and who looked it up. None is set until you set it.',
};

/** Cautions before the fields, by kind. */
export const writeCautions: Readonly<
  Partial<Record<WrittenKind, { readonly title: string; readonly lines: readonly string[] }>>
> = {
  spill: {
    title: 'Before anything is written: local rules and licensed people come first',
    lines: [
      'People out, and kept out. Nobody pregnant, nursing or under age stays near.',
      'Doors to other rooms shut, doors and windows to the outside open, heat turned down.',
      'Never a vacuum cleaner: it heats the mercury and blows it through the room. Never a broom, never down a drain.',
      'Do not walk through it: shoes carry it to every other floor.',
      'Gather beads with card, pipette or tape into a sealed, labelled container, by people trained for it.',
      'Read the air at floor level as well as at the mouth, until it stays down. Boards, brick and cracks go on giving it off.',
      'Ask the local authority what must be reported, and how soon. Whoever feels ill sees a doctor and says: mercury.',
    ],
  },
  melt: {
    title: 'Local rules and licensed people come first',
    lines: [
      'Sponge still holds mercury, even when it looks clean: a melt drives it off as vapour.',
      'Melt only where the fume is caught, outdoors or not. Burning amalgam or sponge in the open, or near homes, is among the practices the Minamata Convention (annex C) names to be eliminated.',
      'Slag and flux can hold mercury too: keep them as waste until tested.',
    ],
  },
  found: {
    title: 'Local rules and licensed people come first',
    lines: [
      'An old or unmarked flask is photographed and weighed shut. It is not opened: nobody knows what is in it, or what it will do.',
      'Weigh it as it stands and write the figure as stated with what is known of the empty flask; a licensed person decides what comes next.',
      'Mercury under floors and in walls is cleared by people trained and licensed for it.',
    ],
  },
  crushing: {
    title: 'Local rules and licensed people come first',
    lines: [
      'Whole ore crushed over mercury is among the practices the Minamata Convention (annex C) names to be eliminated. It is kept as written, and flagged.',
    ],
  },
  cleaning: {
    title: 'Local rules and licensed people come first',
    lines: ['Amalgam and strained mercury give off vapour at room temperature: under a hood or outdoors, over a tray, cold.'],
  },
  squeeze: {
    title: 'Local rules and licensed people come first',
    lines: ['Squeeze over a tray under water, gloved, under a hood or outdoors. The cloth is mercury waste afterwards.'],
  },
  'plate-work': {
    title: 'Local rules and licensed people come first',
    lines: ['Steaming or heating a plate drives mercury off into the air: it needs its fume caught, as a retort does.'],
  },
  waste: {
    title: 'Local rules and licensed people come first',
    lines: ['What class of waste it is, how long it may stand and who may carry it is for the local authority to say.'],
  },
  transfer: {
    title: 'Local rules and licensed people come first',
    lines: [
      'This book records papers and numbers. Whether a thing may travel, and with whom, is for licensed people to say. Mercury never goes by air without them.',
    ],
  },
  incident: {
    title: 'People first, then the book',
    lines: [
      'Fresh air, rest, help called. Where mercury was heated in an enclosed place, everybody who was there sees a doctor even if they feel well: tell them heated mercury, when and how long.',
      'Cough, tight chest or fever may come hours later. The record has no room for medical findings, and wants none.',
    ],
  },
  'check-due': {
    title: 'No medical results',
    lines: ['Only the date and whether it was done belong here. Results stay with the person and their doctor.'],
  },
};

export const writeUp = {
  likeLast: 'Begin like the last issue',
  likeLastSays: (moment: string) => `Vessels and scale as on ${moment}; the weight is read anew.`,
  margin: 'A new entry',
  stock: {
    holds: (mass: string) => `By the book it holds ${mass} of mercury at that time.`,
    asks: (vessel: string, taken: string, held: string) =>
      `${taken} would leave “${vessel}”, which holds ${held} by the book. Read the weight and its unit again, and see whether it is the right vessel, and whether a receipt or a return was not written up. A book can be wrong: what was weighed can be kept as it is, and stays marked.`,
    ask: {
      title: 'More than the book says is there',
      tick: 'It was weighed so: keep it',
      missing: 'Mend the weight or the vessel, or tick that it was so.',
    },
  },
  back: 'To the daybook',
  more: 'More to write up',
  all: 'All that can be written up',
  ownForm: 'This has a form of its own',
  ownFormSays: 'It asks in the order of the work and reckons as you type. This page takes up what an older draft holds.',
  toOwnForm: 'Write it there',
  noSuch: 'Nothing of this name can be written up',
  noSuchSays: 'Choose what happened from the list.',
  meltOfRun: 'Write up the melt',
  unmakeCharge: 'Write that the charge was taken apart',
  needRegister: (what: string) => `First the register: ${what}`,
  count: {
    intro:
      'Every place below wants an answer. Count what is there before looking at what the book says: a count that knows the answer finds it.',
    groups: {
      store: 'Flasks, bottles and jars',
      drums: 'Waste drums',
      circuit: 'In circuit',
      other: 'Other places',
    },
    guided: 'Walk it place by place instead.',
    how: 'Answer',
    drumHint: 'A scale shows the whole drum, not its mercury: estimate it, with the method, or answer by its seal.',
    circuitHint: 'No scale reaches it: estimate it, with the method.',
    left: (n: number) =>
      n === 0 ? 'Every place is answered.' : n === 1 ? '1 place is not answered yet.' : `${n} places are not answered yet.`,
    since: 'Places that came on the book since this draft was begun',
    take: 'Ask about them too',
  },
} as const;
