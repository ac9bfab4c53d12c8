/**
 * Switches off the part of Zod that compiles schemas into functions: the page's policy forbids making code from text, and even Zod's attempt
 * would be reported. Must be the first import of `start.ts`.
 */
import { z } from './core/zod.ts';

z.config({ jitless: true });
