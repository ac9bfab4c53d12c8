/** Every field of every kind of entry in words. A kind without a line here does not compile; a field without one fails a test. */
import type { Kind } from '../core/kinds/index.ts';
import { airReadingFields, limitFields } from './daybook-fields-air.ts';
import { cleaningFields, plateWorkFields, squeezeFields, unmakeFields } from './daybook-fields-amalgam.ts';
import { assayFields, settlementFields } from './daybook-fields-bullion.ts';
import { closingFields } from './daybook-fields-closing.ts';
import { stockTakeFields } from './daybook-fields-count.ts';
import { transferFields, wasteFields } from './daybook-fields-leaving.ts';
import { meltFields } from './daybook-fields-melt.ts';
import { crushingFields, foundFields, issueFields, returnFields, spillFields } from './daybook-fields-mercury.ts';
import { siteNotationFields } from './daybook-fields-notation.ts';
import { barKeptFields, outTurnFields } from './daybook-fields-out-turn.ts';
import { prose } from './daybook-fields-parts.ts';
import { authorityFields, batteryFields, meterFields, parcelFields, plateFields } from './daybook-fields-plant.ts';
import { personFields, retortFields, scaleFields, standingFields, vesselFields } from './daybook-fields-registers.ts';
import { siteFiguresFields } from './daybook-fields-site-figures.ts';
import { checkDueFields, incidentFields, openDayFields, scaleCheckFields } from './daybook-fields-site-life.ts';
import {
  checkListFields,
  leadTimesFields,
  retentionFields,
  siteNumbersFields,
  stopRulesFields,
} from './daybook-fields-site-says.ts';
import { chargeFields, cleanUpFields, firingFields, receiptFields } from './daybook-fields-work.ts';
import type { FieldWords } from './daybook-shapes.ts';

const entry = { is: 'ref', to: 'entry' } as const;

export const fieldsOf: Readonly<Record<Kind, readonly FieldWords[]>> = {
  standing: standingFields,
  person: personFields,
  scale: scaleFields,
  vessel: vesselFields,
  battery: batteryFields,
  plate: plateFields,
  retort: retortFields,
  meter: meterFields,
  parcel: parcelFields,
  authority: authorityFields,
  limit: limitFields,
  crushing: crushingFields,
  receipt: receiptFields,
  issue: issueFields,
  return: returnFields,
  'clean-up': cleanUpFields,
  cleaning: cleaningFields,
  squeeze: squeezeFields,
  'plate-work': plateWorkFields,
  charge: chargeFields,
  unmake: unmakeFields,
  firing: firingFields,
  melt: meltFields,
  assay: assayFields,
  settlement: settlementFields,
  'bar-kept': barKeptFields,
  transfer: transferFields,
  'out-turn': outTurnFields,
  waste: wasteFields,
  spill: spillFields,
  found: foundFields,
  incident: incidentFields,
  'open-day': openDayFields,
  'scale-check': scaleCheckFields,
  'check-due': checkDueFields,
  'check-list': checkListFields,
  'stop-rules': stopRulesFields,
  'site-figures': siteFiguresFields,
  'site-numbers': siteNumbersFields,
  retention: retentionFields,
  'lead-times': leadTimesFields,
  'site-notation': siteNotationFields,
  'air-reading': airReadingFields,
  'stock-take': stockTakeFields,
  closing: closingFields,
  note: [
    { key: 'text', label: 'Note', needed: true, first: true, shape: prose },
    { key: 'about', label: 'About', first: true, shape: entry },
  ],
  correction: [
    { key: 'corrects', label: 'Corrects', needed: true, first: true, shape: entry },
    { key: 'why', label: 'Why', needed: true, first: true, shape: prose },
    { key: 'happened', label: 'When it happened, as it should read', shape: { is: 'moment' } },
    { key: 'body', label: 'As it should read', needed: true, first: true, shape: { is: 'body' } },
  ],
  strike: [
    { key: 'strikes', label: 'Strikes', needed: true, first: true, shape: entry },
    { key: 'why', label: 'Why', needed: true, first: true, shape: prose },
  ],
};
