/** Opening a retort too hot, held against the worked table W12 of the project's safety paper: constructed for this project on the published vapour correlation. */
import { describe, expect, test } from 'vitest';
import { type Opening, opened } from '../../app/core/opening.ts';

const shed: Opening = {
  headspaceL: 3,
  temperatureC: 100,
  pressureKpa: 101.325,
  roomM3: 60,
  roomC: 20,
  changesPerHour: 4,
  mixing: 1,
  sourceMgH: 0,
  backgroundMgM3: 0,
  targetMgM3: 0.025,
};
const open = (more: Partial<Opening>) => {
  const got = opened({ ...shed, ...more });
  if (!got) throw new Error('a room with a volume gives an answer');
  return got;
};
/** Within a hundredth of the printed figure. */
const near = (value: number | 'never', printed: number) => {
  expect(value).not.toBe('never');
  expect(Math.abs(Number(value) - printed)).toBeLessThanOrEqual(0.01 * printed);
};

describe('a retort of 3 litres opened in a room of 60 m³', () => {
  // temperature, milligrams let out, room, minutes to 0.025 mixed and at a factor of 3, minutes to 0.001 mixed
  test.each([
    [80, 2.507, 0.0418, 7.7, 23.1, 56.0],
    [100, 7.218, 0.1203, 23.6, 70.7, 71.8],
    [150, 64.3, 1.0717, 56.4, 169, 105],
  ])('at %d °C gives the figures of the table', (temperatureC, mg, room, mixed, poor, low) => {
    const at = open({ temperatureC });
    near(at.releasedMg, mg);
    near(at.roomMgM3, room);
    near(at.minutes, mixed);
    near(open({ temperatureC, mixing: 3 }).minutes, poor);
    near(open({ temperatureC, targetMgM3: 0.001 }).minutes, low);
  });

  test('the person at the lid meets the gas as it comes out, hundreds of times the figure to leave at', () => {
    const at = open({});
    near(at.gas.mgM3, 2406);
    near(at.timesIdlh, 241);
    expect(at.gas.mgM3 / at.roomMgM3).toBeGreaterThan(10_000);
  });

  test('a target already met takes no time; one under what still comes off is never met', () => {
    expect(open({ temperatureC: 40 }).minutes).toBe(0);
    expect(open({ sourceMgH: 12 }).minutes).toBe('never');
    expect(open({ sourceMgH: 12 }).settlesMgM3).toBeCloseTo(0.05, 9);
    expect(open({ changesPerHour: 0 }).minutes).toBe('never');
    expect(open({ backgroundMgM3: 0.03 }).minutes).toBe('never');
  });

  test('the room never holds more than its air can', () => {
    const at = open({ temperatureC: 300 });
    expect(at.roomSaturated).toBe(true);
    expect(at.roomMgM3).toBeGreaterThan(13.8);
    expect(at.roomMgM3).toBeLessThan(14.4);
  });

  test('a room without a volume has no answer', () => {
    expect(opened({ ...shed, roomM3: 0 })).toBeNull();
  });
});
