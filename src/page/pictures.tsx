/** The joint's pictures, live. A feature under the pointer lights up here and in the findings, both ways. */
import { useLayoutEffect, useRef } from 'preact/hooks';
import { isStale, lit, view } from './store.ts';

/** The SVG comes from our own writer, which escapes every text; it is read as XML, never as a page. */
function Picture({ svg, caption, name, column }: { svg: string; caption: string; name: string; column: boolean }) {
  const place = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    // An element for a page names no namespace; read by itself it needs one.
    const named = svg.replace(/^\s*<svg(?![^>]*xmlns=)/, '<svg xmlns="http://www.w3.org/2000/svg"');
    const read = new DOMParser().parseFromString(named, 'image/svg+xml').documentElement;
    if (read.nodeName !== 'svg') return;
    const drawn = document.importNode(read, true);
    place.current?.replaceChildren(drawn);
  }, [svg]);
  const feature = lit.value;
  useLayoutEffect(() => {
    for (const shape of place.current?.querySelectorAll('[data-feature]') ?? []) {
      shape.classList.toggle('lit', feature !== null && shape.getAttribute('data-feature') === feature);
    }
  }, [feature, svg]);
  const featureUnder = (event: Event): string | null =>
    event.target instanceof Element
      ? (event.target.closest('[data-feature]')?.getAttribute('data-feature') ?? null)
      : null;
  return (
    <figure id={`picture-${name}`} class={column ? 'column' : ''}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: pointing only; the findings say the same to a keyboard */}
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: pointing only; the findings say the same to a keyboard */}
      <div
        ref={place}
        onPointerMove={(event) => {
          const under = featureUnder(event);
          if (under !== lit.value) lit.value = under;
        }}
        onPointerLeave={() => {
          lit.value = null;
        }}
        onClick={(event) => showFinding(featureUnder(event))}
      />
      <figcaption>{caption}</figcaption>
    </figure>
  );
}

/** Brings the first finding about a feature into sight and opens it. */
function showFinding(feature: string | null): void {
  if (feature === null) return;
  const found = [...document.querySelectorAll<HTMLDetailsElement>('.finding')].find(
    (one) => one.dataset.about === feature,
  );
  const passes = found?.parentElement?.closest('details');
  if (passes) passes.open = true;
  if (!found) return;
  found.open = true;
  found.scrollIntoView({ block: 'nearest' });
}

/** What each picture is called in the list of them. */
const names: Readonly<Record<string, string>> = {
  'driving-face': 'driving face',
  'driven-face': 'driven face',
  'chain-shaft': 'centring',
  'chain-lean': 'lean',
  'chain-teeth': 'run-out of the teeth',
  phasing: 'best way round',
  'shaft-line': 'line of shafts',
};

/** Ways down to the pictures: there are many, and each answers a question of its own. */
function PictureList({ shown }: { shown: readonly { readonly name: string }[] }) {
  return (
    <nav aria-label="Pictures">
      {shown.map(({ name }) => (
        <button
          key={name}
          type="button"
          class="more"
          onClick={() => document.getElementById(`picture-${name}`)?.scrollIntoView({ block: 'start' })}
        >
          {names[name] ?? name}
        </button>
      ))}
    </nav>
  );
}

export function Pictures() {
  const shown = view.value;
  return (
    <section aria-label="Pictures" class={`pictures${isStale.value ? ' stale' : ''}`}>
      {isStale.value ? <p class="stale-note">These pictures are of the job before the errors on the sheet.</p> : null}
      {shown ? <PictureList shown={shown.pictures} /> : null}
      {shown?.pictures.map((picture) => (
        <Picture key={picture.name} {...picture} />
      ))}
    </section>
  );
}
