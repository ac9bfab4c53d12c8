/** The form of a firing: the clock of its stages, how cold it was when opened, what was left and what was caught. One draft for each charge. */
import { anyKey } from '../../daybook/draft-shape.ts';
import { type FormPlan, numberOr, textOr } from '../../daybook/form.svelte.ts';
import { checkPhases, runChecks } from '../../words/run-checks.ts';
import { noWeighing, type WeighingEntry, weightOf } from '../shared/weighing-entry.ts';
import { type CheckAnswers, checksOf, noAnswer } from './checks-entry.ts';

export interface HeatValues {
  /** Empty: its charge is not written up. */
  charge: string;
  sponge: WeighingEntry;
  colour: string;
}

/** Something written down along the fire, under its own time. */
export interface NotedRow {
  key: string;
  at: string;
  temperatureC: string;
  water: string;
  fire: string;
  what: string;
}

export interface FiringValues {
  heats: HeatValues[];
  retort: string;
  lit: string;
  firstMercury: string;
  lastMercury: string;
  finishFrom: string;
  finishTo: string;
  /** Drafts of before the form could take these have none of them. */
  noted?: NotedRow[];
  aimedFrom?: string;
  aimedTo?: string;
  opened: string;
  openingHow: string;
  measuredC: string;
  stoodHours: string;
  mercury: WeighingEntry;
  mercuryVessel: string;
  mercuryState: string;
  water: WeighingEntry;
  fuel: string;
  lute: string;
  checks: CheckAnswers;
  note: string;
}

/** Stages of the clock before opening, in order. */
export const stages = ['lit', 'firstMercury', 'lastMercury', 'finishFrom', 'finishTo'] as const;

export const noHeat = (charge: string, scale: string): HeatValues => ({ charge, sponge: noWeighing(scale), colour: '' });

export const emptyNoted = (key: string, at: string): NotedRow => ({ key, at, temperatureC: '', water: '', fire: '', what: '' });

const checkNames = checkPhases.flatMap((phase) => runChecks[phase].map((c) => c.check));

const opening = (v: FiringValues): Record<string, unknown> | undefined => {
  if (v.openingHow === 'measured' && textOr(v.measuredC) !== undefined) return { measuredC: numberOr(v.measuredC) };
  if (v.openingHow === 'stood' && textOr(v.stoodHours) !== undefined) return { stoodHours: numberOr(v.stoodHours) };
  return undefined;
};

const emptyFiring = (charge: string | null, scale: string, vessel: string): FiringValues => ({
  heats: [noHeat(charge ?? '', scale)],
  retort: '',
  lit: '',
  firstMercury: '',
  lastMercury: '',
  finishFrom: '',
  finishTo: '',
  noted: [],
  aimedFrom: '',
  aimedTo: '',
  opened: '',
  openingHow: '',
  measuredC: '',
  stoodHours: '',
  mercury: noWeighing(scale),
  mercuryVessel: vessel,
  mercuryState: '',
  water: noWeighing(scale),
  fuel: '',
  lute: '',
  checks: {},
  note: '',
});

/** `charge`: its id, or null for a firing whose charge is not written up. `vessel`: where mercury usually goes. */
export const firingPlan = (charge: string | null, scale: string, vessel: string): FormPlan<FiringValues> => ({
  name: charge === null ? 'firing' : `firing/${charge}`,
  kind: 'firing',
  start: () => emptyFiring(charge, scale, vessel),
  full: () => ({ ...emptyFiring(charge, scale, vessel), noted: [emptyNoted('', '')], checks: { [anyKey]: noAnswer() } }),
  body: (v) => {
    const mercury = weightOf(v.mercury);
    return {
      heats: v.heats.map((heat) => ({ charge: textOr(heat.charge), sponge: weightOf(heat.sponge), colour: textOr(heat.colour) })),
      retort: textOr(v.retort),
      lit: textOr(v.lit),
      firstMercury: textOr(v.firstMercury),
      lastMercury: textOr(v.lastMercury),
      finishFrom: textOr(v.finishFrom),
      finishTo: textOr(v.finishTo),
      noted: v.noted?.length
        ? v.noted.map(({ at, temperatureC, water, fire, what }) => ({
            at: textOr(at),
            temperatureC: numberOr(temperatureC),
            water: textOr(water),
            fire: textOr(fire),
            what: textOr(what),
          }))
        : undefined,
      aimedC:
        textOr(v.aimedFrom ?? '') === undefined && textOr(v.aimedTo ?? '') === undefined
          ? undefined
          : { from: numberOr(v.aimedFrom ?? ''), to: numberOr(v.aimedTo ?? '') },
      opened: textOr(v.opened),
      opening: opening(v),
      mercury:
        mercury === undefined ? undefined : { weight: mercury, vessel: textOr(v.mercuryVessel), state: textOr(v.mercuryState) },
      water: weightOf(v.water),
      fuel: textOr(v.fuel),
      lute: textOr(v.lute),
      checks: checksOf(v.checks, checkNames),
      note: textOr(v.note),
    };
  },
});
