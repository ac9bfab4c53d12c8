/**
 * The work of the invented site: what truly moves is simulated here, and the entries say what the scales showed. The truth is kept so that the counts
 * of the story make sense; the program never sees it.
 */
import type { LotSource } from '../../../app/core/kinds/clean-up.ts';
import type { Body } from '../../../app/core/kinds/index.ts';
import { wholeCount } from './count.ts';
import { beakerG, dishG, firstDay, type SampleSite } from './site.ts';
import { later, type ScaleWeight, type Story } from './story.ts';

/** What the site truly loses over the plates, in grams for a tonne of concentrate. */
const usualLoss = [2.6, 4.2] as const;

/** What is truly where, in grams. */
export interface Truth {
  flaskTwo: number;
  bottle: number;
  strained: number;
  plates: number;
  mortar: number;
  trap: number;
  drum: number;
}

export interface MadeLot {
  readonly id: string;
  readonly grams: number;
  /** Gold, silver and base in it. */
  readonly metal: number;
  /** Water it stands wet with: in its weight, and never weighed by itself. */
  readonly water: number;
}

/** A bar as it was poured. */
export interface PouredBar {
  readonly id: string;
  readonly melt: string;
  readonly label: string;
  readonly day: string;
  readonly grams: number;
}

/** Prills of every melt: picked from the slag, and kept until a later melt takes them. */
const prillsG = 0.31;

export class Work {
  readonly bars: PouredBar[] = [];
  readonly story: Story;
  readonly site: SampleSite;
  /** Flask 2 holds 35 g less than its invoice says; the bottle also holds what was brushed out of the condenser before the book. */
  readonly truth: Truth = { flaskTwo: 34438, bottle: 2158.78, strained: 0, plates: 640, mortar: 160, trap: 150, drum: 0 };
  #ball = 0;
  #bar = 0;

  constructor(story: Story, site: SampleSite) {
    this.story = story;
    this.site = site;
  }

  /** Opening stock: two sealed flasks by their invoices, the bottle weighed, and the first count of the whole. */
  open(): void {
    const { story, site } = this;
    const flask = (vessel: string, seal: string) =>
      story.tell('receipt', firstDay, '09:00', {
        vessel,
        way: 'already-here',
        weight: { how: 'stated', mass: '34.473 kg', u: '20 g', by: 'invoice' },
        seal,
      });
    flask(site.flaskOne, 'A 4411');
    flask(site.flaskTwo, 'A 4412');
    story.tell('receipt', firstDay, '09:00', {
      vessel: site.bottle,
      way: 'already-here',
      weight: this.read(2150, beakerG),
    });
    wholeCount(this, firstDay, '15:00');
  }

  /** What the bench scale shows for so much: a hundredth or so beside it, as its certificate allows; an empty vessel shows its tare. */
  read(netG: number, tareG: number): ScaleWeight {
    const { story, site } = this;
    return story.weigh(site.bench, netG > 0 ? netG + story.scatter.between(-0.025, 0.025) : 0, tareG);
  }

  /** Flask 2 is opened, and weighed before anything is drawn: the first scale that ever sees what the invoice stated. */
  openFlask(day: string): void {
    const { story, site, truth } = this;
    story.tell('stock-take', day, '08:05', {
      scope: 'part',
      lines: [
        {
          how: 'weighed',
          place: `vessel:${site.flaskTwo}`,
          weight: story.weigh(site.platform, Math.round(truth.flaskTwo / 5) * 5, 3920, 0),
        },
      ],
      note: 'Opened. Weighed before the first draw.',
    });
  }

  /** Draws mercury from the opened flask into the working bottle. */
  draw(day: string, netG: number): void {
    this.truth.flaskTwo -= netG;
    this.truth.bottle += netG;
    this.story.tell('issue', day, '08:15', {
      vessel: this.site.flaskTwo,
      to: 'vessel',
      into: this.site.bottle,
      weight: this.read(netG, beakerG),
    });
  }

  /** A day of crushing concentrate, with its issue to plates or mortar and a loss to the tailings. */
  crush(day: string, oreT: number, fedG: number, to: 'plates' | 'mortar'): void {
    const { story, site, truth } = this;
    story.tell('crushing', day, '16:00', {
      battery: site.battery,
      feed: 'concentrate',
      mercuryFed: to,
      ore: { mass: `${oreT.toFixed(2)} t`, by: 'weighed', u: 0.02 },
      parcel: site.parcel,
      stamps: 5,
      dropsAMinute: 92,
      hours: 2,
    });
    story.tell('issue', day, '09:10', {
      vessel: site.bottle,
      to,
      weight: this.read(fedG, beakerG),
      battery: site.battery,
    });
    truth.bottle -= fedG;
    // most of what is fed to the mortar ends up on the plates, and a little runs over them into the well or is lost
    const over = story.dice.between(3, 9);
    truth.mortar += to === 'mortar' ? 0.1 * fedG : 0;
    truth.trap += over;
    truth.plates += (to === 'mortar' ? 0.9 : 1) * fedG - over - oreT * story.dice.between(...usualLoss);
  }

