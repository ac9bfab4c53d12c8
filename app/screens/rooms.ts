/** The rooms of the window, in the order of the thumb index. To add one: its folder, its name in words/screens-shell.ts, and a line here. */
import type { Component } from 'svelte';
import type { Daybook } from '../daybook/book.svelte.ts';
import type { shell } from '../words/screens-shell.ts';
import AirRoom from './air/AirRoom.svelte';
import Bullion from './bullion/Bullion.svelte';
import DaybookRoom from './daybook/DaybookRoom.svelte';
import FindPage from './find/FindPage.svelte';
import MercuryRoom from './mercury/MercuryRoom.svelte';
import PapersRoom from './papers/PapersRoom.svelte';
import Retort from './retort/Retort.svelte';
import Site from './site/Site.svelte';
import TodayRoom from './today/TodayRoom.svelte';
import WordsPage from './words/WordsPage.svelte';
import WorkingsPage from './words/WorkingsPage.svelte';

/** What every room is given. */
export interface RoomProps {
  /** The open daybook. */
  daybook: Daybook;
  /** What stands in the address after the room: `#/retort/abc` gives `['abc']`. */
  rest: readonly string[];
}

export interface Room {
  readonly key: keyof typeof shell.rooms;
  readonly screen: Component<RoomProps>;
  /** Mercury is its subject: while the site's standing is not stated, the room carries the question. */
  readonly mercury?: true;
}

export const rooms: readonly Room[] = [
  { key: 'today', screen: TodayRoom },
  { key: 'daybook', screen: DaybookRoom },
  { key: 'mercury', screen: MercuryRoom, mercury: true },
  { key: 'retort', screen: Retort, mercury: true },
  { key: 'bullion', screen: Bullion },
  { key: 'air', screen: AirRoom, mercury: true },
  { key: 'site', screen: Site },
  { key: 'papers', screen: PapersRoom },
];

/** Pages reached from the head of the window and from its boards, which have no cut in the index. */
export const besideRooms: readonly Room[] = [
  { key: 'find', screen: FindPage },
  { key: 'words', screen: WordsPage },
  { key: 'workings', screen: WorkingsPage },
];
