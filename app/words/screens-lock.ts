/** Texts of the lock of the window and of the page that says who sees what. No word here promises more than a lock of a window can. */
type Data = Readonly<Record<string, string | number>>;

const seconds = (n: number | string | undefined): string => {
  const s = Number(n ?? 0);
  return s < 90 ? `${s} ${s === 1 ? 'second' : 'seconds'}` : `${Math.ceil(s / 60)} minutes`;
};

export const lockProblems: Readonly<Record<string, (data: Data) => string>> = {
  'session-locked': () =>
    'The window is locked: nothing of this daybook is shown or kept until somebody opens it with a passphrase.',
  'passphrase-wrong': (d) =>
    Number(d.seconds) > 0
      ? `This is not the passphrase. The next try is looked at in ${seconds(d.seconds)}; see whether capitals or another keyboard are on.`
      : 'This is not the passphrase. Look at capitals and the keyboard, and try again.',
  'passphrase-wait': (d) =>
    `Too many wrong tries: the next one is looked at in ${seconds(d.seconds)}. This one was not looked at.`,
  'passphrase-short': (d) =>
    `A passphrase has at least ${d.least} characters: several words that belong to nobody else are good.`,
  'no-passphrase': () => 'This person has no passphrase on this machine: choose somebody who has.',
  'unknown-person': () => 'This is nobody in the register of people: choose somebody from the list, or enter the person first.',
  'lock-unreadable': (d) =>
    `What this machine keeps of the passphrases cannot be read (${d.path}), so the window stays locked. Put the file back from a copy; or, whoever looks after this machine moves it away, and the window opens without passphrases. No entry is lost.`,
  'by-locked': () => 'This person has a passphrase: lock the window and open it as them to write in their name.',
  'reads-only': () => 'Who opened the window is in the register as a reader only, and a reader writes nothing.',
  'not-for-this-view': () =>
    'This is not for everybody, and who opened the window is not one of those by what they do here: lock the window and let one of them open it.',
};

export const lockWords = {
  button: 'Lock',
  title: 'The window is locked',
  locked: (site: string) => `${site} lies closed. What was being written waits as a draft.`,
  who: 'Who opens it',
  passphrase: 'Passphrase',
  open: 'Open the window',
  goOn: 'Go on',
  noneSet: 'Nobody here has a passphrase: whoever sits at this machine may go on.',
  looking: 'Looking …',
  forgotten: 'Forgotten?',
  forgottenSays:
    'A passphrase is kept nowhere and nobody can tell it. Somebody else with one can open the window. Otherwise whoever looks after this machine moves this file away, and the window opens without passphrases; no entry is lost:',
  file: 'File',
  close: 'Leave this daybook',
} as const;

export const seesWords = {
  name: 'Who sees what',
  says: 'What follows what somebody does here, when the window locks, passphrases',
  title: 'Who sees what',
  note: 'On this machine',
  roles: 'What follows what somebody does here',
  rolesNote: 'By the register of people',
  rolesSays:
    'Everything in the daybook is for everybody who works with it, except two things. They go by what the person who writes does here, and with passphrases by who opened the window.',
  what: 'What',
  seen: { yes: 'sees it', no: 'does not' },
  things: { 'bar-place': 'Where a bar is kept', 'personal-air': 'What one person breathed, and days of health surveillance' },
  writes: 'Writing entries',
  writesOf: { yes: 'may', no: 'not where passphrases are set' },
  idle: 'When the window locks',
  idleNote: 'By itself',
  idleLabel: 'After how long without a key or a touch',
  idleOf: (minutes: number | null) =>
    minutes === null ? 'Never by itself' : minutes === 1 ? 'After 1 minute' : `After ${minutes} minutes`,
  idleSays: 'It also locks at once by the button below the index. Drafts stay, and the same page comes back.',
  passphrases: 'Passphrases',
  passphrasesNote: 'Only where they are wanted',
  passphrasesSays:
    'As long as nobody has one, a locked window opens by one touch and only keeps it from being read in passing. As soon as one person has one, the window opens locked, the program hands nothing over until one of them gives theirs, and nobody else writes in their name.',
  person: 'Person',
  does: 'Does here',
  has: 'Passphrase',
  set: 'set',
  notSet: 'none',
  nobody: 'Nobody is in the register of people yet.',
  whose: 'Whose',
  before: 'The passphrase until now',
  after: 'New passphrase',
  afterHint: 'At least 8 characters. It is kept nowhere: only whether one fits can be told.',
  again: 'The same once more',
  differ: 'The two are not the same: type both again.',
  setIt: 'Set the passphrase',
  take: 'Take it away',
  done: { set: 'The passphrase is set.', taken: 'The passphrase is taken away.', idle: 'Set.' },
  protectsSays: [
    'The lock and the passphrases keep the window, and the program behind it, from showing the record to somebody who passes by or sits down here.',
    'They encrypt nothing. Whoever can read the folder, a copy or a backup that is not encrypted can read the journal with any text editor; whoever has this machine’s user account can take the passphrases away; and the commands of the terminal ask for none. What this browser has seen of the record lies in its own store on this machine as well. Where that matters, use the system’s own disk encryption and a user account for each person, and encrypt backups.',
  ],
} as const;
