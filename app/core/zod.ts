/** The one place core takes Zod from. The window switches its compiler off (`app/jitless.ts`) before this is first read. */
export * as z from 'zod';
