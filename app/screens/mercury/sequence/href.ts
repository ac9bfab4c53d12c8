/** Where runs of periods are. */
export const sequenceHref = '#/mercury/periods';
