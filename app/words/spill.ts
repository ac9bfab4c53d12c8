/**
 * What is done at a spill, for the page that is read standing up and for the sheet on the wall. General practice after safety.md 5.6 and 5.7, not a work
 * instruction: local rules, the poison centre and licensed people come first, and nothing here says that a place may be used again.
 */
export const spillWords = {
  title: 'A spill',
  short: 'A spill: what to do now',
  defers: 'Local rules, the poison centre and licensed people come first.',
  general: 'General practice from the trade; licensed people look it over before anybody relies on it.',
  never: 'Never a vacuum cleaner',
  neverSays:
    'It warms the mercury and blows it through the room as vapour. Nor a broom, nor a drain, nor a washing machine for the clothes.',
  hot: 'If the mercury was hot',
  hotSays:
    'Leave at once and fetch nothing. Everybody who was there is seen by a doctor, even those who feel well: the lungs may answer hours later.',
  steps: 'What to do, in this order',
  stepList: [
    'Everybody out, and nobody walks through it. Shoes that stood in it stay behind.',
    'Doors to other rooms shut. Doors and windows to the outside open. Heat turned down.',
    'Call for help: the numbers are below. Nobody goes back in until somebody trained for it has said how.',
    'Only trained people go in, with a respirator made for mercury vapour and gloves. Nobody pregnant, nursing or under age, no visitor.',
    'Gather the beads with card, pipette or tape into a strong bottle with water in it.',
    'Sulfur or zinc powder made for it only when no more can be gathered. It binds only what it has fully worked on.',
    'Mercury, powder, card and gloves into shut, labelled containers: mercury waste.',
    'Read the air at the floor and where people breathe, until it stays down. Boards, brick, cloth and cracks go on giving it off. Whether the room is used again is for the safety officer and licensed people to say.',
  ],
  firstAid: 'First aid',
  firstAidDefers: 'General; the poison centre and the doctor decide.',
  firstAidList: [
    'Out into fresh air, rest, call for help. Oxygen only from people trained to give it.',
    'Take off clothes that may hold mercury. Wash skin with soap and water, rinse eyes with water.',
    'Cough, a tight chest, fever or a taste of metal may come hours later: to a hospital at once.',
    'Tell the doctor: metallic mercury, heated or cold, when, where, for how long, what a meter showed.',
  ],
  numbers: 'Numbers of this site',
  notEntered: 'not entered',
  missing: (names: string) => `Not entered here: ${names}. Nobody should have to look for these at a spill.`,
  enterNumbers: 'Enter the numbers',
  writeSpill: 'Write this up: a spill',
  writeIncident: 'Write this up: somebody was hurt or nearly',
  print: 'Print the wall sheet',
  wall: 'For the wall',
  wallSays: 'One page in large type, with the numbers above. Numbers that are not entered print as lines to fill in by hand.',
  after: 'Afterwards',
  afterSays: 'When people are out and somebody competent has it in hand, write it up. The incident sheet prints from the entry.',
  sheets: (n: number) =>
    n === 0
      ? 'No spill or incident is written up.'
      : n === 1
        ? 'One spill or incident is written up.'
        : `${n} spills and incidents are written up.`,
  toSheets: 'Incident sheets',
  toAir: 'To the air room',
} as const;
