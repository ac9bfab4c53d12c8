/** Texts of the wall sheet that the spill page does not have. */
export const wallPaper = {
  name: 'Wall sheet',
  title: 'If mercury is spilled',
  fillByHand: 'Lines: not entered in the daybook when this was printed. Fill them in by hand, and enter them.',
  noNumber: '…………………………………………',
  stop: 'This site stops the fire when',
  noStop: 'No stop rule is set here: ……………………………………………………………………',
  always:
    'And on a leak, a blocked pipe, lost cooling water, an alarm, anybody feeling ill: heat off, people out, retort left shut.',
  printed: (serial: string) => `Sheet ${serial}: print it again when a number or a rule has changed.`,
  says: (name: string, text: string) => `${name}: ${text}`,
} as const;
