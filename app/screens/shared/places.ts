/** Addresses within the window. Anything that has an entry has an address; a link to it is made here and nowhere else. */
import type { Said } from '../../core/book/site-says.ts';
import type { RegisterKind } from '../../core/kinds/index.ts';

/** The page of an entry, by its id. */
export const entryHref = (id: string): string => `#/daybook/${id}`;
/** The run page of a charge. */
export const chargeHref = (id: string): string => `#/retort/${id}`;
/** The page of a lot. Its id holds a stroke: it goes into one part of the address. */
export const lotHref = (id: string): string => `#/retort/lot/${encodeURIComponent(id)}`;
/** A register, or one thing in it. */
export const registerHref = (register: RegisterKind, id?: string): string =>
  `#/site/${register}${id === undefined ? '' : `/${id}`}`;
/** The Papers room with this paper, about this thing, chosen. */
export const paperHref = (paper: string, id: string): string => `#/papers/${paper}/${encodeURIComponent(id)}`;
/** What stands in place of an id where a new thing is entered. */
export const newThing = 'new';
/** The sheet for a new thing of a register. */
export const newThingHref = (register: RegisterKind): string => registerHref(register, newThing);
export const standingHref = '#/site/standing';
/** What the site asks at each work; of one work where it is named. */
export const asksHref = (work?: string): string => `#/site/asks${work === undefined ? '' : `/${work}`}`;
/** A list the site keeps for itself: stop rules, numbers, keeping of records. */
export const saidHref = (kind: Said): string => `#/site/${kind}`;
/** The register of what leaves the site. */
export const leavingHref = '#/site/leaving';
/** Keys and signatures; who sees what. */
export const keysHref = '#/site/keys';
export const seesHref = '#/site/sees';
/** Backups, and the way back from one. */
export const backupsHref = '#/site/backups';
/** A room. */
export const roomHref = (key: string): string => `#/${key}`;

/** The parts of an address: `#/retort/abc` is `['retort', 'abc']`. */
export const partsOf = (hash: string): readonly string[] =>
  hash
    .replace(/^#\/?/, '')
    .split('/')
    .filter((part) => part !== '')
    .map((part) => {
      try {
        return decodeURIComponent(part);
      } catch {
        return part;
      }
    });
