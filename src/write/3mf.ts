/**
 * 3MF: meshes to print, with their unit, their names, and the settings they should be printed with.
 *
 * Source: 3MF Core Specification 1.3 (model, items, metadata) and ECMA-376-2 (the package). The settings stand in a side file beside the
 * model, in the form that a widespread open slicer reads; others pass it over.
 */
import type { Mesh } from '../model/mesh.ts';
import { escaped } from '../units/markup.ts';
import { zip } from './zip.ts';

/** One body to print. */
export interface PrintObject {
  readonly name: string;
  readonly partNumber: string;
  readonly mesh: Mesh;
  /** Slicer settings by their keys: `perimeters`, `fill_density`. */
  readonly settings: Readonly<Record<string, string>>;
}

export interface PrintPackage {
  readonly title: string;
  readonly description: string;
  readonly objects: readonly PrintObject[];
}

/** Free room round each body, mm. */
const gap = 10;

/** A length to a nanometre, without needless zeros and without -0. */
const mm = (value: number) => String(Number(value.toFixed(6)) + 0);

const head = '<?xml version="1.0" encoding="UTF-8"?>\n';

function meshXml({ positions, triangles }: Mesh): string {
  const lines: string[] = ['   <mesh>', '    <vertices>'];
  for (let i = 0; i < positions.length; i += 3) {
    const [x, y, z] = [positions[i], positions[i + 1], positions[i + 2]] as [number, number, number];
    lines.push(`     <vertex x="${mm(x)}" y="${mm(y)}" z="${mm(z)}"/>`);
  }
  lines.push('    </vertices>', '    <triangles>');
  for (let i = 0; i < triangles.length; i += 3) {
    lines.push(`     <triangle v1="${triangles[i]}" v2="${triangles[i + 1]}" v3="${triangles[i + 2]}"/>`);
  }
  lines.push('    </triangles>', '   </mesh>');
  return lines.join('\n');
}

/** Where each body goes: in a row along x, all of it at positive coordinates, lowest point on the bed. */
function places(objects: readonly PrintObject[]): string[] {
  let edge = gap;
  return objects.map(({ mesh: { positions } }) => {
    const low = [Infinity, Infinity, Infinity] as [number, number, number];
    let high = -Infinity;
    for (let i = 0; i < positions.length; i++) {
      low[i % 3] = Math.min(low[i % 3] as number, positions[i] as number);
      if (i % 3 === 0) high = Math.max(high, positions[i] as number);
    }
    const shift = [edge - low[0], gap - low[1], 0 - low[2]];
    edge += high - low[0] + gap;
    return `1 0 0 0 1 0 0 0 1 ${shift.map(mm).join(' ')}`;
  });
}

function modelXml({ title, description, objects }: PrintPackage): string {
  const where = places(objects);
  return `${[
    `${head}<model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">`,
    ` <metadata name="Title">${escaped(title)}</metadata>`,
    ` <metadata name="Description">${escaped(description)}</metadata>`,
    ' <metadata name="Application">flangewright</metadata>',
    ' <resources>',
    ...objects.map(
      ({ name, partNumber, mesh }, i) =>
        `  <object id="${i + 1}" type="model" name="${escaped(name)}" partnumber="${escaped(partNumber)}">\n${meshXml(mesh)}\n  </object>`,
    ),
    ' </resources>',
    ' <build>',
    ...objects.map(
      ({ partNumber }, i) =>
        `  <item objectid="${i + 1}" transform="${where[i]}" partnumber="${escaped(partNumber)}"/>`,
    ),
    ' </build>',
    '</model>',
  ].join('\n')}\n`;
}

function settingsXml(objects: readonly PrintObject[]): string {
  const line = (type: string, key: string, value: string) =>
    `<metadata type="${type}" key="${escaped(key)}" value="${escaped(value)}"/>`;
  return `${[
    `${head}<config>`,
    ...objects.flatMap(({ name, mesh, settings }, i) => [
      ` <object id="${i + 1}" instances_count="1">`,
      ...[['name', name] as const, ...Object.entries(settings)].map(
        ([key, value]) => `  ${line('object', key, value)}`,
      ),
      `  <volume firstid="0" lastid="${mesh.triangles.length / 3 - 1}">`,
      `   ${line('volume', 'name', name)}`,
      `   ${line('volume', 'volume_type', 'ModelPart')}`,
      '  </volume>',
      ' </object>',
    ]),
    '</config>',
  ].join('\n')}\n`;
}

const contentTypes = `${head}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">
 <Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>
 <Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>
 <Default Extension="config" ContentType="text/xml"/>
</Types>
`;

const relations = `${head}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">
 <Relationship Target="/3D/3dmodel.model" Id="rel-1" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>
</Relationships>
`;

/** A 3MF package. Bodies are laid in a row with room between them. The same package gives the same bytes. */
export function write3mf(content: PrintPackage): Uint8Array {
  const file = (name: string, text: string) => ({ name, bytes: new TextEncoder().encode(text) });
  return zip([
    file('[Content_Types].xml', contentTypes),
    file('_rels/.rels', relations),
    file('3D/3dmodel.model', modelXml(content)),
    file('Metadata/Slic3r_PE_model.config', settingsXml(content.objects)),
  ]);
}
