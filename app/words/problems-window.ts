/** Words for what can stand between the window and the record. */
import type { ProblemTexts } from './problems.ts';

export const windowProblems: ProblemTexts = {
  'host-silent': () =>
    'The program behind this page does not answer, so nothing was kept. What was typed is kept as a draft in this browser. Start the program again and open the address it prints: the draft waits there. Nothing is lost that was shown as kept.',
  'host-unclear': () =>
    'The program behind this window answered something this window does not understand: close both and start the program again.',
  'reading-only': () => 'This window only reads the daybook, so nothing can be kept here: the line at the top says why.',
  'writer-missing': () => 'Nobody is named as writing this: choose who is writing, beside Keep.',
  'store-newer': () =>
    'A newer version of this program has used this window’s drafts. They are left alone, and drafts are not remembered here: use the newer version.',
  'store-unusable': () =>
    'The browser’s own database cannot be used (a private window, or a full disk), so drafts are not remembered. Keeping entries works as ever.',
};
