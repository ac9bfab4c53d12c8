/**
 * A well-mixed room with a source of vapour and a supply of air: how the concentration runs, its dose, and how long to a target. It knows nothing of
 * corners, draughts or the person bent over the source. Method: safety.md 3.1, items 6 to 10; the mixing factor divides the supply everywhere.
 * The curve never passes saturation.
 */

export interface Room {
  readonly volumeM3: number;
  /** Air supplied, cubic metres an hour, and the mercury it brings. */
  readonly supplyM3h: number;
  readonly supplyMgM3: number;
  readonly startMgM3: number;
  readonly sourceMgH: number;
  /** 1 is perfect mixing, up to 10 very poor. */
  readonly mixing: number;
  /** What air at this temperature can hold at most. */
  readonly saturatedMgM3: number;
}

/** (1 − e^−x) / x, 1 at nothing. */
const spent = (x: number): number => (x === 0 ? 1 : -Math.expm1(-x) / x);

/** (1 − spent(x)) / x, one half at nothing; the series where the difference would lose its digits. */
function spentTwice(x: number): number {
  if (Math.abs(x) > 1e-2) return (1 - spent(x)) / x;
  return 1 / 2 - x / 6 + (x * x) / 24 - x ** 3 / 120 + x ** 4 / 720 - x ** 5 / 5040;
}

const changesPerHour = (room: Room): number => room.supplyM3h / room.mixing / room.volumeM3;
/** What comes in per hour and cubic metre, with the air and from the source. */
const inflow = (room: Room): number => changesPerHour(room) * room.supplyMgM3 + room.sourceMgH / room.volumeM3;

/** Where the curve would settle if air could hold any amount; null without a supply. */
function settling(room: Room): number | null {
  const supply = room.supplyM3h / room.mixing;
  return supply > 0 ? room.supplyMgM3 + room.sourceMgH / supply : null;
}

/** Steady concentration, mg/m³; null without a supply. */
export function steadyMgM3(room: Room): number | null {
  const settled = settling(room);
  return settled === null ? null : Math.min(settled, room.saturatedMgM3);
}

const freeCurve = (room: Room, hours: number): number => {
  const x = changesPerHour(room) * hours;
  return room.startMgM3 * Math.exp(-x) + inflow(room) * hours * spent(x);
};

const freeDose = (room: Room, hours: number): number => {
  const x = changesPerHour(room) * hours;
  return room.startMgM3 * hours * spent(x) + inflow(room) * hours * hours * spentTwice(x);
};

/** Hours on the free curve from the start to a level it does reach. */
function hoursTo(room: Room, level: number): number {
  const n = changesPerHour(room);
  const settled = settling(room);
  if (settled === null) return (level - room.startMgM3) / inflow(room);
  return Math.log((settled - room.startMgM3) / (settled - level)) / n;
}

/** Hours after which the air is saturated; null when it never is. */
function hoursToSaturation(room: Room): number | null {
  const settled = settling(room);
  const rises = settled === null ? inflow(room) > 0 : settled > room.saturatedMgM3;
  return rises ? hoursTo(room, room.saturatedMgM3) : null;
}

/** Concentration after so many hours, mg/m³; null when the volume is not above zero. */
export const concentrationAfter = (room: Room, hours: number): number | null =>
  room.volumeM3 > 0 ? Math.min(freeCurve(room, hours), room.saturatedMgM3) : null;

/** Dose over so many hours, mg·h/m³; null when the volume is not above zero. */
export function doseOver(room: Room, hours: number): number | null {
  if (room.volumeM3 <= 0) return null;
  const full = hoursToSaturation(room);
  if (full === null || full >= hours) return freeDose(room, hours);
  return freeDose(room, full) + room.saturatedMgM3 * (hours - full);
}

/** Minutes until the target is met, rising or falling; `never`; null when the volume is not above zero. */
export function minutesTo(room: Room, targetMgM3: number): number | 'never' | null {
  const { startMgM3: start } = room;
  if (start === targetMgM3) return 0;
  const settled = settling(room);
  if (start > targetMgM3) {
    if (settled === null || settled >= targetMgM3) return 'never';
    return room.volumeM3 > 0 ? 60 * hoursTo(room, targetMgM3) : null;
  }
  const rising = settled === null ? room.sourceMgH > 0 : settled > start;
  if (!rising) return 0;
  if (targetMgM3 > room.saturatedMgM3 || (settled !== null && settled <= targetMgM3)) return 'never';
  return room.volumeM3 > 0 ? 60 * hoursTo(room, targetMgM3) : null;
}
