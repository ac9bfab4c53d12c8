/** The pages of what a site sets for itself, in the order they are wanted. */
import type { Said } from '../../core/book/site-says.ts';
import { backupWords } from '../../words/backups.ts';
import { kindNames } from '../../words/labels.ts';
import { leavingWords } from '../../words/screens-leaving.ts';
import { seesWords } from '../../words/screens-lock.ts';
import { saysWords as words } from '../../words/screens-site-says.ts';
import { keysWords } from '../../words/signatures.ts';
import { asksHref, backupsHref, keysHref, leavingHref, saidHref, seesHref } from '../shared/places.ts';

export const saidKinds: readonly Said[] = [
  'stop-rules',
  'site-figures',
  'site-numbers',
  'retention',
  'lead-times',
  'site-notation',
];

export const pagesOfSite: readonly { readonly href: string; readonly name: string; readonly says: string }[] = [
  { href: asksHref(), name: words.asks.name, says: words.asks.says },
  { href: leavingHref, name: leavingWords.name, says: leavingWords.says },
  { href: backupsHref, name: backupWords.name, says: backupWords.says },
  ...saidKinds.map((kind) => ({ href: saidHref(kind), name: kindNames[kind], says: words[kind].says })),
  { href: seesHref, name: seesWords.name, says: seesWords.says },
  { href: keysHref, name: keysWords.name, says: keysWords.says },
];
