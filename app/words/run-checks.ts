/**
 * The questions asked before, during and after a retort run, by the name an entry keeps them under (`checks[].check`). They are asked and
 * recorded, nobody is let through by them. General practice (safety.md 5.2 to 5.4): the place's own rules and its licensed people come first,
 * and have this list reviewed before they rely on it. A name once released stays, because old entries carry it.
 */

import { commonChecks } from './common-checks.ts';
import { workCheckText } from './work-checks.ts';

export const checkPhases = ['before', 'during', 'after'] as const;
export type CheckPhase = (typeof checkPhases)[number];

export interface CheckWords {
  /** The name in the record. */
  readonly check: string;
  /** The question, put so that "yes" is the good answer. */
  readonly asks: string;
}

/** Answered in the charge before the fire is lit, then in the firing. `pipe-clear`, `water-on` and `dry` are fields of a charge. */
export const runChecks: Readonly<Record<CheckPhase, readonly CheckWords[]>> = {
  before: [
    { check: 'place', asks: 'Outdoors or under a proven hood, away from homes, kitchens, drains, children and visitors' },
    { check: 'retort-closed', asks: 'A closed retort with a sound seal' },
    { check: 'pipe-clear', asks: 'Pipe proved clear from end to end, outlet open' },
    { check: 'pipe-end', asks: 'End of the pipe at or just above the receiver’s water, never deep under it' },
    { check: 'water-on', asks: 'Cooling water running, with a supply that lasts' },
    { check: 'dry', asks: 'Amalgam dry when weighed' },
    { check: 'nothing-else', asks: 'No plastics, oil, wet or sealed objects in the charge' },
    commonChecks.fire,
    commonChecks.people,
    { check: 'jewellery-off', asks: 'Rings, watches and gold taken off' },
    commonChecks.protection,
    commonChecks.noFood,
    commonChecks.meter,
    commonChecks.kit,
    { check: 'numbers', asks: 'Emergency and poison-centre numbers at hand' },
  ],
  during: [
    { check: 'slow-heat', asks: 'Heat raised slowly and never left alone' },
    { check: 'watched', asks: 'Seal, pipe, cooling water and receiver watched' },
    commonChecks.airRead,
    { check: 'not-moved', asks: 'Retort not opened, struck or moved while hot' },
    { check: 'pipe-free', asks: 'Pipe end kept from sealing itself by suction when the heat was cut' },
  ],
  after: [
    { check: 'water-kept', asks: 'Cooling water kept on until the retort was cold' },
    { check: 'read-at-seal', asks: 'Air read at the seal before opening and when opened' },
    { check: 'bottled', asks: 'Mercury drained into a strong closed bottle with its label' },
    { check: 'waste-kept', asks: 'Condenser, pipe and wash water held as mercury waste until tested' },
    { check: 'cleaned', asks: 'Tools, floor and drains checked and cleaned, floor and breathing height read' },
    commonChecks.washed,
  ],
};

/** The question of a check, or its name as entered where it is not one of ours. */
export const checkText = (check: string): string =>
  checkPhases.flatMap((phase) => runChecks[phase]).find((words) => words.check === check)?.asks ?? workCheckText(check) ?? check;
