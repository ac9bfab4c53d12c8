/** What is said when the record on disk lacks entries this window has seen: how many, of which desk, what may have happened, what can be done. */

/** A desk's missing entries, in plain numbers. */
export interface OlderRecord {
  readonly desk: string;
  readonly count: number;
  readonly from: number;
  /** Moment the last of them was written. */
  readonly lastWritten: string;
  /** The disk has another entry under the first of these numbers. */
  readonly differs: boolean;
  /** How many of them tell what is not for everybody: they are counted here and were not stored. */
  readonly withheld: number;
}

const entries = (count: number): string => (count === 1 ? '1 entry' : `${count} entries`);

export const recordOlder = {
  title: 'The record on disk is older than what this window has seen',
  says: ({ desk, count, from, lastWritten, differs }: OlderRecord): string =>
    `${entries(count)} of desk ${desk}, from number ${from}, last written ${lastWritten.slice(0, 16).replace('T', ' at ')}, ${count === 1 ? 'is' : 'are'} not in it${differs ? ': another entry stands there under that number' : ''}. Somebody may have put back an old copy, or the journal was cut or damaged.`,
  /** Said where some are withheld. */
  withheldSays: ({ withheld }: Pick<OlderRecord, 'withheld'>): string =>
    `${entries(withheld)} of these ${withheld === 1 ? 'tells' : 'tell'} what is not for everybody (where a bar is kept, what one person breathed). This window counts ${withheld === 1 ? 'it' : 'them'} and never stored what ${withheld === 1 ? 'it says' : 'they say'}: only the newer copy of the folder or a backup has that.`,
  whatNow:
    'Save what can be saved as a file first. Then look for the newer copy of the folder and compare. Until you say that the disk counts, this window keeps what it has seen.',
  save: ({ count, withheld }: Pick<OlderRecord, 'count' | 'withheld'>): string =>
    withheld > 0
      ? `Save the other ${entries(count - withheld)} as a file`
      : `Save ${count === 1 ? 'this entry' : `these ${count} entries`} as a file`,
  saved: (name: string, { withheld }: Pick<OlderRecord, 'withheld'>): string =>
    `Saved as ${name}: a line for each entry in it, as the journal had them.${
      withheld > 0
        ? ` ${withheld === 1 ? 'The entry' : `The ${withheld} entries`} that ${withheld === 1 ? 'is' : 'are'} not for everybody ${withheld === 1 ? 'is' : 'are'} not in it, so its numbers have gaps, and by itself it is no whole journal.`
        : ''
    }`,
  /** File name of a desk's missing entries. */
  file: ({ desk, from }: Pick<OlderRecord, 'desk' | 'from'>): string => `${desk}-from-${from}.jsonl`,
  goByDisk: 'The record on disk counts',
  goByDiskSays: 'This window then forgets what it has seen of these entries. They remain only in files that were saved.',
  goByDiskSure: 'Forget them: the record on disk counts',
  keepSeen: 'Keep what was seen',
} as const;
