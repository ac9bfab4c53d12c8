/**
 * The work of the invented site: what truly moves is simulated here, and the entries say what the scales showed. The truth is kept so that the counts
 * of the story make sense; the program never sees it.
 */
import type { LotSource } from '../../../app/core/kinds/clean-up.ts';
import { firstDay, type SampleSite } from './site.ts';
import { later, type Story } from './story.ts';

const dishG = 85.32;
const beakerG = 412.15;

/** What is truly where, in grams. */
export interface Truth {
  flaskTwo: number;
  bottle: number;
  strained: number;
  plates: number;
  mortar: number;
  trap: number;
}

export interface MadeLot {
  readonly id: string;
  readonly grams: number;
  /** Gold, silver and base in it. */
  readonly metal: number;
}

export class Work {
  readonly story: Story;
  readonly site: SampleSite;
  readonly truth: Truth = { flaskTwo: 34473, bottle: 2150, strained: 0, plates: 640, mortar: 160, trap: 150 };
  #ball = 0;
  #bar = 0;

  constructor(story: Story, site: SampleSite) {
    this.story = story;
    this.site = site;
  }

  /** Opening stock: two flasks, one sealed, the bottle, and the first count of the circuit. */
  open(): void {
    const { story, site, truth } = this;
    const here = (vessel: string, netG: number, seal?: string) =>
      story.tell('receipt', firstDay, '09:00', {
        vessel,
        way: 'already-here',
        weight:
          seal === undefined
            ? story.weigh(site.bench, netG, beakerG)
            : { how: 'stated', mass: `${(netG / 1000).toFixed(3)} kg`, u: '20 g', by: 'invoice' },
        ...(seal === undefined ? {} : { seal }),
      });
    here(site.flaskOne, 34473, 'A 4411');
    here(site.flaskTwo, 34473, 'A 4412');
    here(site.bottle, truth.bottle);
    this.count(firstDay, '15:00', false);
  }

  /** A count of the circuit, and of the vessels where the book knows them already. */
  count(day: string, clock: string, vessels = true): void {
    const { story, site, truth, dice } = { ...this, dice: this.story.dice };
    const guess = (place: string, trueG: number, method: string) => ({
      how: 'estimated' as const,
      place,
      estimate: { mass: `${Math.max(0, Math.round(trueG * dice.between(0.93, 1.07)))} g`, method, sharedU: 0.15, ownU: 0.05 },
    });
    story.tell('stock-take', day, clock, {
      lines: [
        ...(vessels
          ? [
              { how: 'sealed' as const, place: `vessel:${site.flaskOne}`, seal: 'A 4411' },
              {
                how: 'weighed' as const,
                place: `vessel:${site.flaskTwo}`,
                weight: story.weigh(site.platform, Math.round(truth.flaskTwo / 5) * 5, 3920, 0),
              },
              { how: 'weighed' as const, place: `vessel:${site.bottle}`, weight: story.weigh(site.bench, truth.bottle, beakerG) },
              ...(truth.strained > 0
                ? [
                    {
                      how: 'weighed' as const,
                      place: `vessel:${site.strained}`,
                      weight: story.weigh(site.bench, truth.strained, dishG),
                    },
                  ]
                : []),
            ]
          : []),
        guess('circuit:plates', truth.plates, 'scraped square, by area'),
        guess('circuit:mortar', truth.mortar, 'panned sand of the mortar box'),
        guess('circuit:trap', truth.trap, 'drawn off and measured back'),
      ],
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
      weight: this.story.weigh(this.site.bench, netG, beakerG),
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
      hours: 6,
    });
    story.tell('issue', day, '09:10', {
      vessel: site.bottle,
      to,
      weight: story.weigh(site.bench, fedG, beakerG),
      battery: site.battery,
    });
    truth.bottle -= fedG;
    // most of what is fed to the mortar ends up on the plates, and a little runs over them into the well or is lost
    const over = story.dice.between(3, 9);
    truth.mortar += to === 'mortar' ? 0.1 * fedG : 0;
    truth.trap += over;
    truth.plates += (to === 'mortar' ? 0.9 : 1) * fedG - over - oreT * story.dice.between(4.2, 6.4);
  }

