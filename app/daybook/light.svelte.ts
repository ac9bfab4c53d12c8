/** Day or retort house: how bright the page is. By default as the machine has it; a choice is remembered on this machine, outside any daybook. */
import { noStore, openStore, type Store } from './drafts.ts';

export const lights = ['auto', 'light', 'dark'] as const;
export type LightChoice = (typeof lights)[number];

const isLight = (value: unknown): value is LightChoice => lights.some((l) => l === value);

export class Light {
  choice = $state<LightChoice>('auto');
  #store: Store = noStore;

  /** Reads what was chosen before. */
  async start(): Promise<void> {
    const store = await openStore('window');
    if (!store.ok) return;
    this.#store = store.value;
    const before = await this.#store.setting('light').catch(() => undefined);
    if (isLight(before)) this.choice = before;
  }

  async choose(choice: LightChoice): Promise<void> {
    this.choice = choice;
    await this.#store.saveSetting('light', choice).catch(() => {});
  }
}
