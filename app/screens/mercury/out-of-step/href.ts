/** The address of the list of what is out of step; with days, of what concerns them: `#/mercury/out-of-step/from=2026-01-01/to=2026-03-31`. */
import { roomHref } from '../../shared/places.ts';
import type { Days } from '../address.ts';

export const outOfStepKey = 'out-of-step';
export const outOfStepHref = `${roomHref('mercury')}/${outOfStepKey}`;

export const outOfStepIn = ({ from, to }: Days): string =>
  [outOfStepHref, ...(from === '' ? [] : [`from=${from}`]), ...(to === '' ? [] : [`to=${to}`])].join('/');
