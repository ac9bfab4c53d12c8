/** Texts of the statement of a closed period. It says who closed what and on which entries it rests; it judges nothing. */
export const closingPaper = {
  filed: (id: string, version: number) => `Closing ${id}, version ${version}`,
  section: 'Statement of a closed period',
  version: 'Version',
  versionText: (n: number) => String(n),
  replaces: 'Follows',
  replacesText: (n: number, at: string) => `version ${n}, closed ${at}; that version stays as it was issued`,
  from: 'Begins',
  beginning: 'with the first entry of the book',
  after: (at: string) => `after the stock-take of ${at}`,
  to: 'Ends',
  upTo: (at: string) => `with the stock-take of ${at}`,
  why: 'Remark',
  desk: (desk: string, entries: number) => `Rests on desk ${desk}, up to entry ${entries}, end mark`,
  adjustment: 'Adjustment',
  adjustmentText: (g: string, version: number, to: string) =>
    `${g} to version ${version} of the closing to ${to}: put down there and found different by later entries`,
  onClosed: 'On the figures as closed before',
  note: 'These figures stay as they are. What later entries change is told as an adjustment in the period after this one, or in the next version of this statement.',
  signature: 'Signature',
  signatureNote:
    'Signed by who closed it. It says that this is the statement that was drawn up, and nothing about whether it is right.',
  who: 'Closed by',
  what: 'What',
  whatText: (version: number, at: string) => `the period, version ${version}, ${at}`,
  signed: 'Signature and day',
} as const;
