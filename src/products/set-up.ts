/** Set-up sheets of the adapter: for the person at the lathe and the mill. */
import { holeMap } from '../drawing/hole-map.ts';
import { characteristicsOf } from '../inspect/characteristics.ts';
import type { Joint } from '../job/joint.ts';
import { setUpHtml } from '../report/set-up-sheets.ts';
import type { WorkFace } from '../shop/hole-table.ts';
import { holeSets } from '../shop/hole-table.ts';
import { routeOf } from '../shop/operations.ts';
import { cutSpeeds } from '../standards/cutting-speed-tables.ts';
import { writeSvg } from '../write/svg.ts';
import { type Product, utf8, verdictWords } from './product.ts';

const kind = 'setup';

/** The widest cut of a set: what the eye sees of a hole. */
function seenDiameter(cuts: ReturnType<typeof holeSets>[number]['cuts']): number {
  return Math.max(...cuts.map((cut) => (cut.op === 'tap' || cut.op === 'spot' ? 0 : cut.diameter)));
}

function mapOf(joint: Joint, face: WorkFace): string | null {
  const sets = holeSets(joint).filter(({ from }) => from === face);
  if (sets.length === 0) return null;
  const { outside, bore, flats } = joint.adapterSpec;
  const seen = flats && { across: flats.across, angle: face === 'driven' ? flats.angle : 180 - flats.angle };
  const drawing = holeMap({
    id: `holes-${face}`,
    title: `Holes worked from the ${face} side`,
    outside,
    bore,
    flats: seen,
    mark: face === 'driven' ? 'right' : 'left',
    holes: sets.flatMap(({ holes, cuts }) =>
      holes.map(({ tag, x, y }) => ({ tag, x, y, diameter: seenDiameter(cuts) })),
    ),
  });
  return writeSvg(drawing, { standalone: false });
}

export const setUpFiles: Product = {
  kind,
  about:
    'set-up sheets of the adapter: one page an operation, tools, hole coordinates to tick off, where to stop and measure',
  metal: true,
  applies: () => true,
  asked: () => false,
  names: ({ base }) => [`${base}-setup.html`],
  async make({ joint, base, revision, verdict, forced }) {
    const { job, adapterSpec, adapterMaterial } = joint;
    const maps = Object.fromEntries(
      (['driving', 'driven'] as const).flatMap((face) => {
        const map = mapOf(joint, face);
        return map === null ? [] : [[face, map] as const];
      }),
    );
    const page = setUpHtml({
      title: job.title,
      part: `Adapter ${adapterSpec.name}`,
      revision,
      units: job.units,
      material: `Material: ${adapterMaterial.name}`,
      quantityNote: `Finished mass ${joint.adapterMass.mass.toFixed(0)} g.`,
      warning: verdictWords(verdict, forced),
      route: routeOf(joint, characteristicsOf(joint)),
      maps,
      speedSource: cutSpeeds.edition.toLowerCase(),
    });
    return [{ kind, name: `${base}-setup.html`, bytes: utf8(page) }];
  },
};
