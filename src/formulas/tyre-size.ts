/** Tyre sizes as printed on the wall: the free diameter they stand for, and how far one turn rolls. mm. */
import type { Lookup } from './lookup.ts';
