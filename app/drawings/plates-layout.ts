/**
 * Where everything of a plan of plates lies: batteries one below the other, the plates of each from left to right down the flow, to one scale where every
 * size is known, with words under each plate and brackets under those that share an amount. Knows no domain.
 */

export interface DrawnPlate {
  readonly id: string;
  /** Lines under it, the first of them its name. */
  readonly lines: readonly string[];
  readonly lengthM: number | null;
  readonly widthM: number | null;
  /** How dense its filling is: 0 none, 1 to 4. */
  readonly level: number;
}
export interface DrawnBattery {
  readonly id: string;
  readonly name: string;
  readonly plates: readonly DrawnPlate[];
  /** An amount of several plates together, by their ids. */
  readonly shared: readonly { readonly plates: readonly string[]; readonly text: string }[];
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
export interface LaidPlate extends Box {
  readonly id: string;
  readonly level: number;
  /** False: its size is not known, and it is drawn like any other. */
  readonly sized: boolean;
  readonly lines: readonly { readonly x: number; readonly y: number; readonly text: string }[];
  /** Room to point at. */
  readonly aim: Box;
}
export interface PlatesLayout {
  readonly width: number;
  readonly height: number;
  /** Whether the plates are drawn to scale among each other. */
  readonly toScale: boolean;
  readonly batteries: readonly {
    readonly id: string;
    readonly name: { readonly x: number; readonly y: number; readonly text: string };
    /** Strokes of the flow between plates, with their heads. */
    readonly arrows: readonly string[];
    readonly plates: readonly LaidPlate[];
    readonly brackets: readonly { readonly path: string; readonly x: number; readonly y: number; readonly text: string }[];
  }[];
}

const letter = 7;
const edge = 14;
const between = 40;
const line = 18;
const perLine = 5;
const n = (value: number): string => String(Math.round(value * 100) / 100);
const cut = (text: string, width: number): string => {
  const most = Math.max(1, Math.floor(width / letter));
  return text.length <= most ? text : `${text.slice(0, most - 1).trimEnd()}…`;
};
const arrow = (from: number, to: number, y: number): string =>
  `M${n(from)},${n(y)}H${n(to)}M${n(to - 7)},${n(y - 5)}L${n(to)},${n(y)}L${n(to - 7)},${n(y + 5)}`;

/** Lays plates out over a width. */
export function layPlates(batteries: readonly DrawnBattery[], width: number): PlatesLayout {
  const all = batteries.flatMap((battery) => battery.plates);
  const toScale = all.length > 0 && all.every((plate) => plate.lengthM !== null && plate.widthM !== null);
  const slot = (width - 2 * edge - 30) / perLine - between;
  const longest = Math.max(...all.map((plate) => plate.lengthM ?? 0), 0.01);
  const widest = Math.max(...all.map((plate) => plate.widthM ?? 0), 0.01);
  // few plates have more room each
  const most = Math.max(1, Math.min(perLine, Math.max(0, ...batteries.map((battery) => battery.plates.length))));
  const room = most < perLine ? Math.min(340, (width - 2 * edge - 30) / most - between) : slot;
  const perM = Math.min(room / longest, 170 / widest);
  const size = (plate: DrawnPlate): { w: number; h: number } =>
    toScale ? { w: (plate.lengthM ?? 0) * perM, h: (plate.widthM ?? 0) * perM } : { w: room * 0.8, h: 90 };
  let top = 6;
  const laid = batteries.map((battery) => {
    const name = { x: edge, y: top + 14, text: cut(battery.name, width - 2 * edge) };
    top += 28;
    const plates: LaidPlate[] = [];
    const arrows: string[] = [];
    const brackets: { path: string; x: number; y: number; text: string }[] = [];
    for (let first = 0; first < battery.plates.length; first += most) {
      const row = battery.plates.slice(first, first + most);
      const high = Math.max(...row.map((plate) => size(plate).h));
      const middle = top + high / 2;
      let x = edge + 30;
      arrows.push(arrow(edge, x - 6, middle));
      const under = top + high + 6;
      const words = Math.max(...row.map((plate) => plate.lines.length)) * line;
      for (const [i, plate] of row.entries()) {
        const { w, h } = size(plate);
        plates.push({
          id: plate.id,
          level: plate.level,
          sized: plate.lengthM !== null && plate.widthM !== null,
          x,
          y: middle - h / 2,
          width: w,
          height: h,
          lines: plate.lines.map((text, l) => ({ x, y: under + 14 + l * line, text: cut(text, room + between - 12) })),
          aim: { x: x - 4, y: top - 4, width: room + 8, height: high + words + 14 },
        });
        const next = x + room + between;
        if (i + 1 < row.length || first + most < battery.plates.length) arrows.push(arrow(x + w + 6, next - 6, middle));
        x = next;
      }
      top = under + words + 12;
      const here = battery.shared.filter((shared) => shared.plates.some((id) => row.some((plate) => plate.id === id)));
      for (const shared of here) {
        const among = plates.slice(-row.length).filter((plate) => shared.plates.includes(plate.id));
        const [a, z] = [among[0], among.at(-1)];
        if (!a || !z) continue;
        const ticks = among.map((plate) => `M${n(plate.x + plate.width / 2)},${n(top - 6)}V${n(top + 2)}`).join('');
        const path = `${ticks}M${n(a.x + a.width / 2)},${n(top + 2)}H${n(z.x + z.width / 2)}`;
        brackets.push({ path, x: a.x, y: top + 18, text: cut(shared.text, width - edge - a.x) });
        top += 34;
      }
      top += 10;
    }
    top += 8;
    return { id: battery.id, name, arrows, plates, brackets };
  });
  return { width, height: all.length === 0 ? 0 : top, toScale, batteries: laid };
}

/** Strokes of the filling of each level above nothing: the more, the closer. */
export const platePatterns = [12, 8, 5.5, 3.5].map((size) => ({
  size,
  path: `M0,${size}L${size},0M-1,1L1,-1M${size - 1},${size + 1}L${size + 1},${size - 1}`,
}));
