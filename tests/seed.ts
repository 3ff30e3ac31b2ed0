/**
 * Around every test file: one fixed seed for random tests, so that a run says the same of the same code everywhere (FC_SEED tries another);
 * and no folder is left behind.
 */
import fc from 'fast-check';
import { afterAll } from 'vitest';
import { removeFolders } from './folders.ts';

fc.configureGlobal({ seed: Number(process.env.FC_SEED ?? 20261125) });
afterAll(removeFolders);
