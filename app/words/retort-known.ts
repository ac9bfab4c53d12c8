/**
 * What the entries of a run say and what they leave out, for its page and its paper alike: a question nobody answered is told plainly as not
 * recorded, never as a no and never as a fault.
 */
import type { Firing } from '../core/book/charges.ts';
import type { Run } from '../core/book/runs.ts';
import type { KnownOfRun } from './findings.ts';
import { checkPhases, runChecks } from './run-checks.ts';

const firingsOf = (run: Run): readonly Firing[] => run.openings.map((opening) => opening.firing);

/** What is known of water in a run, up to the opening `upTo` (the last one where left out). */
export function knownOf(run: Run, upTo = run.openings.length - 1): KnownOfRun {
  const firings = firingsOf(run).slice(0, upTo + 1);
  const withMercury = firings.filter((firing) => firing.mercury !== null);
  return {
    dry: run.charges.every((charge) => charge.reading.body.dry === 'yes'),
    waterWeighed: run.openings[upTo]?.waterKnown ?? false,
    mercuryDry: withMercury.length > 0 && withMercury.every((firing) => firing.reading.body.mercury?.state === 'dry'),
    firings: firings.length,
  };
}

/** Names of the checks a run's entries answered, whichever entry it was. */
function answeredIn(run: Run): ReadonlySet<string> {
  const given = run.charges.flatMap(({ reading: { body } }) => [
    ...(body.pipeClear ? ['pipe-clear'] : []),
    ...(body.waterOn ? ['water-on'] : []),
    ...(body.dry ? ['dry'] : []),
    ...(body.checks ?? []).map((checked) => checked.check),
  ]);
  return new Set([...given, ...firingsOf(run).flatMap(({ reading }) => (reading.body.checks ?? []).map((c) => c.check))]);
}

const fieldNames = {
  lit: 'time of lighting',
  opened: 'time of opening',
  opening: 'opening temperature',
  mercury: 'mercury wet or dry',
  water: 'water that came over',
  colour: 'colour of the sponge',
  fill: 'how full the retort was',
} as const;
const phaseNames = { before: 'checks before', during: 'checks while hot', after: 'checks after opening' } as const;

/** What a run's entries leave out, in a few words each: "opening temperature", "checks before 15 of 15". Empty while all is recorded. */
export function notRecordedOf(run: Run): readonly string[] {
  const firings = firingsOf(run);
  const which = (missing: readonly number[], of: number, kind: string) =>
    missing.length === of ? '' : ` (${kind} ${missing.map((i) => i + 1).join(', ')})`;
  const ofFirings = (name: string, without: (firing: Firing) => boolean): string[] => {
    const missing = firings.flatMap((firing, i) => (without(firing) ? [i] : []));
    return missing.length === 0 ? [] : [`${name}${which(missing, firings.length, 'firing')}`];
  };
  const noFill = run.charges.flatMap((charge, i) => (charge.reading.body.fill === undefined ? [i] : []));
  const answered = answeredIn(run);
  return [
    ...ofFirings(fieldNames.lit, ({ reading }) => reading.body.lit === undefined),
    ...ofFirings(fieldNames.opened, ({ reading }) => reading.body.opened === undefined),
    ...ofFirings(fieldNames.opening, ({ reading }) => reading.body.opening === undefined),
    ...ofFirings(fieldNames.mercury, ({ reading: { body } }) => body.mercury !== undefined && body.mercury.state === undefined),
    ...ofFirings(fieldNames.water, (firing) => firing.water === null),
    ...ofFirings(fieldNames.colour, ({ reading }) => reading.body.heats.every((heat) => heat.colour === undefined)),
    ...(noFill.length === 0 ? [] : [`${fieldNames.fill}${which(noFill, run.charges.length, 'charge')}`]),
    ...checkPhases.flatMap((phase) => {
      const open = runChecks[phase].filter(({ check }) => !answered.has(check)).length;
      return open === 0 ? [] : [`${phaseNames[phase]} ${open} of ${runChecks[phase].length}`];
    }),
  ];
}

/** The line itself, or empty where nothing was left out. */
export function notRecordedText(run: Run): string {
  const missing = notRecordedOf(run);
  return missing.length === 0 ? '' : `Not recorded: ${missing.join('; ')}.`;
}
