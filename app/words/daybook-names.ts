/** Names of answers in entries of work that no other table has. */

type NameOf<T extends string> = Readonly<Record<T, string>>;

export const takeNames: NameOf<'whole' | 'part' | 'not-found' | 'unwritten'> = {
  whole: 'The whole lot',
  part: 'Part of a lot',
  'not-found': 'Not found',
  unwritten: 'Clean-up not written up yet',
};

export const otherNames: NameOf<'cake' | 'mercury' | 'residue'> = {
  cake: 'An earlier cake',
  mercury: 'Mercury',
  residue: 'Residue',
};

export const mercuryStateNames: NameOf<'dry' | 'wet' | 'unknown'> = { dry: 'Dry', wet: 'Wet', unknown: 'Not known' };

export const turnedNames: NameOf<'on' | 'off'> = { on: 'On', off: 'Off' };

export const answerNames: NameOf<'yes' | 'no' | 'na'> = { yes: 'Yes', no: 'No', na: 'Does not apply here' };

export const accuracyNames: NameOf<'I' | 'II' | 'III' | 'IIII'> = { I: 'I', II: 'II', III: 'III', IIII: 'IIII' };
