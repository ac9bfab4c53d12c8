/** A question put before something is kept: what is odd, and the box that says it is so all the same. */
export interface Question {
  readonly title: string;
  /** What is odd, whole: another sentence is another question, and asked anew. */
  readonly says: string;
  /** Words of the box. */
  readonly tick: string;
  /** Said where it was left unanswered. */
  readonly missing: string;
}
