/** The program's own version, from its package file. */
import { readFileSync } from 'node:fs';
import { packageFile } from './places.ts';

export const version: string = (JSON.parse(readFileSync(packageFile, 'utf8')) as { version: string }).version;
