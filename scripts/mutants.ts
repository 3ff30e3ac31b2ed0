/**
 * Small wrongs put into a source file, one at a time: what a tired hand could have typed. Text in, mutants out; the file is not touched.
 *
 * Words are left alone (templates, titles, reasons, choices between phrases), and so are the guards against rounding: a sum or comparison with a number up to 1e-6.
 */
import { parseSync } from 'vite';

/** One wrong: the letters from `start` to `end` of the file become `text`. */
export interface Mutant {
  readonly path: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
  readonly kind: string;
  readonly line: number;
}

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [key: string]: unknown;
}

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

/** Each operator and what it becomes, with the name of the slip. */
const operators: Readonly<Record<string, readonly (readonly [string, string])[]>> = {
  '+': [['-', 'sum']],
  '-': [['+', 'sum']],
  '*': [['/', 'product']],
  '/': [['*', 'product']],
  '**': [['*', 'product']],
  '%': [['*', 'product']],
  '<': [
    ['<=', 'boundary'],
    ['>=', 'comparison'],
  ],
  '<=': [
    ['<', 'boundary'],
    ['>', 'comparison'],
  ],
  '>': [
    ['>=', 'boundary'],
    ['<=', 'comparison'],
  ],
  '>=': [
    ['>', 'boundary'],
    ['<', 'comparison'],
  ],
  '===': [['!==', 'comparison']],
  '!==': [['===', 'comparison']],
  '&&': [['||', 'logic']],
  '||': [['&&', 'logic']],
};

/** Functions that are easily taken for each other. */
const twins: Readonly<Record<string, string>> = {
  min: 'max',
  max: 'min',
  floor: 'ceil',
  ceil: 'floor',
  round: 'floor',
  sin: 'cos',
  cos: 'sin',
  some: 'every',
  every: 'some',
};

/** Words that decide what a finding says. */
const verdicts: Readonly<Record<string, string>> = {
  pass: 'caution',
  caution: 'pass',
  fail: 'caution',
  'at least': 'at most',
  'at most': 'at least',
};

/** Keys whose value is only read by people, and calls that only write figures. */
const words = new Set([
  'why',
  'cure',
  'title',
  'source',
  'improve',
  'missing',
  'notes',
  'covers',
  'edition',
  'unit',
  'id',
]);
const writers = new Set(['toFixed', 'toPrecision', 'padStart', 'padEnd', 'mm', 'plain', 'percent']);
/** Types are no code. */
const typeKeys = new Set(['typeAnnotation', 'returnType', 'typeParameters', 'typeArguments', 'superTypeArguments']);
const typeNodes = /^TS(?!AsExpression|SatisfiesExpression|NonNullExpression)/;

const name = (node: unknown): string => {
  if (!isNode(node)) return '';
  if (node.type === 'Identifier') return String(node.name);
  if (node.type === 'Literal') return String(node.value);
  return node.type === 'MemberExpression' && node.computed === false ? name(node.property) : '';
};
const isNumber = (node: unknown): node is Node & { readonly value: number } =>
  isNode(node) && node.type === 'Literal' && typeof node.value === 'number';
/** Text joined with +, which has no minus. */
const isText = (node: unknown): boolean =>
  isNode(node) &&
  ((node.type === 'Literal' && typeof node.value === 'string') ||
    node.type === 'TemplateLiteral' ||
    (node.type === 'ParenthesizedExpression' && isText(node.expression)) ||
    (node.type === 'BinaryExpression' && node.operator === '+' && (isText(node.left) || isText(node.right))));

/** Part of a sentence: a template, or a string that is empty or holds a space and decides nothing. */
const isPhrase = (node: unknown): boolean =>
  isNode(node) &&
  (node.type === 'TemplateLiteral' ||
    (node.type === 'Literal' &&
      typeof node.value === 'string' &&
      /^$| /.test(node.value) &&
      !(node.value in verdicts)) ||
    (node.type === 'ParenthesizedExpression' && isPhrase(node.expression)) ||
    (node.type === 'ConditionalExpression' && isPhrase(node.consequent) && isPhrase(node.alternate)));

/** What a function gives up with when it returns at once, by its declared type. */
function constantsFor(source: string, returnType: unknown): readonly string[] {
  if (!isNode(returnType)) return [];
  const type = source.slice(returnType.start, returnType.end).replace(/^:\s*/, '');
  if (type === 'number') return ['0', '1'];
  if (type === 'boolean') return ['true', 'false'];
  if (/\[\]$|^readonly .*\[\]$/.test(type)) return ['[]'];
  return /^Lookup</.test(type) ? ["{ ok: false, why: '' }"] : [];
}

