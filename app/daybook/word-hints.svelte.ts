/** Whether trade words are explained at the fields that use them. They are until somebody turns it off; the choice stays on this machine, outside any daybook. */
import { noStore, openStore, type Store } from './drafts.ts';

export const hintChoices = ['on', 'off'] as const;
export type HintChoice = (typeof hintChoices)[number];

export class WordHints {
  choice = $state<HintChoice>('on');
  #store: Store = noStore;

  /** Reads what was chosen before. */
  async start(): Promise<void> {
    const store = await openStore('window');
    if (!store.ok) return;
    this.#store = store.value;
    if ((await this.#store.setting('word-hints').catch(() => undefined)) === 'off') this.choice = 'off';
  }

  async choose(choice: HintChoice): Promise<void> {
    this.choice = choice;
    await this.#store.saveSetting('word-hints', choice).catch(() => {});
  }
}
