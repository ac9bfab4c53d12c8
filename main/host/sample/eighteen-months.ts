/**
 * The eighteen months of the sample: nine of working concentrate in campaigns of two clean-ups, each counted as a whole, then nine of clearing old
 * plates, counted every month. What it has to tell stands at the head of story.ts. All invented.
 */
import { tellAir } from './air.ts';
import { bullion } from './bullion.ts';
import { clearing } from './clearing.ts';
import type { PlannedClosing } from './closed.ts';
import { wholeCount } from './count.ts';
import { tellAirOfLeak, watched } from './leak.ts';
import { settle } from './site.ts';
import { later, type ScaleWeight, Story, swappedFigures, type Told } from './story.ts';
import { type MadeLot, Work } from './work.ts';

export interface Telling {
  readonly told: readonly Told[];
  /** Periods that were closed, when. */
  readonly closings: readonly PlannedClosing[];
}

/** The whole story, in the order it was written down. */
export const eighteenMonths = (): readonly Told[] => telling().told;

/** The whole story, and the periods that were closed in it. */
export function telling(): Telling {
  const story = new Story(1893);
  const site = settle(story);
  const work = new Work(story, site);
  work.open();
  const lots: MadeLot[][] = [];
  const closings: PlannedClosing[] = [];
  let counted = story.told.findLast(({ draft }) => draft.kind === 'stock-take')?.draft.id ?? '';

  // nine months of concentrate: ten clean-ups, six charges and their runs, a count of the whole after every second clean-up
  const metals = [62, 71, 58, 66, 74, 60, 69, 57, 64, 61];
  let crushedT = 0;
  for (const [month, metal] of metals.entries()) {
    const first = later('2025-01-13', month * 26);
    if (month === 0) work.openFlask(first);
    if (month % 3 === 0) work.draw(first, 900);
    const ores = [0.52, 0.45, 0.58].map((t) => Number((t * story.dice.between(0.9, 1.1)).toFixed(2)));
    for (const [i, ore] of ores.entries())
      work.crush(later(first, i * 5), ore, story.dice.whole(70, 105), i === 1 ? 'mortar' : 'plates');
    const ore = ores.reduce((s, x) => s + x, 0);
    crushedT += ore;
    const general = month === 9;
    lots.push(
      work.cleanUp(later(first, 17), general ? 'general' : 'routine', metal, month % 2 === 0 ? 3 : 2, 'outside-plate', {
        // a general clean-up stands for the whole campaign's ore
        ore: general ? crushedT : ore,
      }),
    );
    if (month === 4) {
      story.tell('open-day', later(first, 20), '15:00', {
        visitors: 84,
        children: 19,
        areas: 'battery house and yard',
        covered: 'plates under water and boards',
        guides: [site.helper],
      });
    }
    if (month === 1) ordinaryRun(later(first, 19), [0, 1]);
    if (month === 3) refired(later(first, 19));
    if (month === 5) leaking(later(first, 19));
    if (month === 7) weighedWet(later(first, 19));
    if (month === 9) together(later(first, 19));
    if (month % 2 === 1) count(later(first, 23), month);
  }

  /** A campaign is over: the whole is counted. The first three periods were closed, the others left open. */
  function count(day: string, month: number): void {
    const opening = counted;
    counted = wholeCount(work, day, '16:30', month === 9 ? { seal: 'B 2207' } : month === 3 ? { misread: site.bottle } : {});
    if (month > 5) return;
    closings.push({
      opening,
      closing: counted,
      at: `${later(day, month === 5 ? 9 : 2)}T09:30${story.offset}`,
      by: site.officer,
      ...(month === 5 ? { note: 'The count of the bottle in the spring was put right after that period was closed.' } : {}),
    });
    if (month === 3) misread(counted, later(day, 12));
  }

  /** The period is closed already when somebody looks at the picture of the display again. */
  function misread(count: string, day: string): void {
    const body = story.bodyOf('stock-take', count);
    story.tell('correction', day, '08:20', {
      corrects: count,
      body: {
        ...body,
        lines: body.lines.map((line) =>
          line.how === 'weighed' && line.place === `vessel:${site.bottle}`
            ? { ...line, weight: swappedFigures(line.weight as ScaleWeight) }
            : line,
        ),
      },
      why: 'Two figures of the bottle were swapped when it was written up; the display was photographed.',
    });
  }

  function ordinaryRun(day: string, which: readonly number[]): void {
    const run = work.ordinary(
      day,
      which.flatMap((i) => lots[i] ?? []),
    );
    work.melt(later(day, 2), [run]);
  }

  function refired(day: string): void {
    const charge = work.charge(day, [...(lots[2] ?? []), ...(lots[3] ?? [])]);
    const under = Number((charge.metal * 1.018 + 38).toFixed(2));
    const first = Number((charge.grams * 0.995 - under).toFixed(2));
    work.fire(day, [{ id: charge.id, sponge: under }], first, { openedC: 31, note: 'gas ran low' });
    const sponge = Number((charge.metal * 1.017).toFixed(2));
    work.fire(later(day, 1), [{ id: charge.id, sponge }], Number((under - sponge - 1.1).toFixed(2)), { openedC: 28 });
    work.melt(later(day, 3), [{ id: charge.id, sponge, metal: charge.metal }]);
  }

  function leaking(day: string): void {
    const charge = work.charge(day, [...(lots[4] ?? []), ...(lots[5] ?? [])]);
    const sponge = Number((charge.metal * 1.019).toFixed(2));
    work.fire(day, [{ id: charge.id, sponge }], Number((charge.grams * 0.958 - sponge).toFixed(2)), {
      openedC: 30,
      lute: 'grey stain at the lid, smell noticed from 10:20',
      ...watched(day, story.offset),
    });
    tellAirOfLeak(story, site, day, charge.id);
    story.tell('incident', day, '10:30', {
      what: 'Smell and a grey stain at the lute during the main run. Heat was cut at once, people stood back upwind, the run was finished after the lute was renewed.',
      where: 'retort house',
      people: [site.keeper],
      done: 'Lute renewed, area kept clear until the next morning, safety officer told.',
      assessment: 'yes',
    });
    work.melt(later(day, 2), [{ id: charge.id, sponge, metal: charge.metal }], { prills: work.bars.slice(0, 2) });
  }

  function weighedWet(day: string): void {
    const charge = work.charge(day, [...(lots[6] ?? []), ...(lots[7] ?? [])]);
    const sponge = Number((charge.metal * 1.018).toFixed(2));
    const caught = Number((charge.grams * 0.995 - sponge).toFixed(2));
    const firing = work.fire(day, [{ id: charge.id, sponge }], caught, {
      openedC: 27,
      state: 'wet',
      shownG: Number((caught + 9.4).toFixed(2)),
    });
    story.tell('note', later(day, 1), '08:10', {
      text: 'The mercury was weighed straight from under the water. Dry it and weigh it again next time.',
      about: firing,
    });
    work.melt(later(day, 2), [{ id: charge.id, sponge, metal: charge.metal }]);
  }

  function together(day: string): void {
    const one = work.charge(day, lots[8] ?? []);
    const two = work.charge(later(day, 1), lots[9] ?? []);
    const sponges = [one, two].map((c) => ({ id: c.id, sponge: Number((c.metal * 1.018).toFixed(2)) }));
    const caught = one.grams + two.grams - (sponges[0]?.sponge ?? 0) - (sponges[1]?.sponge ?? 0) - 5.2;
    work.fire(later(day, 1), sponges, Number(caught.toFixed(2)), { openedC: 29 });
    work.melt(
      later(day, 3),
      [one, two].map((c, i) => ({ id: c.id, sponge: sponges[i]?.sponge ?? 0, metal: c.metal })),
    );
  }

  clearing(work);
  bullion(work);
  tellAir(story, site);
  return { told: story.inOrder(), closings };
}