  /** A clean-up: balls of about equal weight, and mercury strained off. */
  cleanUp(
    day: string,
    type: 'routine' | 'mid' | 'general' | 'final',
    metalG: number,
    balls: number,
    source: LotSource,
    { ore, waterG = 0, plate }: { ore?: number; waterG?: number; plate?: string } = {},
  ): MadeLot[] {
    const { story, site, truth } = this;
    const grams = metalG / story.dice.between(0.365, 0.395) + waterG;
    const shares = Array.from({ length: balls }, () => story.dice.between(0.85, 1.15));
    const whole = shares.reduce((s, x) => s + x, 0);
    const lots = shares.map((share) => ({
      grams: Number(((grams * share) / whole).toFixed(2)),
      metal: (metalG * share) / whole,
      water: (waterG * share) / whole,
    }));
    // old plates that are cleared give less than plates at work
    const runny = story.dice.between(0.2, 0.3) * (type === 'final' ? 0.4 : 1);
    const strainedG = Number((Math.max(truth.plates, 80) * runny).toFixed(2));
    const id = story.tell('clean-up', day, '13:30', {
      type,
      where: source === 'mortar' ? 'mortar box' : 'apron and lower plate',
      ...(ore === undefined ? {} : { ore: { mass: `${ore.toFixed(2)} t`, u: 0.02 } }),
      lots: lots.map((lot, i) => {
        this.#ball += 1;
        return {
          key: String(i + 1),
          label: `B ${this.#ball}`,
          weight: story.weigh(site.bench, lot.grams, dishG),
          state: 'squeezed' as const,
          source,
          ...this.#scraped(source, i, lots.length, plate),
        };
      }),
      strained: { weight: this.read(strainedG, beakerG), vessel: site.strained },
      present: [site.keeper, site.helper],
      locked: 'safe, lock 2',
    });
    const mercury = lots.reduce((s, lot) => s + lot.grams - lot.metal - lot.water, 0);
    truth.plates -= mercury + strainedG;
    truth.strained += strainedG;
    // strained mercury goes back to work
    if (type !== 'final' && truth.plates < 250) this.feed(later(day, 1), 420);
    return lots.map((lot, i) => ({ id: `${id}/${i + 1}`, ...lot }));
  }

  /** Which plate a ball came off: the last of two balls is of both plates together, and at the first clean-up nobody wrote it down. */
  #scraped(source: LotSource, i: number, of: number, plate?: string): { plates?: string[] } {
    const { site } = this;
    if (plate !== undefined) return { plates: [plate] };
    if (source !== 'outside-plate' || this.#ball <= 3) return {};
    if (i + 1 < of) return { plates: [site.plate] };
    return { plates: of > 2 ? [site.lowerPlate] : [site.plate, site.lowerPlate] };
  }

  /** An open day with the battery on water alone: what the water carries off is no entry, because nobody sees it. */
  openDay(day: string, visitors: number, carriedOffG: number): void {
    const { story, site, truth } = this;
    story.tell('open-day', day, '15:00', {
      visitors,
      areas: 'battery house and yard',
      covered: 'upper plate under boards',
      guides: [site.helper],
    });
    story.tell('crushing', day, '15:30', {
      battery: site.battery,
      feed: 'water-only',
      mercuryFed: 'none',
      stamps: 5,
      dropsAMinute: 60,
      hours: 1,
    });
    truth.plates -= carriedOffG;
  }

  /** Dresses the plates from the strained jar first, then from the bottle. */
  feed(day: string, netG: number): void {
    const { story, site, truth } = this;
    const vessel = truth.strained > netG ? site.strained : site.bottle;
    if (vessel === site.strained) truth.strained -= netG;
    else truth.bottle -= netG;
    truth.plates += netG;
    story.tell('issue', day, '08:40', {
      vessel,
      to: 'plates',
      weight: this.read(netG, beakerG),
      plate: site.plate,
      condition: 'dry',
    });
  }

