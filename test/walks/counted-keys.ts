/** How many keys a walk presses: what a day at the desk costs the hand. */
import type { Page } from 'playwright';

/** Counts every key from now on, each typed letter as one; a step from field to field with Tab is one too. */
export function countedKeys(page: Page): () => number {
  let keys = 0;
  const press = page.keyboard.press.bind(page.keyboard);
  const type = page.keyboard.type.bind(page.keyboard);
  page.keyboard.press = async (...asked) => {
    keys += 1;
    await press(...asked);
  };
  page.keyboard.type = async (...asked) => {
    keys += asked[0].length;
    await type(...asked);
  };
  return () => keys;
}
