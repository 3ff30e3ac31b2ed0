/** The joint's pictures, live. A feature under the pointer lights up here and in the findings, both ways. */
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { isStale, lit, sketches, view } from '../job/store.ts';

/** Read the drawing and put it in the place of the one before. */
function drawInto(place: HTMLElement, svg: string): void {
  // An element for a page names no namespace; read by itself it needs one.
  const named = svg.replace(/^\s*<svg(?![^>]*xmlns=)/, '<svg xmlns="http://www.w3.org/2000/svg"');
  const read = new DOMParser().parseFromString(named, 'image/svg+xml').documentElement;
  if (read.nodeName === 'svg') place.replaceChildren(document.importNode(read, true));
}

/** Least height of a letter that is read without a glass, px. Common practice, no source. */
const readable = 9;

/** How wide the drawing in a place must be for its smallest letter to be read, px. */
function readableWidth(place: HTMLElement): number {
  const svg = place.querySelector('svg');
  if (!svg) return 0;
  // A letter's size is told in units of the drawing.
  const letters = [...svg.querySelectorAll('text')].map((text) => Number.parseFloat(getComputedStyle(text).fontSize));
  const least = Math.min(...letters.filter((size) => size > 0));
  return Number.isFinite(least) ? Math.ceil((svg.viewBox.baseVal.width * readable) / least) : place.clientWidth;
}

/** Width over height of a drawing, as a style takes it; it is known before the drawing is read. Empty where the drawing does not say. */
function shapeOf(svg: string): string {
  const [, width, height] = /\bviewBox="\S+ \S+ (\S+) (\S+)"/.exec(svg) ?? [];
  return width !== undefined && height !== undefined ? `${width} / ${height}` : '';
}

/** Do it when nothing else is to be done, soon at the latest; what comes back calls it off. Not every browser tells when it is idle. */
function whenIdle(then: () => void): () => void {
  if (typeof requestIdleCallback !== 'function') {
    const timer = setTimeout(then, 100);
    return () => clearTimeout(timer);
  }
  const turn = requestIdleCallback(then, { timeout: 400 });
  return () => cancelIdleCallback(turn);
}

/** Whether a place is in sight or about to be; true until that is known. */
function useNear(place: { readonly current: Element | null }): { readonly current: boolean } {
  const isNear = useRef(true);
  useLayoutEffect(() => {
    const watch = new IntersectionObserver(
      (seen) => {
        isNear.current = seen.at(-1)?.isIntersecting ?? true;
      },
      { rootMargin: '300px' },
    );
    if (place.current) watch.observe(place.current);
    return () => watch.disconnect();
  }, []);
  return isNear;
}

/** The SVG comes from our own writer, which escapes every text; it is read as XML, never as a page. */
function Picture({ svg, caption, name, column }: { svg: string; caption: string; name: string; column: boolean }) {
  const place = useRef<HTMLDivElement>(null);
  const isNear = useNear(place);
  const [drawn, setDrawn] = useState('');
  useLayoutEffect(() => {
    if (!place.current || drawn === svg) return;
    const draw = () => {
      if (!place.current) return;
      drawInto(place.current, svg);
      setDrawn(svg);
    };
    if (isNear.current) return draw();
    // Nobody sees this one: those that are seen come first.
    return whenIdle(draw);
  }, [svg, drawn]);
  const shape = shapeOf(svg);
  /** Enlarged: so many pixels wide, to be moved sideways; 0 fits the screen. */
  const [wide, setWide] = useState(0);
  const feature = lit.value;
  useLayoutEffect(() => {
    for (const shape of place.current?.querySelectorAll('[data-feature]') ?? []) {
      shape.classList.toggle('lit', feature !== null && shape.getAttribute('data-feature') === feature);
    }
  }, [feature, drawn]);
  const featureUnder = (event: Event): string | null =>
    event.target instanceof Element
      ? (event.target.closest('[data-feature]')?.getAttribute('data-feature') ?? null)
      : null;
  return (
    <figure
      id={`picture-${name}`}
      class={`${column ? 'column' : ''}${wide > 0 ? ' large' : ''}`}
      style={{
        ...(shape ? { '--shape': shape } : {}),
        ...(wide > 0 ? { '--readable': `${wide}px` } : {}),
      }}
    >
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
        {...(wide > 0 ? { tabIndex: 0, role: 'group', 'aria-label': `${names[name] ?? name}, enlarged` } : {})}
      />
      <button
        type="button"
        class="enlarge"
        aria-label={`${wide > 0 ? 'fit to the screen' : 'enlarge'}: ${names[name] ?? name}`}
        onClick={() => setWide(wide > 0 || !place.current ? 0 : readableWidth(place.current))}
      >
        {wide > 0 ? 'fit to the screen' : 'enlarge'}
      </button>
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
  phasing: 'which way round',
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
          {names[name] ?? name}{' '}
        </button>
      ))}
    </nav>
  );
}

export function Pictures() {
  const shown = view.value;
  // A job that is not whole yet shows what is known of its flanges.
  const drawn = shown?.pictures ?? sketches.value;
  return (
    <section aria-label="Pictures" class={`pictures${isStale.value ? ' stale' : ''}`}>
      {isStale.value ? <p class="stale-note">These pictures are of the job before the errors on the sheet.</p> : null}
      {shown ? <PictureList shown={shown.pictures} /> : null}
      {drawn.map((picture) => (
        <Picture key={picture.name} {...picture} />
      ))}
    </section>
  );
}
