import { describe, expect, it } from 'vitest';
import { jobJsonSchema } from '../../src/job/schema.ts';

interface SchemaNode {
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean;
  readonly anyOf?: readonly SchemaNode[];
  readonly items?: SchemaNode;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly description?: string;
  readonly default?: unknown;
  readonly pattern?: string;
}

const schema = jobJsonSchema() as SchemaNode & { $schema?: string };

/** Every key of every section, with its path. */
function* keysOf(node: SchemaNode, path = ''): Generator<[string, SchemaNode]> {
  for (const [key, child] of Object.entries(node.properties ?? {})) {
    const here = path === '' ? key : `${path}.${key}`;
    yield [here, child];
    yield* keysOf(child, here);
  }
  for (const branch of node.anyOf ?? []) yield* keysOf(branch, path);
}

const keys = [...keysOf(schema)];

describe('the JSON Schema for editors', () => {
  it('is draft-07, strict in every section, and plain data', () => {
    expect(schema.$schema).toBe('http://json-schema.org/draft-07/schema#');
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
    const sections = [schema, ...keys.flatMap(([, node]) => [node, ...(node.anyOf ?? [])])].filter(
      (node) => node.properties !== undefined,
    );
    expect(sections.length).toBeGreaterThan(20);
    for (const section of sections) expect(section.additionalProperties).toBe(false);
  });

  it('asks for the three keys that a job always needs', () => {
    expect([...(schema.required ?? [])].sort()).toEqual(['driven', 'driving', 'job']);
  });

  it('describes every key and says what may stand there', () => {
    expect(keys.length).toBeGreaterThan(120);
    for (const [path, node] of keys) {
      expect(node.description ?? '', path).toMatch(/^.{4,}$/);
      const says = node.type ?? node.anyOf ?? node.enum ?? node.const;
      expect(says, path).toBeDefined();
    }
  });

  it('tells the unit and the range of every quantity', () => {
    const quantities = keys.filter(([, node]) => node.anyOf?.some((branch) => branch.pattern !== undefined) === true);
    expect(quantities.length).toBeGreaterThan(40);
    for (const [path, node] of quantities)
      expect(node.description, path).toMatch(/A bare number is .*; units that may be written: .* Range: /);
  });

  it('has patterns that compile and fit what people type', () => {
    const patterns = new Set(
      keys.flatMap(([, node]) =>
        (node.anyOf ?? [node]).flatMap((branch) => (branch.pattern === undefined ? [] : [branch.pattern])),
      ),
    );
    expect(patterns.size).toBeGreaterThan(0);
    for (const pattern of patterns) {
      const compiled = new RegExp(pattern, 'u');
      for (const typed of ['57.15', '2 1/4 in', '3/8"', '.5 mm', '-3', `12°30'`, 'Ø57', '½ in'])
        expect(compiled.test(typed), typed).toBe(true);
      for (const typed of ['auto', '', 'in 5']) expect(compiled.test(typed), typed).toBe(false);
    }
  });

  it('shows defaults that fit their own key', () => {
    const withDefault = keys.filter(([, node]) => node.default !== undefined);
    expect(withDefault.length).toBeGreaterThan(35);
    for (const [path, node] of withDefault) {
      const value = node.default;
      const words = [...(node.enum ?? []), ...(node.anyOf ?? []).flatMap((branch) => branch.enum ?? [])];
      const types = [node.type ?? [], ...(node.anyOf ?? []).map((branch) => branch.type ?? [])].flat();
      const kind = Array.isArray(value) ? 'array' : typeof value;
      const fits = words.includes(value) || types.includes(kind) || (kind === 'number' && types.includes('integer'));
      expect(fits, `${path}: ${JSON.stringify(value)}`).toBe(true);
    }
  });
});
