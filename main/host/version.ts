/** The program's version, as its package says. */
import described from '../../package.json' with { type: 'json' };

export const version: string = described.version;
