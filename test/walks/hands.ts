/**
 * Two ways to work the window: by mouse, and by keyboard alone. Both do the same jobs, so that one walk can be walked twice. The keyboard reaches
 * everything by Tab, as a person has to; nothing is focused by script.
 */
import type { Locator, Page } from 'playwright';

export interface Hand {
  /** Follows a link or presses a button. */
  readonly press: (target: Locator) => Promise<void>;
  /** Types into a field, in place of what stood there. */
  readonly write: (field: Locator, text: string) => Promise<void>;
  /** Answers one of a group of choices. */
  readonly choose: (group: Locator, answer: string) => Promise<void>;
  /** Ticks a box. */
  readonly tick: (box: Locator) => Promise<void>;
  /** Picks out of a list. */
  readonly pick: (list: Locator, option: string) => Promise<void>;
}

export const byMouse = (page: Page): Hand => ({
  press: (target) => target.click(),
  write: async (field, text) => {
    await field.click({ clickCount: 3 });
    await page.keyboard.type(text);
  },
  choose: (group, answer) => group.locator('label', { hasText: answer }).first().click(),
  tick: (box) => box.click(),
  pick: async (list, option) => {
    await list.selectOption({ label: option });
  },
});

/** More stops than any page here has. */
const most = 400;

export function byKeyboard(page: Page): Hand {
  const isHere = (target: Locator) => target.evaluate((element) => element === document.activeElement);
  const within = (target: Locator) => target.evaluate((element) => element.contains(document.activeElement));
  async function reach(target: Locator, there: (target: Locator) => Promise<boolean> = isHere): Promise<void> {
    await target.waitFor({ state: 'attached' });
    for (let i = 0; i < most; i++) {
      if (await there(target)) return;
      await page.keyboard.press('Tab');
    }
    throw new Error(`Tab does not reach ${target}`);
  }
  return {
    press: async (target) => {
      await reach(target);
      await page.keyboard.press('Enter');
    },
    write: async (field, text) => {
      await reach(field);
      await page.keyboard.press('Control+A');
      await page.keyboard.type(text);
    },
    choose: async (group, answer) => {
      const wanted = group.locator('label', { hasText: answer }).first().locator('input');
      const radio = group.locator('input[type="radio"]');
      await reach(
        group,
        async (g) =>
          (await within(g)) && (await radio.evaluateAll((all) => all.includes(document.activeElement as HTMLInputElement))),
      );
      await page.keyboard.press('Space');
      for (let i = 0; i < most && !(await wanted.isChecked()); i++) await page.keyboard.press('ArrowDown');
      if (!(await wanted.isChecked())) throw new Error(`the arrows do not reach ${answer}`);
    },
    tick: async (box) => {
      await reach(box);
      await page.keyboard.press('Space');
    },
    pick: async (list, option) => {
      await reach(list);
      const chosen = () => list.evaluate((element) => (element as HTMLSelectElement).selectedOptions[0]?.text.trim());
      await page.keyboard.press('Home');
      for (let i = 0; i < most && (await chosen()) !== option; i++) await page.keyboard.press('ArrowDown');
      if ((await chosen()) !== option) throw new Error(`no option ${option}`);
    },
  };
}

/** Presses what the page may or may not offer, once the page stands: `page` is what is there either way. */
export async function pressIfOffered(hand: Hand, offered: Locator, page: Locator): Promise<void> {
  await page.first().waitFor();
  if (await offered.isVisible()) await hand.press(offered);
}
