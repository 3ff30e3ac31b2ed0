/** The job as a sheet of paper: sections and fields made of the job's own schema, so that no key is ever missing here. */

import opened from 'made:opened';
import { computed, signal, useComputed } from '@preact/signals';
import type { EditPath } from '../core.ts';
import type { JsonSchema } from './engine.ts';
import { Field } from './field.tsx';
import { set, values } from './store.ts';

/** Sections in the order of the work, and the keys of each that are shown before "all keys" is asked for. */
const sections: readonly { readonly key: string; readonly title: string; readonly first: readonly string[] }[] = [
  {
    key: 'driving',
    title: 'Driving flange, as measured',
    first: ['from', 'name', 'outside', 'thickness', 'register', 'holes', 'runout', 'material', 'behind'],
  },
  {
    key: 'driven',
    title: 'Driven flange, as measured',
    first: ['from', 'name', 'outside', 'thickness', 'register', 'holes', 'runout', 'material', 'behind'],
  },
  { key: 'duty', title: 'What it must carry', first: ['torque', 'speed', 'grade'] },
  { key: 'adapter', title: 'Adapter', first: ['name', 'material', 'thickness', 'clocking', 'outside', 'bore'] },
  {
    key: 'wheel',
    title: 'Toothed wheel',
    first: ['teeth', 'form', 'outside', 'height', 'ratio', 'thickness', 'material', 'fit', 'set_true'],
  },
  { key: 'sensor', title: 'Sensor', first: ['kind', 'gap', 'pole'] },
  { key: 'bracket', title: 'Bracket', first: [] },
  { key: 'shaft', title: 'Propeller shaft', first: ['mass'] },
  { key: 'print', title: 'Printer', first: ['holes', 'registers'] },
  { key: 'sheet', title: 'Cutting service', first: ['tolerance', 'kerf', 'flavour'] },
  { key: 'built', title: 'Finished parts, as measured', first: ['adapter', 'wheel', 'joint'] },
];

/** Keys inside a flange's own sections that are shown at once. */
const firstWithin: Readonly<Record<string, readonly string[]>> = {
  register: ['gender', 'diameter', 'depth', 'corner'],
  holes: ['count', 'circle', 'diameter', 'thread', 'depth'],
  runout: ['rim', 'face'],
};

const all = signal<ReadonlySet<string>>(new Set());
/** Sections that were opened or shut by hand; the others are open when the job has them. */
const byHand = signal<ReadonlyMap<string, boolean>>(new Map());

/** The section that a key may hold, if it may hold one. */
const sectionOf = (of: JsonSchema): JsonSchema | undefined =>
  of.properties ? of : of.anyOf?.find((option) => option.properties !== undefined);

/** Every key that was typed, and every section that holds one, in one text: it changes only when a key comes or goes. */
const typedKeys = computed(() => {
  const keys = new Set<string>();
  for (const path of Object.keys(values.value)) {
    for (let end = path.length; end > 0; end = path.lastIndexOf('.', end - 1)) keys.add(path.slice(0, end));
  }
  return [...keys].sort().join('\n');
});
const typedSet = computed(() => new Set(typedKeys.value.split('\n')));

const isTyped = (path: string) => typedSet.value.has(path);

function Keys({ path, of, first }: { path: EditPath; of: JsonSchema; first: readonly string[] }) {
  const at = path.join('.');
  const isOpen = all.value.has(at);
  const keys = Object.keys(of.properties ?? {});
  const shown = keys.filter((key) => isOpen || first.length === 0 || first.includes(key) || isTyped(`${at}.${key}`));
  const hidden = keys.length - shown.length;
  const toggle = () => {
    const next = new Set(all.value);
    if (!next.delete(at)) next.add(at);
    all.value = next;
  };
  return (
    <>
      {shown.map((key) => (
        <Key key={key} path={[...path, key]} of={of.properties?.[key] ?? {}} />
      ))}
      {hidden > 0 || isOpen ? (
        <button type="button" class="more" aria-expanded={isOpen} onClick={toggle}>
          {isOpen ? 'fewer keys' : `${hidden} more ${hidden === 1 ? 'key' : 'keys'}`}
        </button>
      ) : null}{' '}
    </>
  );
}

/** A measured value may be a section too, but reads better as one field. */
const isMeasured = (section: JsonSchema) =>
  section.properties?.readings !== undefined || section.properties?.clearance !== undefined;

/** What may be said in a word where a section may stand too: "may be auto or none", else what the words of the key name. */
function wordForm(of: JsonSchema): string | undefined {
  const others = of.anyOf?.filter(({ properties }) => properties === undefined) ?? [];
  const words = others.flatMap((option) => option.enum ?? []).map(String);
  if (words.length > 0) return `may be ${words.join(' or ')}`;
  if (!others.some(({ type }) => type === 'string')) return undefined;
  return /such as [^\s,;]+/.exec(of.description ?? '')?.[0] ?? 'not said';
}

function Key({ path, of }: { path: EditPath; of: JsonSchema }) {
  const words = useComputed(() => {
    const typed = values.value[path.join('.')];
    return of.anyOf !== undefined && typed !== undefined && !typed.startsWith('{');
  }).value;
  const section = sectionOf(of);
  const key = String(path.at(-1));
  if (!section || isMeasured(section)) return <Field path={path} of={of} />;
  const named = key.replaceAll('_', ' ');
  const form = wordForm(of);
  return (
    <fieldset>
      <legend>{named}</legend>
      {form === undefined ? null : <Field path={path} of={of} label={`${named} in a word`} wordOnly={form} />}
      {words ? null : <Keys path={path} of={section} first={firstWithin[key] ?? []} />}
    </fieldset>
  );
}

/** The whole sheet. */
export function JobSheet() {
  const of = opened.schema;
  return (
    <form class="sheet" aria-label="The job" onSubmit={(event) => event.preventDefault()}>
      <Field path={['title']} of={of.properties?.title ?? {}} />
      <Field path={['units']} of={of.properties?.units ?? {}} />
      {sections.map(({ key, title, first }) => {
        const section = of.properties?.[key];
        if (!section?.properties) return null;
        const isThere = isTyped(key) || (of.required?.includes(key) ?? false);
        return (
          <details
            key={key}
            open={byHand.value.get(key) ?? isThere}
            id={`sheet-${key}`}
            onFocusIn={(event) => {
              // A section that is worked in does not shut when its last key is taken out.
              const isWithin = event.target instanceof Element && !event.target.closest('summary');
              if (isWithin && !byHand.value.has(key)) byHand.value = new Map(byHand.value).set(key, true);
            }}
          >
            {/* biome-ignore lint/a11y/noStaticElementInteractions: a summary is a button by itself */}
            <summary
              onClick={(event) => {
                // The section is ours to open: the browser's own way would fight with what the job says.
                event.preventDefault();
                byHand.value = new Map(byHand.value).set(key, !(byHand.value.get(key) ?? isThere));
              }}
            >
              <h2>{title}</h2> {isThere ? null : <span class="quiet">(not in this job yet)</span>}
            </summary>
            <Keys path={[key]} of={section} first={first} />
            {isThere && !of.required?.includes(key) ? (
              <button type="button" class="more" onClick={() => void set([key], null)}>
                take {title.toLowerCase()} out of the job
              </button>
            ) : null}
          </details>
        );
      })}
    </form>
  );
}
