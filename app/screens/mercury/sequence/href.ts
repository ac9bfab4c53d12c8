/** Where runs of periods are, and the name of the setting that keeps the chosen false alarm with this daybook. */
export const sequenceHref = '#/mercury/periods';
export const alarmSetting = 'sequence-false-alarm';
