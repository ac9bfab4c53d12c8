/** One line of how a figure comes about: plain text for a table, reckoned elsewhere. */
export interface WorkingLine {
  /** What sort of line it is. */
  readonly sort: 'reading' | 'scale' | 'formula' | 'source' | 'result' | 'note';
  /** What it says. */
  readonly text: string;
  /** The figure of the line, set apart to the right. */
  readonly figure?: string;
  /** The entry it comes from, as a link. */
  readonly href?: string;
}
