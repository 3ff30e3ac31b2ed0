/** What the cases are grown from: the schema, the shipped jobs, the known flanges. Read once. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parse } from 'yaml';
import { jobJsonSchema, type PatternList, parsePatterns } from '../../src/core.ts';
import { type KeyPath, keyPaths, type Schema, valuesSeen } from './grammar.ts';

const presets = resolve(import.meta.dirname, '../../presets');

export interface World {
  readonly schema: Schema;
  readonly paths: readonly KeyPath[];
  readonly patterns: PatternList;
  readonly jobTexts: readonly string[];
  readonly jobs: readonly unknown[];
  readonly seen: Readonly<Record<string, readonly unknown[]>>;
}

export function readWorld(): World {
  const flanges = join(presets, 'flanges');
  const patterns = parsePatterns(
    Object.fromEntries(
      readdirSync(flanges)
        .sort()
        .map((name) => [name, readFileSync(join(flanges, name), 'utf8')]),
    ),
  );
  const jobTexts = readdirSync(presets)
    .filter((name) => name.endsWith('.job.yaml'))
    .sort()
    .map((name) => readFileSync(join(presets, name), 'utf8'));
  const jobs = jobTexts.map((text) => parse(text) as unknown);
  const schema: Schema = jobJsonSchema();
  const ids = patterns.flanges.map(({ id }) => id);
  return { schema, paths: keyPaths(schema), patterns, jobTexts, jobs, seen: { ...valuesSeen(jobs), from: ids } };
}
