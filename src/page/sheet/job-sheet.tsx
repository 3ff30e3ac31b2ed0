/** The job as a sheet of paper: sections and fields made of the job's own schema, so that no key is ever missing here. */

import opened from 'made:opened';
import { useComputed } from '@preact/signals';
import type { EditPath } from '../../core.ts';
import { isMeasured, type JsonSchema, sectionOf } from '../../model/json-schema.ts';
import { set } from '../job/edits.ts';
import { values } from '../job/store.ts';
import { isTyped } from '../job/typed-keys.ts';
import { measureCircle } from '../measure/circle.tsx';
import type { Side } from '../measure/parts.tsx';
import { findPattern } from '../measure/patterns.tsx';
import { measureRegister } from '../measure/register.tsx';
import { measureRunout } from '../measure/runout.tsx';
import { benchLabel } from './bench-words.ts';
import { Field, type WordForm } from './field.tsx';
import { firstKeys, sections, wordForm } from './sheet-plan.ts';
import { all, byHand } from './sheet-state.ts';

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
          {isOpen ? 'fewer lines' : `${hidden} more ${hidden === 1 ? 'line' : 'lines'}`}
        </button>
      ) : null}{' '}
    </>
  );
}

const pictures: Readonly<Record<string, (of: Side) => void>> = {
  register: measureRegister,
  holes: measureCircle,
  runout: measureRunout,
};

/** From the sheet to the panel that measures this group by picture; a flange's own groups have one. */
function ByPicture({ path, named }: { path: EditPath; named: string }) {
  const [side, key, ...deeper] = path;
  const measure = pictures[String(key)];
  if ((side !== 'driving' && side !== 'driven') || deeper.length > 0 || !measure) return null;
  return (
    <button
      type="button"
      class="more by-picture"
      aria-label={`measure it by picture: ${named} of the ${side} flange`}
      onClick={() => measure(side)}
    >
      measure it by picture
    </button>
  );
}

/** How a field of words shows that its section's own keys stand below it, or that nothing is typed. */
function formOf(path: EditPath, of: JsonSchema, isBraced: boolean): WordForm | undefined {
  const form = wordForm(of);
  if (!form) return undefined;
  if (form.words.length === 0) return { words: [], none: form.example };
  const isFlange = path[0] === 'driving' || path[0] === 'driven';
  const usual = typeof of.default === 'string' ? of.default : 'not said';
  return { words: form.words, none: isFlange ? 'as measured below' : isBraced ? 'as typed below' : usual };
}

function Key({ path, of }: { path: EditPath; of: JsonSchema }) {
  const at = path.join('.');
  const words = useComputed(() => {
    const typed = values.value[at];
    return of.anyOf !== undefined && typed !== undefined && !typed.startsWith('{');
  }).value;
  const section = sectionOf(of);
  if (!section || isMeasured(of)) {
    const side = at === 'driving.from' ? 'driving' : at === 'driven.from' ? 'driven' : null;
    return (
      <>
        <Field path={path} of={of} />
        {side === null ? null : (
          <button
            type="button"
            class="more"
            aria-label={`which pattern is it? ${side} flange`}
            onClick={() => findPattern(side)}
          >
            which pattern is it?
          </button>
        )}
      </>
    );
  }
  const named = benchLabel(path);
  const form = formOf(path, of, isTyped(at));
  return (
    <fieldset data-group={at}>
      <legend>{named}</legend>
      {words ? null : <ByPicture path={path} named={named} />}
      {form === undefined ? null : (
        <Field path={path} of={of} label={form.words.length > 0 ? named : `${named} size`} wordOnly={form} />
      )}
      {words ? null : <Keys path={path} of={section} first={firstKeys(path)} />}
    </fieldset>
  );
}

/** Said of a section of which nothing is typed. */
function untold({ default: usual }: JsonSchema, key: string): string {
  if (usual === undefined) return '(not in this job yet)';
  return key === 'adapter' ? '(nothing typed: chosen for you)' : '(nothing typed: the usual values)';
}

/** The whole sheet. */
export function JobSheet() {
  const of = opened.schema;
  return (
    <form class="sheet" aria-label="The job" onSubmit={(event) => event.preventDefault()}>
      <Field path={['title']} of={of.properties?.title ?? {}} />
      <Field path={['units']} of={of.properties?.units ?? {}} />
      {sections.map(({ key, title }) => {
        const section = of.properties?.[key];
        if (!section?.properties) return null;
        const isThere = isTyped(key) || (of.required?.includes(key) ?? false);
        return (
          <details
            key={key}
            open={byHand.value.get(key) ?? isThere}
            id={`sheet-${key}`}
            data-group={key}
            aria-label={title}
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
              <h2>{title}</h2> {isThere ? null : <span class="quiet">{untold(section, key)}</span>}
            </summary>
            <Keys path={[key]} of={section} first={firstKeys([key])} />
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
