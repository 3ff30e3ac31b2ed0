/** One fixed seed for every random test, so that a run says the same of the same code everywhere. FC_SEED tries another. */
import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env.FC_SEED ?? 20261125) });
