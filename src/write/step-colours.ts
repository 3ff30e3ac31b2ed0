/**
 * Colours of the parts in a STEP text. The modeller could write them, but in an order that changes from run to run, so they are put in
 * afterwards. Source of the entities: ISO 10303-46.
 */

/** All lines of one kind: its number, then what stands between its brackets. */
function entities(data: string, kind: string): (readonly [id: string, inside: string])[] {
  return [...data.matchAll(new RegExp(`#(\\d+) = ${kind}\\(([^;]*)\\);`, 'g'))].map((m) => [
    m[1] as string,
    m[2] as string,
  ]);
}

const references = (inside: string): string[] => [...inside.matchAll(/#(\d+)/g)].map((m) => m[1] as string);

/** Things by the number of what they point at: product to its version, version to its definition, and so on. */
const byTarget = (data: string, kind: string, target: number): Map<string, string> =>
  new Map(entities(data, kind).map(([id, inside]) => [references(inside)[target] as string, id]));

/** Bodies of each product and the context that they are drawn in. */
function bodiesOf(data: string): (product: string) => { bodies: string[]; context: string } | null {
  const versions = byTarget(data, 'PRODUCT_DEFINITION_FORMATION', 0);
  const definitions = byTarget(data, 'PRODUCT_DEFINITION', 0);
  const shapes = byTarget(data, 'PRODUCT_DEFINITION_SHAPE', 0);
  const drawn = new Map(
    entities(data, 'SHAPE_DEFINITION_REPRESENTATION').map(([, inside]) => references(inside) as [string, string]),
  );
  const representations = new Map(entities(data, 'ADVANCED_BREP_SHAPE_REPRESENTATION'));
  const solids = new Set(
    ['MANIFOLD_SOLID_BREP', 'BREP_WITH_VOIDS'].flatMap((kind) => entities(data, kind).map(([id]) => id)),
  );
  const next = (map: ReadonlyMap<string, string>, id: string | undefined) =>
    id === undefined ? undefined : map.get(id);
  return (product) => {
    const shape = next(shapes, next(definitions, next(versions, product)));
    const inside = next(representations, next(drawn, shape));
    if (inside === undefined) return null;
    const found = references(inside);
    return { bodies: found.filter((id) => solids.has(id)), context: found.at(-1) as string };
  };
}

/** A share of 255 as STEP writes a real number. */
const share = (hex: string) => {
  const text = String(Number((Number.parseInt(hex, 16) / 255).toFixed(6)));
  return text.includes('.') ? text : `${text}.`;
};

/**
 * The text with colours for products, by their entity numbers: `#8899aa`, as seen on a screen. Throws an Error for a product that has no
 * body.
 */
export function withColours(data: string, colours: ReadonlyMap<string, string>): string {
  const find = bodiesOf(data);
  let last = Math.max(...[...data.matchAll(/^#(\d+) = /gm)].map((m) => Number(m[1])));
  const lines: string[] = [];
  const add = (entity: string): string => {
    lines.push(`#${++last} = ${entity};\n`);
    return `#${last}`;
  };
  for (const [product, colour] of colours) {
    const found = find(product);
    if (!found || found.bodies.length === 0) throw new Error(`the STEP text has no body for product #${product}`);
    const rgb = add(`COLOUR_RGB('',${[1, 3, 5].map((at) => share(colour.slice(at, at + 2))).join(',')})`);
    const area = add(`FILL_AREA_STYLE('',(${add(`FILL_AREA_STYLE_COLOUR('',${rgb})`)}))`);
    const side = add(`SURFACE_SIDE_STYLE('',(${add(`SURFACE_STYLE_FILL_AREA(${area})`)}))`);
    const style = add(`PRESENTATION_STYLE_ASSIGNMENT((${add(`SURFACE_STYLE_USAGE(.BOTH.,${side})`)}))`);
    const items = found.bodies.map((body) => add(`STYLED_ITEM('color',(${style}),#${body})`));
    add(`MECHANICAL_DESIGN_GEOMETRIC_PRESENTATION_REPRESENTATION('',(${items.join(',')}),#${found.context})`);
  }
  const end = data.lastIndexOf('ENDSEC;');
  return data.slice(0, end) + lines.join('') + data.slice(end);
}
