/** Texts of the room Site: the standing and the registers. */
import type { Body } from '../core/kinds/index.ts';
import { dayText } from './dates.ts';
import { massAsRead, spaced } from './daybook-weights.ts';
import { doneNames, heldNames, mercuryNames, roleNames, vesselUseNames } from './labels.ts';
import { marked } from './notation.ts';
import { describePlant, plantRegister } from './screens-site-plant.ts';

type Standing = Body<'standing'>;

const span = (item: { since?: string | undefined; until?: string | undefined }): string =>
  [item.since ? `from ${dayText(item.since)}` : '', item.until ? `until ${dayText(item.until)}` : ''].filter(Boolean).join(' ');
const bracket = (parts: readonly (string | undefined)[]): string => {
  const said = parts.filter((p) => p !== undefined && p !== '');
  return said.length > 0 ? ` (${said.join('; ')})` : '';
};

const authorityText = (a: NonNullable<Standing['done'][number]['authority']>): string =>
  `${a.name}, number ${a.number}, ${a.expiry === 'none stated' ? 'no expiry stated' : `until ${dayText(a.expiry)}`}, covers ${a.covers}`;

const sentence = (parts: readonly (string | undefined | false)[]): string => parts.filter((p) => p).join(' · ');

export const site = {
  title: 'Site',
  note: 'Its standing and its registers',
  backToSite: 'Back to Site',
  standing: {
    title: 'Standing',
    note: 'The site’s own statement',
    why: 'What mercury does this site hold, and what is done with it? Until it is stated, every page and paper about mercury carries this question.',
    own: 'This is what the site says of itself. It is printed on every paper. It proves nothing and permits nothing: the law of the place and its licensed people decide what may be done.',
    held: 'Held',
    done: 'Done',
    heldAsk: 'What mercury is held?',
    doneAsk: 'What is done?',
    several: 'Several answers may stand side by side, for different places or times.',
    where: 'Where and when',
    place: 'Place',
    placeHint: 'Leave it out when it holds for the whole site.',
    since: 'From',
    until: 'Until',
    add: 'Add another answer',
    remove: 'Take out',
    answer: (n: number) => `Answer ${n}`,
    authority: 'The authority',
    authorityName: 'Which authority',
    authorityNumber: 'Its number',
    authorityExpiry: 'Last day',
    authorityNoExpiry: 'Does it state an expiry?',
    expiryOf: { day: 'Yes, a day', none: 'None stated' },
    authorityCovers: 'What it covers',
    noteField: 'Note',
    state: 'State the standing',
    restate: 'State it anew',
    current: 'As stated',
    earlier: 'Stated earlier',
    none: 'No standing has been stated yet.',
    nothingNow: 'nothing stated for today',
    readBack: (held: string, done: string) => `Standing: ${held} · ${done}`,
    open: 'The standing and its history',
    statedOn: (day: string, by: string) => `Stated ${dayText(day)} by ${by}`,
    heldText: (item: Standing['held'][number]) => `${heldNames[item.what]}${bracket([item.place, span(item)])}`,
    doneText: (item: Standing['done'][number]) =>
      `${doneNames[item.what]}${bracket([item.place, span(item), item.authority ? authorityText(item.authority) : undefined])}`,
  },
  register: {
    asOn: 'As it stood on',
    none: {
      person: 'Nobody is in the register yet. Begin with the person who writes this book.',
      scale: 'No scale is in the register yet. Enter each scale with its certificate: every ± on every page comes from there.',
      vessel:
        'No vessel is in the register yet: flasks, bottles and jars that hold mercury, and dishes that are weighed with what is in them.',
      retort: 'No retort is in the register yet.',
      ...plantRegister.none,
    },
    add: {
      person: 'Enter a person',
      scale: 'Enter a scale',
      vessel: 'Enter a vessel',
      retort: 'Enter a retort',
      ...plantRegister.add,
    },
    addTitle: {
      person: 'A new person',
      scale: 'A new scale',
      vessel: 'A new vessel',
      retort: 'A new retort',
      ...plantRegister.addTitle,
    },
    restate: 'Enter a change',
    restateHint: 'A new entry: it holds from its day on. What was stated before stays, for the days before.',
    restateLabel: 'Holds from',
    history: 'History',
    historyNote: 'Newest first',
    name: 'Name',
    state: 'State',
    since: 'Since',
    by: 'Written by',
    out: (day: string) => `out of use since ${dayText(day)}`,
    left: (day: string) => `left ${dayText(day)}`,
    notYet: 'not yet entered on that day',
    entry: 'Entry',
    open: 'All and their history',
    addHere: 'Add',
    back: 'Back to the register',
    unknown: 'Nothing of this register has this address.',
    somebody: 'nobody named',
    readBack: (kind: string, text: string, anew: boolean) => `${kind}${anew ? ', changed' : ''}: ${text}`,
  },
  person: {
    name: 'Name',
    nameHint: 'As it should stand beside entries. The record has no room for anything about health.',
    roles: 'What they do here',
    note: 'Note',
    left: 'Last day with the site',
  },
  scale: {
    label: 'Name of the scale',
    maximum: 'The most it weighs',
    d: 'Step of its display',
    s: 'Repeatability',
    sHint: 'Standard deviation of ten or more readings of one weight.',
    linearity: 'Linearity, half-width',
    certificate: 'Calibration certificate',
    U: 'Expanded uncertainty U',
    k: 'Its coverage factor k',
    kHint: 'Left out, 2 is taken.',
    at: 'Load the certificate states it for',
    number: 'Number of the certificate',
    on: 'Calibrated on',
    due: 'Due again',
    accuracyClass: 'Accuracy class on its plate',
    accuracyHint: 'Used only where there is no certificate.',
    e: 'Verification interval e',
    tolerance: 'Tolerance',
    get toleranceHint() {
      return marked(
        'The share of a weight that two standard deviations may reach, such as 0.001. It sets the least weight of the scale.',
      );
    },
    place: 'Where it stands',
    out: 'Out of use since',
    more: 'Repeatability, class, place',
    recalibrate: 'A new calibration is entered as a change with the new certificate: from its day on, readings count under it.',
  },
  vessel: {
    label: 'Label on the vessel',
    use: 'What it is',
    mercury: 'Mercury in it',
    tare: 'Weight empty',
    tareReading: 'Reading with nothing in it',
    tareHow: { scale: 'Read on a scale, nothing in it', stated: 'Stated by somebody else, or marked on it' },
    seal: 'Seal number',
    place: 'Where it stands',
    note: 'Note',
    out: 'Out of use since',
    more: 'Seal, place, note',
  },
  retort: {
    label: 'Name of the retort',
    capacity: 'Amalgam it can hold',
    capacityHint: 'To the brim, as weighed or reckoned.',
    usualRatio: 'Usual sponge ratio',
    get usualRatioHint() {
      return marked('Sponge over charge for this site’s amalgam: 0.38 means 38 g of sponge from 100 g.');
    },
    ratioBand: 'How far from it is still ordinary',
    get ratioBandHint() {
      return marked('From the usual sponge ratio, such as 0.04.');
    },
    lossBand: 'Ordinary gap, as a share of the charge',
    get lossBandHint() {
      return marked('Such as 0.02. Ordinary is not acceptable: it only says what is usual.');
    },
    lossAllowance: 'Ordinary gap, as a mass',
    owner: 'Owner',
    loan: 'Lent or borrowed',
    loanFrom: 'From or to whom',
    loanSince: 'Since',
    loanUntil: 'Until',
    brushed: 'Pipe and condenser last brushed out',
    brushedOn: 'Brushed out on',
    brushedGot: 'Mercury brushed out',
    brushedVessel: 'Into which vessel',
    inspected: 'Inspection',
    inspectedOn: 'Inspected on',
    inspectedDue: 'Due again',
    inspectedBy: 'By whom',
    place: 'Where it stands',
    note: 'Note',
    out: 'Out of use since',
    bands: 'What its runs are judged by',
    more: 'Owner, place, note',
  },
} as const;