  /** A clean-up: balls of about equal weight, and mercury strained off. */
  cleanUp(
    day: string,
    type: 'routine' | 'mid' | 'general' | 'final',
    metalG: number,
    balls: number,
    source: LotSource,
    ore?: number,
  ): MadeLot[] {
    const { story, site, truth } = this;
    const grams = metalG / story.dice.between(0.365, 0.395);
    const shares = Array.from({ length: balls }, () => story.dice.between(0.85, 1.15));
    const whole = shares.reduce((s, x) => s + x, 0);
    const lots = shares.map((share) => ({
      grams: Number(((grams * share) / whole).toFixed(2)),
      metal: (metalG * share) / whole,
    }));
    const strainedG = Number((Math.max(truth.plates, 80) * story.dice.between(0.2, 0.3)).toFixed(2));
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
        };
      }),
      strained: { weight: story.weigh(site.bench, strainedG, beakerG), vessel: site.strained },
      present: [site.keeper, site.helper],
      locked: 'safe, lock 2',
    });
    const mercury = lots.reduce((s, lot) => s + lot.grams - lot.metal, 0);
    truth.plates -= mercury + strainedG;
    truth.strained += strainedG;
    // strained mercury goes back to work
    if (type !== 'final' && truth.plates < 250) this.feed(later(day, 1), 420);
    return lots.map((lot, i) => ({ id: `${id}/${i + 1}`, ...lot }));
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
      weight: story.weigh(site.bench, netG, beakerG),
      plate: site.plate,
      condition: 'dry',
    });
  }

  /** A charge of whole lots, weighed again. */
  charge(day: string, lots: readonly MadeLot[], more: { dry?: 'yes' | 'no' } = {}): { id: string; grams: number; metal: number } {
    const { story, site } = this;
    const again = lots.map((lot) => Number((lot.grams * story.dice.between(0.9988, 0.9999)).toFixed(2)));
    const grams = again.reduce((s, g) => s + g, 0);
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
      dry: more.dry ?? 'yes',
    });
    return { id, grams, metal: lots.reduce((s, lot) => s + lot.metal, 0) };
  }

  /** A firing: what truly came over, what the scale showed. Answers the sponge. */
  fire(
    day: string,
    charges: readonly { id: string; sponge: number }[],
    caughtG: number,
    more: { state?: 'dry' | 'wet'; openedC?: number; lute?: string; water?: boolean; shownG?: number; note?: string } = {},
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
        weight: story.weigh(site.bench, more.shownG ?? caughtG, beakerG),
        vessel: site.bottle,
        state: more.state ?? 'dry',
      },
      ...(more.water === false ? {} : { water: { how: 'scale', scale: site.bench, gross: '0.00 g' } }),
      fuel: 'gas',
      ...(more.lute === undefined ? {} : { lute: more.lute }),
      ...(more.note === undefined ? {} : { note: more.note }),
    });
  }

  /** A melt of one or more sponges into a bar. */
  melt(day: string, sponges: readonly { id: string; sponge: number; metal: number }[]): void {
    const { story, site } = this;
    this.#bar += 1;
    const metal = sponges.reduce((s, x) => s + x.metal, 0) * story.dice.between(0.994, 0.997);
    story.tell('melt', day, '14:00', {
      sponges: sponges.map((s) => ({ charge: s.id, weight: story.weigh(site.bench, s.sponge, dishG) })),
      flux: 'borax and soda',
      bars: [{ key: '1', label: `MS ${this.#bar}`, weight: story.weigh(site.bench, metal - 1.2, 0) }],
      samples: [{ key: '2', label: `MS ${this.#bar} dip`, weight: story.weigh(site.bench, 1.2, 0) }],
      prills: story.weigh(site.bench, 0.31, 0),
      slag: story.weigh(site.bench, metal * 0.09, dishG),
    });
  }
}
