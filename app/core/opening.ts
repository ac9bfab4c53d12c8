/**
 * A retort opened before it is cold: its free space holds air saturated with mercury at its temperature, and lets it out at once. It gives what the
 * person at the lid meets (the gas as it comes out, not diluted) beside what a well-mixed room would hold after it; neither stands for the other.
 * It knows nothing of what goes on boiling off. Method: safety.md 1.8 and W12; vapour as in vapour.ts, room as in room.ts.
 */
import { idlhMgM3 } from './air-reading.ts';
import { minutesTo, type Room, steadyMgM3 } from './room.ts';
import { type Saturation, saturation } from './vapour.ts';

export interface Opening {
  /** Free space of the retort, litres. */
  readonly headspaceL: number;
  /** Measured temperature of what is opened, °C, within the range of vapour.ts. */
  readonly temperatureC: number;
  /** Ambient pressure, kilopascals; above zero. */
  readonly pressureKpa: number;
  readonly roomM3: number;
  /** Temperature of the room, °C: what its air can hold at most. */
  readonly roomC: number;
  readonly changesPerHour: number;
  /** 1 is perfect mixing, up to 10 very poor. */
  readonly mixing: number;
  /** What goes on coming off after the opening, mg/h. */
  readonly sourceMgH: number;
  /** What the supplied air, and the room before, already holds, mg/m³. */
  readonly backgroundMgM3: number;
  readonly targetMgM3: number;
}

export interface Opened {
  /** The gas as it leaves the retort: what the person at the lid meets. */
  readonly gas: Saturation;
  /** That gas in parts of the figure immediately dangerous to life or health. */
  readonly timesIdlh: number;
  readonly releasedMg: number;
  /** What the room holds once it is mixed, mg/m³; never above what its air can hold. */
  readonly roomMgM3: number;
  /** Its air could not hold all that came out: drops are left on walls and floor. */
  readonly roomSaturated: boolean;
  /** Minutes until the target is met, or never. */
  readonly minutes: number | 'never';
  /** The same if the air mixed perfectly. */
  readonly perfectMinutes: number | 'never';
  /** Where the room settles, mg/m³; null without a supply of air. */
  readonly settlesMgM3: number | null;
}

/** Milligrams in one litre of a gas of so many milligrams in a cubic metre. */
const perLitre = 1 / 1000;

/** What follows from opening; null when the room has no volume. */
export function opened(opening: Opening): Opened | null {
  const { roomM3: volumeM3, roomC, changesPerHour, mixing, sourceMgH, backgroundMgM3, targetMgM3 } = opening;
  if (!(volumeM3 > 0)) return null;
  const gas = saturation(opening.temperatureC, opening.pressureKpa);
  const releasedMg = gas.mgM3 * perLitre * opening.headspaceL;
  const saturatedMgM3 = saturation(roomC, opening.pressureKpa).mgM3;
  const mixed = backgroundMgM3 + releasedMg / volumeM3;
  const roomMgM3 = Math.min(mixed, saturatedMgM3);
  const room: Room = {
    volumeM3,
    supplyM3h: changesPerHour * volumeM3,
    supplyMgM3: backgroundMgM3,
    startMgM3: roomMgM3,
    sourceMgH,
    mixing,
    saturatedMgM3,
  };
  const clearing = (how: Room) => (roomMgM3 <= targetMgM3 ? 0 : (minutesTo(how, targetMgM3) ?? 0));
  return {
    gas,
    timesIdlh: gas.mgM3 / idlhMgM3,
    releasedMg,
    roomMgM3,
    roomSaturated: mixed > saturatedMgM3,
    minutes: clearing(room),
    perfectMinutes: clearing({ ...room, mixing: 1 }),
    settlesMgM3: steadyMgM3(room),
  };
}
