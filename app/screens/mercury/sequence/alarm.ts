/** The false alarm that a site accepts, as it is chosen and kept: a share above nothing and below one. */
import { alarmText } from '../../../words/sequence.ts';

/** Where nothing else was chosen: one in twenty. */
export const startingAlarm = 0.05;

/** What is offered without typing. */
export const offeredAlarms = [0.01, 0.05, 0.1] as const;
export const ownAlarm = 'own';

export const alarmChoices = (ownWords: string): readonly { readonly value: string; readonly label: string }[] => [
  ...offeredAlarms.map((value) => ({ value: String(value), label: alarmText(value) })),
  { value: ownAlarm, label: ownWords },
];

/** A kept setting as a share; the starting value where it is none. */
export const keptAlarm = (setting: unknown): number =>
  typeof setting === 'number' && setting > 0 && setting < 1 ? setting : startingAlarm;

/** A typed percentage as a share; null where it is none. */
export function typedAlarm(percent: string): number | null {
  const text = percent.trim().replace(',', '.');
  if (!/^\d{1,2}(\.\d{1,6})?$/.test(text)) return null;
  // shifted as text, so that 2.5 is 0.025 and nothing near it
  const share = Number(`${text}e-2`);
  return share > 0 && share < 1 ? share : null;
}
