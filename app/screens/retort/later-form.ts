/** A weight that was still missing from a kept firing, written down as a correction of it: all else of the firing stays as it reads now. */
import type { Reading } from '../../core/book/current.ts';
import { type FormPlan, textOr } from '../../daybook/form.svelte.ts';
import { noWeighing, type WeighingEntry, weightOf } from '../shared/weighing-entry.ts';

export interface LaterValues {
  /** One for each charge fired, as they stand in the firing. */
  sponges: WeighingEntry[];
  mercury: WeighingEntry;
  mercuryVessel: string;
  mercuryState: string;
  water: WeighingEntry;
  why: string;
}

const emptyLater = (sponges: WeighingEntry[], scale: string, vessel: string, why: string): LaterValues => ({
  sponges,
  mercury: noWeighing(scale),
  mercuryVessel: vessel,
  mercuryState: '',
  water: noWeighing(scale),
  why,
});

export const laterPlan = (
  firing: () => Reading<'firing'>,
  scale: string,
  vessel: string,
  why: string,
): FormPlan<LaterValues> => ({
  name: `later/${firing().id}`,
  kind: 'correction',
  start: () =>
    emptyLater(
      firing().body.heats.map(() => noWeighing(scale)),
      scale,
      vessel,
      why,
    ),
  full: () => emptyLater([noWeighing(scale)], scale, vessel, why),
  body: (v) => {
    const { id, body, corrections } = firing();
    const mercury = weightOf(v.mercury);
    return {
      // the reading that stands before the writer is the last correction of it
      corrects: corrections.at(-1)?.id ?? id,
      body: {
        ...body,
        heats: body.heats.map((heat, i) => {
          const sponge = v.sponges[i];
          return heat.sponge || !sponge ? heat : { ...heat, sponge: weightOf(sponge) };
        }),
        mercury:
          body.mercury ??
          (mercury === undefined
            ? undefined
            : { weight: mercury, vessel: textOr(v.mercuryVessel), state: textOr(v.mercuryState) }),
        water: body.water ?? weightOf(v.water),
      },
      why: textOr(v.why),
    };
  },
});
