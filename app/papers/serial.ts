/** The number of a blank form: how far each desk's journal had come and the first characters of its end mark. It tells a sheet from one printed after another entry. */
import { withCheck } from '../core/form-serial.ts';
import type { Frame } from './paper.ts';

/** "212-3f9a01c4-K", one number for each desk and a check character for all of it. The same record gives the same number. */
export const serialOf = ({ desks }: Pick<Frame, 'desks'>): string =>
  withCheck(desks.map(({ entries, endMark }) => `${entries}-${endMark.slice(0, 8)}`).join(' · '));
