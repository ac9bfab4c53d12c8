/** One sentence for every kind of entry: what it says, with names resolved and weights as read. The daybook, the papers and searching use it. */
import type { Book } from '../core/book/book.ts';
import type { Reading } from '../core/book/current.ts';
import { type Body, isKind, type Kind } from '../core/kinds/index.ts';
import { dayText } from './dates.ts';
import { airLines } from './daybook-line-air.ts';
import { amalgamLines } from './daybook-line-amalgam.ts';
import { bullionLines } from './daybook-line-bullion.ts';
import { mercuryLines } from './daybook-line-mercury.ts';
import { type Asked, at, count, type Lines, list, lotsText, parts, restated, small, sourceText } from './daybook-line-parts.ts';
import { siteLines } from './daybook-line-site.ts';
import { siteSaysLines } from './daybook-line-site-says.ts';
import { otherNames } from './daybook-names.ts';
import { entryName, nameIn } from './daybook-naming.ts';
import { massAsRead, netText } from './daybook-weights.ts';
import { gramText } from './figures.ts';
import { doneNames, heldNames, mercuryNames, roleNames, vesselUseNames } from './labels.ts';
import { chargeKindNames, cleanUpNames, receiptNames } from './retort.ts';

function chargeLine(body: Body<'charge'>, { name, net }: Asked): string {
  const { rows, others = [] } = body;
  const there = rows.flatMap((row) => (row.take === 'not-found' ? [] : [row.weight]));
  const missing = rows.flatMap((row) => (row.take === 'not-found' ? [`“${name('lot', row.lot)}”`] : []));
  const weights = [...there, ...others.map((o) => o.weight)];
  const besides = list(others.map((o) => `${small(otherNames[o.what])} “${o.label}”`));
  return parts(
    `${name('retort', body.retort)} charged with ${
      list([there.length > 0 ? count(there.length, 'lot', 'lots') : '', besides].filter((t) => t !== '')) || 'nothing weighed'
    }${body.holds === undefined || body.holds === 'amalgam' ? '' : ` of ${small(chargeKindNames[body.holds])}`}${
      weights.length === 0 ? '' : `, ${net(...weights)} at charging`
    }`,
    missing.length > 0 && `not found: ${list(missing)}`,
  );
}

function firingLine(body: Body<'firing'>, { book, name, net }: Asked): string {
  const { heats, mercury } = body;
  const named = heats.flatMap((heat) => (heat.charge === undefined ? [] : [heat.charge]));
  const retort = body.retort ?? named.map((id) => book.charges.all.get(id)?.retort).find((id) => id !== undefined);
  const sponges = heats.flatMap((heat) => (heat.sponge ? [heat.sponge] : []));
  return parts(
    `${retort === undefined ? 'A retort' : name('retort', retort)} fired${
      named.length === 0 ? ', its charge not written up yet' : named.length > 1 ? `, ${named.length} charges caught together` : ''
    }`,
    sponges.length === 0 ? 'sponge not weighed' : `sponge ${net(...sponges)}`,
    mercury ? `mercury ${net(mercury.weight)} into ${name('vessel', mercury.vessel)}` : 'mercury not weighed',
    body.water !== undefined && `water ${net(body.water)}`,
  );
}

const lines: Lines<Kind> = {
  ...siteLines,
  ...siteSaysLines,
  ...mercuryLines,
  ...amalgamLines,
  ...bullionLines,
  ...airLines,
  standing: ({ held, done }) =>
    `Held: ${list(held.map((h) => small(heldNames[h.what]) + at(h.place)))}; done: ${list(
      done.map(
        (d) => small(doneNames[d.what]) + (d.authority ? ` (${d.authority.name} ${d.authority.number})` : '') + at(d.place),
      ),
    )}`,
  person: ({ of, name, roles, left }) =>
    parts(
      `${name}${restated(of)}: ${list(roles.map((r) => small(roleNames[r])))}`,
      left !== undefined && `with the site until ${dayText(left)}`,
    ),
  scale: ({ of, label, maximum, d, certificate, out }) =>
    parts(
      `${label}${restated(of)}: weighs up to ${massAsRead(maximum)}, reads to ${massAsRead(d)}`,
      certificate
        ? `certificate${certificate.due === undefined ? ' on the book' : ` due ${dayText(certificate.due)}`}`
        : 'no certificate',
      out !== undefined && `in use until ${dayText(out)}`,
    ),
  vessel: ({ of, label, use, mercury, tare, out }, { net }) =>
    parts(
      `${label}${restated(of)}: ${small(vesselUseNames[use])}${mercury === undefined ? '' : `, mercury ${small(mercuryNames[mercury])}`}`,
      tare !== undefined && `empty ${net(tare)}`,
      out !== undefined && `in use until ${dayText(out)}`,
    ),
  retort: ({ of, label, capacity, brushed, inspected, out }, { net }) =>
    parts(
      `${label}${restated(of)}${capacity === undefined ? '' : `: ${massAsRead(capacity)} of amalgam to the brim`}`,
      brushed && `brushed out ${dayText(brushed.on)}, which gave ${net(brushed.got)}`,
      inspected && `inspected ${dayText(inspected.on)}`,
      out !== undefined && `in use until ${dayText(out)}`,
    ),
  receipt: ({ weight, vessel, way, from, seal }, { name, net }) =>
    parts(
      `${net(weight)} of mercury into ${name('vessel', vessel)}, ${small(receiptNames[way])}${from === undefined ? '' : `, from ${from}`}`,
      seal !== undefined && `under seal ${seal}`,
    ),
  'clean-up': ({ type, where, lots, strained }, { name, net }) => {
    const sources = [...new Set(lots.flatMap((l) => (l.source === undefined ? [] : [sourceText(l.source)])))];
    return parts(
      `${cleanUpNames[type]} clean-up${at(where)}: ${lotsText(lots, net)}${
        sources.length === 0 ? '' : `, from ${list(sources)}`
      }`,
      strained && `mercury strained off ${net(strained.weight)} into ${name('vessel', strained.vessel)}`,
    );
  },
  charge: chargeLine,
  firing: firingLine,
  closing: ({ opening, closing, version, replaces, figures }, { name }) =>
    parts(
      `Period closed${opening === undefined ? '' : ` after the ${small(name('entry', opening))}`} with the ${small(name('entry', closing))}, version ${version}: ${gramText(
        Math.round(Number(figures.unaccounted_g) * 1e6),
      )} not accounted for`,
      replaces !== undefined && `next version of the ${small(name('entry', replaces))}`,
    ),
  note: ({ text, about }, { name }) => `${about === undefined ? '' : `On ${name('entry', about)}: `}${text}`,
  correction: ({ corrects, why }, { name }) => `${name('entry', corrects)} corrected: ${why}`,
  strike: ({ strikes, why }, { name }) => `${name('entry', strikes)} struck: ${why}`,
};

/** The sentence of an entry as it reads now. It stands in lists and on papers: what is not for everybody is told only to who writes it (`whole`). */
export function entryLine(book: Book, reading: Reading, whole = false): string {
  const { happened } = reading;
  const asked: Asked = {
    book,
    id: reading.id,
    whole,
    name: (to, id) => (to === 'entry' ? entryName(book, id) : nameIn(book, to, id, happened)),
    net: (...weights) => netText(book, weights, happened),
  };
  return (lines[reading.kind] as (body: unknown, asked: Asked) => string)(reading.body, asked);
}

/** Whether every kind has its sentence: for the test. */
export const hasLine = (kind: string): boolean => isKind(kind) && Object.hasOwn(lines, kind);
