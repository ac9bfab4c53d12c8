/**
 * A large book for measuring: rounds of issue, clean-up, charge and firing of the invented site with a melt every evening and a count of the whole every
 * thirty days, as many entries as asked, the same for the same seed. No period of it is closed.
 */
import { beakerG, benchScale, dishG, platformScale, type SampleSite, settle } from './site.ts';
import { Story, type Told } from './story.ts';

/** The day the site is settled and its stock weighed: before the first round, so that no vessel gives what it was never given. */
const before = '1989-12-31';
const roundsADay = 4;
const daysACount = 30;
const daysACertificate = 280;
/** What a flask of the trade holds, and what the bottle may sink to before one is bought. */
const flaskG = 34473;
const leastG = 4000;
/** Concentrate of a round, and what is truly lost of the mercury on the plates for a tonne of it. */
const oreT = 2;
const lossG = [2, 5] as const;
const bottleTareG = 3920;

/** What is truly in the bottle and on the plates, in grams; the rest of the circuit stays as it is. */
interface Truth {
  bottle: number;
  plates: number;
}

function count(story: Story, site: SampleSite, day: string, truth: Truth): void {
  const { scatter } = story;
  const place = (vessel: string) => `vessel:${vessel}`;
  const seen = (g: number, method: string) => ({
    mass: `${Math.max(0, Math.round(g * scatter.between(0.9, 1.1)))} g`,
    method,
    sharedU: 0.1,
    ownU: 0.08,
  });
  const platform = (netG: number) => story.weigh(site.platform, Math.round(netG / 5) * 5, bottleTareG, 0);
  story.tell('stock-take', day, '22:30', {
    scope: 'whole',
    lines: [
      { how: 'sealed', place: place(site.flaskOne), seal: 'G 1' },
      { how: 'weighed', place: place(site.flaskTwo), weight: platform(0) },
      { how: 'weighed', place: place(site.bottle), weight: platform(truth.bottle) },
      { how: 'weighed', place: place(site.strained), weight: story.weigh(site.bench, 0, dishG) },
      { how: 'estimated', place: place(site.drum), estimate: { mass: '0 g', method: 'looked into, empty' } },
      { how: 'seen', place: `condenser:${site.retort}` },
      { how: 'estimated', place: 'circuit:mortar', estimate: seen(160, 'panned sand of the mortar box') },
      { how: 'estimated', place: 'circuit:plates', estimate: seen(truth.plates, 'scraped square, by area') },
      { how: 'estimated', place: 'circuit:pan', estimate: { mass: '0 g', method: 'no pan is set up' } },
      { how: 'estimated', place: 'circuit:trap', estimate: seen(150, 'drawn off and measured back') },
    ],
  });
}

/** What the book begins with: a sealed flask, the bottle, and the circuit as it was found at the first count. */
function opening(story: Story, site: SampleSite): Truth {
  const truth: Truth = { bottle: 30_000, plates: 800 };
  story.tell('receipt', before, '09:00', {
    vessel: site.bottle,
    way: 'already-here',
    weight: story.weigh(site.platform, truth.bottle, bottleTareG, 0),
  });
  story.tell('receipt', before, '09:10', {
    vessel: site.flaskOne,
    way: 'already-here',
    weight: { how: 'stated', mass: '34.473 kg', u: '20 g', by: 'invoice' },
    seal: 'G 1',
  });
  count(story, site, before, truth);
  return truth;
}

/** So many entries, from 1990 on, four rounds a day. */
export function generated(entries: number, seed: number): readonly Told[] {
  const story = new Story(seed);
  const site = settle(story, before);
  const { dice } = story;
  const truth = opening(story, site);
  let evening: { charge: string; sponge: number }[] = [];
  for (let round = 0; story.told.length < entries; round += 1) {
    // minutes of a day are enough to tell rounds of a day apart
    const days = Math.floor(round / roundsADay);
    const day = new Date(Date.UTC(1990, 0, 1) + days * 86_400_000).toISOString().slice(0, 10);
    const clock = (minute: number) =>
      `${String(6 + (round % roundsADay) * 4).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
    const grams = dice.between(80, 400);
    const sponge = grams * dice.between(0.36, 0.4);
    const issued = grams - sponge + oreT * dice.between(...lossG) + (truth.plates < 700 ? 40 : 0);
    const caught = grams - sponge - dice.between(0.2, 1.6);
    story.tell('issue', day, clock(5), { vessel: site.bottle, to: 'plates', weight: story.weigh(site.bench, issued, beakerG) });
    const cleanUp = story.tell('clean-up', day, clock(20), {
      type: 'routine',
      ore: { mass: `${oreT.toFixed(2)} t`, u: 0.02 },
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
      mercury: { weight: story.weigh(site.bench, caught, beakerG), vessel: site.bottle, state: 'dry' },
      water: { how: 'scale', scale: site.bench, gross: '0.00 g' },
    });
    truth.bottle += caught - issued;
    truth.plates += issued - (grams - 0.985 * sponge) - oreT * dice.between(...lossG);
    evening.push({ charge, sponge });
    if (evening.length < roundsADay) continue;
    if (days % daysACertificate === daysACertificate - 1) certified(story, site, day, days);
    melt(story, site, day, evening);
    evening = [];
    if (days % daysACount === daysACount - 1) count(story, site, day, truth);
    if (truth.bottle < leastG) truth.bottle += bought(story, site, day);
  }
  return story.told.slice(0, entries);
}

/** The sponges of a day into one bar. */
function melt(story: Story, site: SampleSite, day: string, sponges: readonly { charge: string; sponge: number }[]): void {
  const weight = sponges.reduce((sum, { sponge }) => sum + sponge, 0) * story.dice.between(0.978, 0.984);
  story.tell('melt', day, '21:00', {
    sponges: sponges.map(({ charge, sponge }) => ({ charge, weight: story.weigh(site.bench, sponge, dishG) })),
    flux: 'borax and soda',
    bars: [{ key: '1', label: `G ${day}`, weight: story.weigh(site.bench, weight, 0) }],
  });
}

/** A flask bought, and poured into the bottle as its invoice says. Answers what was truly in it. */
function bought(story: Story, site: SampleSite, day: string): number {
  story.tell('receipt', day, '23:00', {
    vessel: site.bottle,
    way: 'bought',
    weight: { how: 'stated', mass: '34.473 kg', u: '20 g', by: 'invoice' },
  });
  return flaskG + story.dice.between(-20, 20);
}

/** Both scales under new certificates, before the old ones lapse. */
function certified(story: Story, site: SampleSite, day: string, days: number): void {
  story.tell('scale', day, '20:00', { of: site.bench, ...benchScale(`C-${days}`, day) });
  story.tell('scale', day, '20:10', { of: site.platform, ...platformScale(`P-${days}`, day) });
}
