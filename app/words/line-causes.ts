/** Why a complete line of a journal does not verify, in plain words: for notices, problems and the terminal's `check`. */

const causes: Readonly<Record<string, string>> = {
  'not-text': 'its bytes are not readable text',
  'not-json': 'it is not one complete record',
  'not-canonical': 'it is not written in the one form an entry is written in',
  'wrong-hash': 'it is not what it was when it was written: its hash does not fit its content',
  'wrong-desk': 'it names another desk than the file it stands in',
  'wrong-number': 'its number is not the next one: a line before it is missing, repeated or out of place',
  'wrong-prev': 'it does not follow from the line before it',
  'not-an-entry': 'its chain holds, but its content is not an entry as this program knows it',
  'line-missing': 'a line is missing here, and this machine wrote it, so it cannot be on its way',
  'line-end': 'the end of the line was changed',
};

export const lineCauseText = (cause: string): string => causes[cause] ?? cause;
