/** The machine's clock as text with its offset from UTC: the only place in the window that asks what time it is. */

const two = (n: number): string => String(n).padStart(2, '0');

/** "+13:00" for a local date and time; minutes east of Greenwich are positive. */
function offsetText(at: Date): string {
  const minutes = -at.getTimezoneOffset();
  const size = Math.abs(minutes);
  return `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

/** Now, to the minute: "2026-03-14T09:20+13:00". */
export function now(): string {
  const at = new Date();
  const day = `${String(at.getFullYear()).padStart(4, '0')}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return `${day}T${two(at.getHours())}:${two(at.getMinutes())}${offsetText(at)}`;
}

/** The machine's offset at that local day and time; the present one when they name no day. */
export function offsetAt(day: string, time: string): string {
  const at = new Date(`${day}T${time}`);
  return offsetText(Number.isNaN(at.getTime()) ? new Date() : at);
}

export const machineClock = { now, offsetAt } as const;