const outOf = (body: { out?: string | undefined }): string | false => body.out !== undefined && site.register.out(body.out);

/** One state of a registered thing in one line. */
export const describe = {
  ...describePlant,
  person: (b: Body<'person'>) =>
    sentence([b.roles.map((r) => roleNames[r]).join(', '), b.note, b.left !== undefined && site.register.left(b.left)]),
  scale: (b: Body<'scale'>) =>
    sentence([
      `up to ${massAsRead(b.maximum)}, reads to ${massAsRead(b.d)}`,
      b.certificate
        ? `certificate${b.certificate.number ? ` ${b.certificate.number}` : ''}: U ${massAsRead(b.certificate.U)} at ${massAsRead(b.certificate.at)}${
            b.certificate.due ? `, due ${dayText(b.certificate.due)}` : ', no day due'
          }`
        : 'no certificate recorded',
      b.accuracy && `class ${b.accuracy.class}, e ${massAsRead(b.accuracy.e)}`,
      b.place,
      outOf(b),
    ]),
  vessel: (b: Body<'vessel'>) =>
    sentence([
      vesselUseNames[b.use],
      b.mercury && `mercury: ${mercuryNames[b.mercury].toLowerCase()}`,
      b.tare ? `empty ${tareText(b.tare)}` : 'never weighed empty',
      b.seal && `seal ${b.seal}`,
      b.place,
      outOf(b),
    ]),
  retort: (b: Body<'retort'>) =>
    sentence([
      b.capacity ? `holds ${massAsRead(b.capacity)} to the brim` : 'capacity not recorded',
      b.usualRatio !== undefined && `usual sponge ratio ${spaced(String(b.usualRatio))}`,
      b.brushed ? `brushed out ${dayText(b.brushed.on)}` : 'brushing out not recorded',
      b.inspected && `inspected ${dayText(b.inspected.on)}${b.inspected.due ? `, due ${dayText(b.inspected.due)}` : ''}`,
      b.owner && `owner ${b.owner}`,
      b.place,
      outOf(b),
    ]),
} as const;

function tareText(tare: NonNullable<Body<'vessel'>['tare']>): string {
  if (tare.how === 'stated') return `${massAsRead(tare.mass)} (stated)`;
  if (tare.how === 'volume') return spaced(tare.volume);
  return tare.tare === undefined ? massAsRead(tare.gross) : `${massAsRead(tare.gross)} less ${massAsRead(tare.tare)}`;
}
