/** The pattern list that ships with the program, read from its own folder. */
import { readdir, readFile } from 'node:fs/promises';
import { type PatternList, parsePatterns } from '../core.ts';
import { presetFolder } from './places.ts';

/** Every known flange pattern and near miss. */
export async function loadPatterns(): Promise<PatternList> {
  const folder = `${presetFolder}flanges/`;
  const names = (await readdir(folder)).filter((name) => name.endsWith('.yaml')).sort();
  const texts = await Promise.all(names.map(async (name) => [name, await readFile(folder + name, 'utf8')] as const));
  return parsePatterns(Object.fromEntries(texts));
}
