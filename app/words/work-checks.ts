/**
 * The questions asked at works other than a run, by the name an entry keeps them under: scaling, heat or acid on plates, melting, burning-off, old
 * ground, an old flask, transport, visitors. General practice (safety.md 5.2 to 5.4, 5.8, 6.5; practice.md), to be reviewed by licensed people before
 * anybody relies on it. Asked and recorded: nobody is let through by an answer. A name once released stays, because old entries carry it.
 */
import type { Work } from '../core/kinds/check-list.ts';
import { commonChecks } from './common-checks.ts';
import type { CheckWords } from './run-checks.ts';

const fume = { check: 'fume-caught', asks: 'Outdoors or under a proven hood, and what comes off is caught, not let go' };
const { fire, people, protection, meter, kit, airRead, noFood, washed } = commonChecks;

/** Works besides the run, whose lists stand in run-checks.ts. */
export const workChecks: Readonly<Record<Exclude<Work, 'run-before' | 'run-during' | 'run-after'>, readonly CheckWords[]>> = {
  'clean-up': [
    { check: 'cold-and-wet', asks: 'Cold and wet, over trays: nothing warmed, nothing dry swept' },
    { check: 'air-moves', asks: 'Outdoors, or doors and windows to the outside open' },
    people,
    protection,
    noFood,
    meter,
    kit,
    { check: 'drains-shut', asks: 'Drains shut, wash water and sand caught and kept as mercury waste until tested' },
    { check: 'labelled', asks: 'Every ball labelled, weighed and locked away the same day' },
    washed,
  ],
  scaling: [
    { check: 'plate-cold', asks: 'Plate cold, scaled wet, scrapings kept under water' },
    { check: 'no-sparks', asks: 'By hand and slowly: nothing that heats, flings or throws dust' },
    { check: 'tray-under', asks: 'A tray or sheet under the plate, nothing runs to floor or drain' },
    people,
    protection,
    meter,
    kit,
    { check: 'scale-kept', asks: 'Scale labelled and shut away as amalgam, tools and cloths kept as mercury waste' },
    washed,
  ],
  'plate-heat': [
    fume,
    { check: 'fume-proved', asks: 'The hood or condenser was tried with smoke or water before heat or acid was brought' },
    { check: 'acid-known', asks: 'Which acid, who is trained for it, and where its fume and its waste go is written down' },
    {
      check: 'water-at-hand',
      asks: 'Water to wash eyes and skin at hand; no acid with metal or waste it has not been tried with',
    },
    fire,
    people,
    protection,
    meter,
    airRead,
    { check: 'plate-cooled', asks: 'Plate left to cool shut off before anybody came near without protection' },
    washed,
  ],
  melting: [
    fume,
    { check: 'sponge-retorted', asks: 'Sponge retorted to the end and cold before it came to the melt' },
    { check: 'sponge-dry', asks: 'Sponge, flux and mould dry; the mould warmed' },
    fire,
    people,
    protection,
    meter,
    airRead,
    { check: 'slag-kept', asks: 'Slag, dust and wash water kept as mercury waste until tested' },
  ],
  'burning-off': [
    { check: 'closed-retort', asks: 'In a closed retort with a condenser, never in a stove, a drum or the open' },
    { check: 'dry-load', asks: 'Cloths and sweepings dried cold; no plastics, oil or shut tins among them' },
    { check: 'smoke-way', asks: 'Smoke and tar cannot block the pipe: proved clear before, watched during' },
    { check: 'ash-kept', asks: 'What stays behind weighed, labelled and kept as mercury waste until tested' },
    people,
    protection,
    meter,
  ],
  'old-ground': [
    { check: 'who-decides', asks: 'The authority or a licensed person has said how this ground may be touched' },
    { check: 'damped', asks: 'Ground kept damp, no dry sweeping, no vacuum cleaner that is not made for mercury' },
    { check: 'run-off', asks: 'Water and soil cannot run off to drain, creek or path' },
    { check: 'fenced', asks: 'Place fenced off, visitors and neighbours away' },
    { check: 'soil-shut', asks: 'Soil, boards and brick into shut, labelled drums' },
    people,
    protection,
    { check: 'read-low-high', asks: 'Air read at the ground and where people breathe, before, during and after' },
    washed,
  ],
  'old-flask': [
    { check: 'not-opened', asks: 'Left shut: not opened, shaken, tapped, warmed or cleaned' },
    { check: 'photographed', asks: 'Photographed as it was found, marks and seal with it' },
    { check: 'weighed-shut', asks: 'Weighed shut, with a hand under it and a tray below' },
    { check: 'stood-apart', asks: 'Set in a tray, locked away apart from metals, acids and heat' },
    { check: 'told', asks: 'A licensed person told, who says what comes next' },
  ],
  transport: [
    { check: 'who-may-carry', asks: 'The carrier’s permit for this load seen; number written down (the authority decides)' },
    { check: 'class-named', asks: 'Class, number and packing named by whoever is licensed to (they decide, and sign elsewhere)' },
    { check: 'vessel-shut', asks: 'Vessel shut, sealed, labelled and in a second container' },
    { check: 'papers-with-it', asks: 'Consignment papers with the load, a copy kept here' },
    { check: 'taker-ready', asks: 'Whoever takes it has said in writing that they will (they decide)' },
    { check: 'not-by-air', asks: 'Not by air, post or in a passenger’s car, unless a licensed person has said so' },
  ],
  visitors: [
    { check: 'no-mercury-work', asks: 'No mercury is worked, poured or heated while visitors are here' },
    { check: 'shut-away', asks: 'Mercury, amalgam and waste locked away; plates covered or railed off' },
    { check: 'kept-back', asks: 'Rooms where mercury was worked are shut to visitors' },
    {
      check: 'children-led',
      asks: 'Children kept by the hand of somebody who knows the place, off the floor and away from plates',
    },
    { check: 'told-first', asks: 'Visitors told at the door: no touching, no eating, who is pregnant or nursing asks first' },
    { check: 'air-before', asks: 'Air read where visitors go, at the height of a child too, before they came' },
  ],
};

/** The question of a work's check by its name; undefined where it is none of these. */
export const workCheckText = (check: string): string | undefined =>
  Object.values(workChecks)
    .flat()
    .find((words) => words.check === check)?.asks;