  /** A charge of whole lots, weighed again. */
  charge(day: string, lots: readonly MadeLot[]): { id: string; grams: number; metal: number; water: number } {
    const { story, site } = this;
    const again = lots.map((lot) => Number((lot.grams * story.dice.between(0.9988, 0.9999)).toFixed(2)));
    const grams = again.reduce((s, g) => s + g, 0);
    const water = lots.reduce((s, lot) => s + lot.water, 0);
    const id = story.tell('charge', day, '08:30', {
      retort: site.retort,
      rows: lots.map((lot, i) => ({
        take: 'whole' as const,
        key: String(i + 1),
        lot: lot.id,
        weight: story.weigh(site.bench, again[i] ?? 0, dishG),
      })),
      fill: Number(Math.min(0.66, grams / 2400).toFixed(2)),
      lining: 'chalk wash',
      lute: 'clay and wood ash',
      pipeClear: 'yes',
      waterOn: 'yes',
      dry: water > 0 ? 'no' : 'yes',
    });
    return { id, grams, metal: lots.reduce((s, lot) => s + lot.metal, 0), water };
  }

  /** A firing: what truly came over, what the scale showed. Answers the sponge. */
  fire(
    day: string,
    charges: readonly { id: string; sponge: number }[],
    caughtG: number,
    more: { state?: 'dry' | 'wet'; openedC?: number; lute?: string; water?: boolean; shownG?: number; note?: string } & Pick<
      Body<'firing'>,
      'noted' | 'aimedC' | 'checks'
    > = {},
  ): string {
    const { story, site, truth } = this;
    truth.bottle += caughtG;
    const at = (clock: string) => `${day}T${clock}+10:00`;
    return story.tell('firing', day, '17:20', {
      heats: charges.map((c) => ({ charge: c.id, sponge: story.weigh(site.bench, c.sponge, dishG), colour: 'yellow' as const })),
      lit: at('09:05'),
      firstMercury: at('09:50'),
      lastMercury: at('12:40'),
      finishFrom: at('12:45'),
      finishTo: at('13:10'),
      opened: at('17:00'),
      opening: more.openedC === undefined ? { stoodHours: 4 } : { measuredC: more.openedC },
      mercury: {
        weight: this.read(more.shownG ?? caughtG, beakerG),
        vessel: site.bottle,
        state: more.state ?? 'dry',
      },
      ...(more.water === false ? {} : { water: { how: 'scale', scale: site.bench, gross: '0.00 g' } }),
      fuel: 'gas',
      ...(more.lute === undefined ? {} : { lute: more.lute }),
      ...(more.note === undefined ? {} : { note: more.note }),
      ...(more.noted === undefined ? {} : { noted: more.noted }),
      ...(more.aimedC === undefined ? {} : { aimedC: more.aimedC }),
      ...(more.checks === undefined ? {} : { checks: more.checks }),
    });
  }

  /** A run whose figures close but for a usual gap, and for the water that came over with it and that nobody weighed. */
  ordinary(day: string, lots: readonly MadeLot[], gapShare = 0.006): { id: string; sponge: number; metal: number } {
    const { id, grams, metal, water } = this.charge(day, lots);
    const sponge = Number((metal * 1.018).toFixed(2));
    const caught = Number((grams * (1 - gapShare) - sponge - water).toFixed(2));
    this.fire(day, [{ id, sponge }], caught, { openedC: this.story.dice.whole(24, 33), water: water === 0 });
    return { id, sponge, metal };
  }

  /** A melt of one or more sponges into a bar, with the prills of earlier melts where they are named. */
  melt(
    day: string,
    sponges: readonly { id: string; sponge: number; metal: number }[],
    { prills = [] }: { prills?: readonly PouredBar[] } = {},
  ): void {
    const { story, site } = this;
    this.#bar += 1;
    const old = prills.length * prillsG;
    const metal = sponges.reduce((s, x) => s + x.metal, 0) * story.dice.between(0.994, 0.997) + old;
    const grams = Number((metal - 1.2).toFixed(2));
    const label = `MS ${this.#bar}`;
    const melt = story.tell('melt', day, '14:00', {
      sponges: sponges.map((s) => ({ charge: s.id, weight: story.weigh(site.bench, s.sponge, dishG) })),
      ...(prills.length === 0
        ? {}
        : {
            added: prills.map((bar, i) => ({
              key: `p${i + 1}`,
              label: `prills of ${bar.label}`,
              weight: story.weigh(site.bench, prillsG, 0),
              prills: bar.melt,
            })),
          }),
      flux: 'borax and soda',
      bars: [{ key: '1', label, weight: story.weigh(site.bench, grams, 0) }],
      samples: [{ key: '2', label: `${label} dip`, weight: story.weigh(site.bench, 1.2, 0) }],
      prills: story.weigh(site.bench, prillsG, 0),
      slag: story.weigh(site.bench, metal * 0.09, dishG),
    });
    this.bars.push({ id: `${melt}/1`, melt, label, day, grams });
  }
}
