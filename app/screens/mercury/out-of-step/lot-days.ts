/** How many days a lot may lie in the safe before it is told: the site's choice, kept among the settings of this daybook in this window. */
import { startingLotDays } from '../../../core/book/out-of-step.ts';
import type { Store } from '../../../daybook/drafts.ts';

const key = 'lot-days';

/** A whole number of days from 1; null for anything else. */
export function lotDaysFrom(text: string): number | null {
  const n = Number(text.trim());
  return /^\d{1,5}$/.test(text.trim()) && n >= 1 ? n : null;
}

/** The days chosen for this daybook in this window, or those to begin with: what the site set, else the program's own. */
export async function readLotDays(store: Store, starting: () => number = () => startingLotDays): Promise<number> {
  const kept = await store.setting(key).catch(() => undefined);
  return typeof kept === 'number' ? (lotDaysFrom(String(kept)) ?? starting()) : starting();
}

export const saveLotDays = (store: Store, days: number): Promise<void> => store.saveSetting(key, days).catch(() => {});
