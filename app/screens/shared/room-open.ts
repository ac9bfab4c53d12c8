/** Whether a room is there to be linked to: rooms are added one by one, and a link must never lead nowhere. */
import { rooms } from '../rooms.ts';

export const roomOpen = (key: string): boolean => rooms.some((room) => room.key === key);
