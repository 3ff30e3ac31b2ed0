/** The name of a key as it stands in the file. */
import { isScalar, type Scalar } from 'yaml';

/** As it was typed, without its quotes: 1e400 is a wrong name, but not "Infinity". */
const named = (key: Scalar): string => key.source ?? String(key.value);

/** Null for what is no plain word: nothing, a list, a section. */
export const keyName = (key: unknown): string | null => (isScalar(key) && key.value !== null ? named(key) : null);
