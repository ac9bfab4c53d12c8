/** Puts the window together: the host, the daybook, the page. Nothing is decided here. */
import './jitless.ts';
import './look/fonts.css';
import './look/tokens.css';
import './look/page.css';
import { mount } from 'svelte';
import { Daybook } from './daybook/book.svelte.ts';
import { hostOver } from './daybook/host.ts';
import { Light } from './daybook/light.svelte.ts';
import { SessionLock } from './daybook/session-lock.svelte.ts';
import { WordHints } from './daybook/word-hints.svelte.ts';
import Window from './Window.svelte';

const daybook = new Daybook({ host: hostOver((...asked) => fetch(...asked)), locks: navigator.locks });
const light = new Light();
const hints = new WordHints();
const lock = new SessionLock(daybook);
const target = document.getElementById('window');
if (target) mount(Window, { target, props: { daybook, light, hints, lock } });
void light.start();
void hints.start();
void daybook.start();
// the browser may throw an origin's storage away; asking costs nothing, and nothing relies on the answer
void navigator.storage?.persist?.();
