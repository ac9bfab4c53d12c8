/** Texts of the yields of bullion: gross and fine, both named, and in words why there is none. */

import type { NoCampaignYield } from '../core/book/campaigns.ts';
import type { NoParcelYield } from '../core/book/parcel-yields.ts';
import type { NoYield } from '../core/book/yields.ts';
import { massHead } from './figures.ts';

export const yieldWords = {
  title: 'Yields',
  link: 'Yields by clean-up, parcel and campaign',
  intro:
    'Gross is the weight of the bars and of the samples taken of their melts, gold with its silver and base; fine is the gold alone, by the assays of the bars. What a general clean-up, scale and pan give belongs to the whole campaign and to no month.',
  campaigns: 'By campaign',
  campaignsNote: 'From one general clean-up to the next. ± U is at k = 2; an empty one is not known.',
  parcels: 'By parcel',
  parcelsNote:
    'A clean-up that names a parcel is its alone; any other is shared by mass of ore, and marked allocated. General clean-ups, scale and pan are in no parcel unless they name one.',
  owned: (label: string, owner: string) => `${label}, ${owner}`,
  allocated: 'allocated',
  outTurn: 'some of its fine gold is as an out-turn states it',
  cleanUps: 'By clean-up',
  cleanUpsNote:
    'The newest first. Allocated: a bar made of several clean-ups is shared out by estimate, whose own error is in no figure here.',
  none: 'No clean-up is written down yet: there is nothing to reckon a yield of.',
  campaign: (day: string) => `Campaign to ${day}`,
  running: (day: string) => `Campaign since ${day}, going on`,
  what: 'Of',
  ore: 'Ore,\u00a0t',
  get gross(): string {
    return massHead('Gross');
  },
  grossYield: 'Gross, g/t',
  grossDwt: 'Gross, dwt per long ton',
  get fine(): string {
    return massHead('Fine');
  },
  fineYield: 'Fine, g/t',
  fineDwt: 'Fine, dwt per long ton',
  U: '±\u00a0U',
  /** Heads above the columns of one metal, and the units below them. */
  grossName: 'Gross',
  fineName: 'Fine',
  perTonne: 'g/t',
  dwt: 'dwt\u00a0per long\u00a0ton',
  UOf: (yieldName: string) => `± U (k = 2) of ${yieldName}`,
  how: 'How it was come by',
  get late(): string {
    return massHead('Late gold');
  },
  why: 'Why there is none',
  notComputable: (why: string) => `not computable: ${why}`,
  whys: {
    'nothing-crushed': 'no ore is written down for it',
    'ore-missing': 'one of its clean-ups does not say what was crushed',
    'ore-contradicts': 'its general clean-up states less ore than the clean-ups before it together',
    'of-the-campaign': 'what it gave is of the whole campaign, and so is the ore it states; see “By campaign”',
    'not-melted': 'nothing of it was melted yet',
    'partly-melted': 'some of it still lies in the safe',
  } satisfies Readonly<Record<NoYield | NoParcelYield | NoCampaignYield, string>>,
  noFine: 'fine not computable: a bar in it, or metal added to its melt, has no fineness on the book',
  restate: 'Restate the months of each campaign with its late gold',
  restateNote: 'Late gold spread over the months by their ore. The first figures stand; these stand beside them.',
  first: 'First stated, g/t',
  get lateShare(): string {
    return massHead('Its share of late gold');
  },
  restated: 'Restated, g/t',
  chart: 'Yield by campaign, grams a tonne',
  chartHint: 'Point at a campaign, or go through them with the arrow keys.',
  chartLegend: ['Bars begin at nothing. A campaign without a figure is not drawn; the table says why.'],
  panelGross: 'Gross, g/t',
  panelFine: 'Fine, g/t',
  told: (name: string, gross: string, fine: string) =>
    `${name}: gross ${gross} g/t, ${fine === '' ? 'fine not computable' : `fine ${fine} g/t`}`,
  copyCsv: 'Copy the table as CSV',
} as const;