/** Every mutant of a source text. `path` says where it stands: tables lose rows in standards, verdicts are bent in validate. */
export function mutantsOf(path: string, source: string): readonly Mutant[] {
  const { program, errors } = parseSync(path, source);
  if (errors.length > 0) throw new Error(`${path}: ${errors[0]?.message}`);
  const found: Mutant[] = [];
  const add = (node: { start: number; end: number }, text: string, kind: string) =>
    found.push({
      path,
      start: node.start,
      end: node.end,
      text,
      kind,
      line: source.slice(0, node.start).split('\n').length,
    });
  const text = (node: Node) => source.slice(node.start, node.end);
  const tables = path.includes('/standards/');
  const judges = path.includes('/validate/');

  const atOnce = (owner: Node, constants: readonly string[]) => {
    const body = owner.body as Node;
    for (const constant of constants) {
      if (body.type !== 'BlockStatement')
        add(body, constant === "{ ok: false, why: '' }" ? `(${constant})` : constant, 'early return');
      else add({ start: body.start + 1, end: body.start + 1 }, ` return ${constant}; `, 'early return');
    }
  };

  const number = (node: Node & { readonly value: number }, parent: Node, key: string) => {
    const { value } = node;
    if (key === 'key' && parent.computed === false) return;
    const inSum = parent.type === 'BinaryExpression' && !['*', '/', '**', '%'].includes(String(parent.operator));
    if (inSum && value !== 0 && Math.abs(value) <= 1e-6) return;
    const place =
      (parent.type === 'MemberExpression' && key === 'property') || /^(at|slice)$/.test(name(parent.callee));
    if (place || value === 0) add(node, String(value + 1), 'number');
    else add(node, String(Number((value * (node.start % 2 === 0 ? 1.1 : 0.9)).toPrecision(12))), 'number');
  };

  const walk = (node: Node, parent: Node, key: string): void => {
    if (typeNodes.test(node.type) || node.type.startsWith('Import') || isPhrase(node)) return;
    switch (node.type) {
      case 'BinaryExpression':
      case 'LogicalExpression': {
        const [left, right] = [node.left as Node, node.right as Node];
        if (node.operator === '+' && isText(node)) break;
        for (const [other, kind] of operators[String(node.operator)] ?? [])
          add(node, `(${text(left)} ${other} ${text(right)})`, kind);
        if (node.operator === '??') add(node, text(right), 'logic');
        break;
      }
      case 'UnaryExpression':
        if (node.operator === '!' || node.operator === '-') add(node, text(node.argument as Node), 'negation');
        break;
      case 'ConditionalExpression':
        add(node, `(${text(node.consequent as Node)})`, 'condition');
        add(node, `(${text(node.alternate as Node)})`, 'condition');
        break;
      case 'IfStatement':
        for (const way of ['true', 'false']) add(node.test as Node, way, 'condition');
        break;
      case 'CallExpression': {
        const callee = node.callee as Node;
        const called = name(callee);
        if (writers.has(called)) return;
        const twin = callee.type === 'MemberExpression' ? twins[called] : undefined;
        if (twin !== undefined) add(callee.property as Node, twin, 'twin function');
        if (called === 'abs') add(node, `(${text((node.arguments as Node[])[0] as Node)})`, 'twin function');
        break;
      }
      case 'ArrowFunctionExpression':
      case 'FunctionDeclaration':
      case 'FunctionExpression': {
        const runs = judges && parent.type === 'Property' && name(parent.key) === 'run';
        atOnce(node, runs ? ['[]'] : constantsFor(source, node.returnType));
        break;
      }
      case 'ArrayExpression': {
        const rows = node.elements as (Node | null)[];
        const isTable = tables && rows.length >= 3 && rows.every((row) => row?.type === rows[0]?.type);
        if (isTable && /^(Object|Array)Expression$/.test(rows[0]?.type ?? ''))
          for (const row of rows) add(row as Node, '...[]', 'row dropped');
        break;
      }
      case 'Property':
        if (words.has(name(node.key))) return;
        break;
      case 'Literal':
        if (isNumber(node)) number(node, parent, key);
        else if (typeof node.value === 'boolean') add(node, String(!node.value), 'condition');
        else if (judges && key !== 'key' && typeof node.value === 'string' && Object.hasOwn(verdicts, node.value))
          add(node, `'${verdicts[node.value]}'`, 'verdict');
        return;
    }
    for (const [under, value] of Object.entries(node))
      if (!typeKeys.has(under))
        for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) walk(child, node, under);
  };
  walk(program as unknown as Node, program as unknown as Node, '');
  return found;
}
