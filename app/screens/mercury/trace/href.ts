/** The address of the trace of everything an entry moved. */
import { roomHref } from '../../shared/places.ts';

export const traceKey = 'trace';
export const traceHref = (entry: string): string => `${roomHref('mercury')}/${traceKey}/${entry}`;
