/** Every weight that stands in a body, with its path there (`lots[0].weight`), as the errors of its reading are named by it. */
import { under } from '../result.ts';
import { type Weight, weight } from '../shapes.ts';

export interface Standing {
  readonly path: string;
  readonly weight: Weight;
}

const ways: readonly unknown[] = ['scale', 'volume', 'stated'];

/** All of them, in the order they stand. A thing of the same name that is no weight (how a place was counted) is left out. */
export function weightsIn(value: unknown, path = ''): readonly Standing[] {
  if (value === null || typeof value !== 'object') return [];
  if (Array.isArray(value)) return value.flatMap((item, i) => weightsIn(item, under(path, i)));
  if (ways.includes((value as { how?: unknown }).how) && weight.safeParse(value).success)
    return [{ path, weight: value as Weight }];
  return Object.entries(value).flatMap(([key, member]) => weightsIn(member, under(path, key)));
}
