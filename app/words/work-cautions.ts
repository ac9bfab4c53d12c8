/**
 * Cautions of works other than a run, each shown in the form it belongs to, and which works a form is about. General practice (safety.md 5.1, 5.4,
 * 5.5, 5.8; practice.md), not a work instruction; each block is headed by what it defers to and calls nothing safe.
 */
import type { Work } from '../core/kinds/check-list.ts';
import type { Kind } from '../core/kinds/index.ts';
import { marked } from './notation.ts';

type OtherWork = Exclude<Work, 'run-before' | 'run-during' | 'run-after'>;

export interface WorkOfForm {
  readonly work: OtherWork;
  /** Not every such entry is about it: folded until wanted. */
  readonly maybe?: true;
  /** Shown where the field of that name has one of these answers; left out: always. */
  readonly only?: { readonly key: string; readonly has: readonly string[] };
}

/** The works that an entry of a kind may be about. */
export const worksOf: Readonly<Partial<Record<Kind, readonly WorkOfForm[]>>> = {
  'plate-work': [
    { work: 'scaling', only: { key: 'what', has: ['scaled'] } },
    { work: 'plate-heat', only: { key: 'what', has: ['steamed', 'stripped'] } },
  ],
  melt: [{ work: 'melting' }],
  'clean-up': [{ work: 'clean-up' }],
  cleaning: [{ work: 'burning-off', maybe: true }],
  charge: [{ work: 'burning-off', only: { key: 'holds', has: ['residues'] } }],
  found: [
    { work: 'old-flask', only: { key: 'what', has: ['mercury'] } },
    { work: 'old-ground', maybe: true },
  ],
  transfer: [{ work: 'transport', only: { key: 'way', has: ['out'] } }],
  'open-day': [{ work: 'visitors' }],
};

export const workNames: Readonly<Record<Work, string>> = {
  'run-before': 'A run: before the fire',
  'run-during': 'A run: while it is hot',
  'run-after': 'A run: after opening',
  'clean-up': 'A clean-up',
  scaling: 'Scaling a plate',
  'plate-heat': 'Heat, steam or acid on a plate',
  melting: 'A melt',
  'burning-off': 'Burning off cloths or sweepings',
  'old-ground': 'Clearing old ground',
  'old-flask': 'An old flask without a mark',
  transport: 'Something leaves the site',
  visitors: 'Visitors on the site',
};

export const workCautions: Readonly<Record<OtherWork, readonly string[]>> = {
  'clean-up': [
    'Amalgam and plates give off mercury at room temperature, and more on a warm day: doors open to the outside, or outdoors; gloves, and no food near it.',
    'Over trays, wet, by hand. What drips or falls is gathered before anybody walks through it; water and sand of the wash stay out of drains and creek until tested.',
    'At a general clean-up boxes, traps and floors are opened that were shut all year: take the time, and keep everybody away who is not needed.',
  ],
  scaling: [
    'Scale is amalgam: chips and dust of it give off mercury for years. Wet, cold and by hand; no wheel, no wire brush on a drill, no scraping of a hot plate.',
    'What falls beside the tray is gathered at once, before it is trodden into the floor.',
  ],
  'plate-heat': [
    'Heat or steam on a plate drives its mercury into the air at once, far more than the plate gives off cold: without a hood or condenser that catches it, it is open burning under another name.',
    'Nitric acid on amalgam gives off brown fume that hurts the lungs hours later, and leaves a solution of mercury that goes through skin. Who is not trained for both leaves it alone.',
    'A respirator cartridge for mercury holds no acid fume, and one for acid holds no mercury.',
  ],
  melting: [
    'Sponge holds a few per cent of mercury after a first retorting, more after a short one: the furnace drives it off as vapour in minutes.',
    'A wet mould or flux throws metal. A melt is work for two people, one of them watching.',
  ],
  'burning-off': [
    'Cloths, skins, sweepings and filters hold mercury that a fire lets go into the air: burning them in the open or in a stove is open burning (Minamata Convention, annex C), and near homes it is another of its practices to be eliminated.',
    'In a retort they smoke and tar, and tar blocks the pipe. Many sites hand them to a licensed remover instead; who is licensed says which.',
  ],
  'old-ground': [
    'Old floors, drains, mortar, soil and timber around a battery hold mercury nobody wrote down; digging, sweeping and warm days set it free.',
    'Whether and how such ground may be cleared is for the authority and licensed people to say, before the first shovel.',
  ],
  get 'old-flask'() {
    return [
      'An old flask without a mark is photographed and weighed shut. It is not opened: nobody here knows what it holds, how full it is or what its stopper will do.',
      marked('Mercury weighs 13.5 kg to the litre: an iron flask of the trade takes two hands and a tray under it.'),
    ];
  },
  transport: [
    'This list is no declaration. Class, packing, papers and carrier are for licensed people and the authority to settle; what is written here only says what was seen and by whom.',
  ],
  visitors: [
    'The air where visitors go is compared with figures for the public only, never with a working limit, and a child breathes nearer to the floor.',
    'Nobody pregnant, trying for a child or nursing, and no child, where mercury is or was worked: not for a look, and not with a mask.',
  ],
};

export const workForm = {
  /** Heads the checks of a work in a form. */
  checks: (work: string) => `Checks: ${work.charAt(0).toLowerCase()}${work.slice(1)}`,
  /** Under them. */
  general:
    'General practice from the trade, to be reviewed by licensed people before anybody relies on it. An answer lets nobody through; it is recorded.',
  /** What becomes of a "no". */
  noStays: 'A “no” stops nothing. It stays in sight on the entry and in Out of step.',
  change: 'What this site asks',
  flaskIs: 'photographed and weighed shut, not opened',
  flaskFound: 'Write it up as found, with its checks',
} as const;
