/** Where the program's own files stand: in a checkout and in an installed package alike. */
import { fileURLToPath } from 'node:url';

/** This file stands two folders below the package: in src/cli from source, in dist/cli when built into one file. */
const packageFolder = new URL('../../', import.meta.url);

const at = (path: string) => fileURLToPath(new URL(path, packageFolder));

export const packageFile = at('package.json');
/** Shipped jobs and flange patterns. */
export const presetFolder = at('presets/');
/** The page, as `npm run build` makes it. */
export const pageFolder = at('dist/page/');
