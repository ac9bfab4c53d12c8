/** A large book for measuring: rounds of issue, clean-up, charge and firing of the invented site, as many as asked, the same for the same seed. */
import { settle } from './site.ts';
import { Story, type Told } from './story.ts';

const dishG = 85.32;
const beakerG = 412.15;

/** The day the site is settled and its stock weighed: before the first round, so that no vessel gives what it was never given. */
const before = '1989-12-31';

/** So many entries, from 1990 on, four rounds a day. */
export function generated(entries: number, seed: number): readonly Told[] {
  const story = new Story(seed);
  const site = settle(story, before);
  const { dice } = story;
  story.tell('receipt', before, '09:00', {
    vessel: site.bottle,
    way: 'already-here',
    weight: { how: 'stated', mass: '5 t', u: '1 kg' },
  });
  for (let round = 0; story.told.length < entries; round += 1) {
    // minutes of a day are enough to tell rounds of a day apart
    const day = new Date(Date.UTC(1990, 0, 1) + Math.floor(round / 4) * 86_400_000).toISOString().slice(0, 10);
    const clock = (minute: number) => `${String(6 + (round % 4) * 4).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
    const grams = dice.between(80, 400);
    const sponge = grams * dice.between(0.36, 0.4);
    story.tell('issue', day, clock(5), {
      vessel: site.bottle,
      to: 'plates',
      weight: story.weigh(site.bench, grams * 0.7, beakerG),
    });
    const cleanUp = story.tell('clean-up', day, clock(20), {
      type: 'routine',
      lots: [
        {
          key: '1',
          label: `G ${round + 1}`,
          weight: story.weigh(site.bench, grams, dishG),
          state: 'squeezed',
          source: 'outside-plate',
        },
      ],
    });
    const charge = story.tell('charge', day, clock(30), {
      retort: site.retort,
      rows: [{ take: 'whole', key: '1', lot: `${cleanUp}/1`, weight: story.weigh(site.bench, grams, dishG) }],
      dry: 'yes',
    });
    story.tell('firing', day, clock(50), {
      heats: [{ charge, sponge: story.weigh(site.bench, sponge, dishG) }],
      mercury: {
        weight: story.weigh(site.bench, grams - sponge - dice.between(0.2, 3), beakerG),
        vessel: site.bottle,
        state: 'dry',
      },
      water: { how: 'scale', scale: site.bench, gross: '0.00 g' },
    });
  }
  return story.told.slice(0, entries);
}
