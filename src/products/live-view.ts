/** A judged joint as the page shows it: report and pictures as plain data that pass from a worker to the screen. */
import type { Joint } from '../job/joint.ts';
import { revisionOf } from '../job/revision.ts';
import type { Finding } from '../model/finding.ts';
import type { Mesh } from '../model/mesh.ts';
import { type ReportData, reportData } from '../report/report-data.ts';
import { meshSheet } from '../solids/sheet-mesh.ts';
import { meshTurned } from '../solids/turned-mesh.ts';
import { writeSvg } from '../write/svg.ts';
import { pictures } from './pictures.ts';

export interface LivePicture {
  readonly name: string;
  readonly caption: string;
  /** An SVG element; its ids start with the picture's name. */
  readonly svg: string;
}

export interface LiveView {
  readonly report: ReportData;
  readonly revision: string;
  readonly pictures: readonly LivePicture[];
}

/** Everything of a joint that is shown at once. No mesh is made. */
export function liveView(joint: Joint, findings: readonly Finding[]): LiveView {
  const revision = revisionOf(joint);
  return {
    revision,
    report: reportData(joint, findings, null, revision),
    pictures: pictures(joint).map(({ name, caption, drawing }) => ({
      name,
      caption,
      svg: writeSvg(drawing, { standalone: false }),
    })),
  };
}

/** One body to show in space, at its place in the adapter's coordinates. */
export interface LiveBody {
  readonly id: 'adapter' | 'wheel';
  readonly mesh: Mesh;
  /** How far it is lifted along z, mm. */
  readonly z: number;
}

/** Meshes of the new parts for a view in space; chord error in mm. */
export async function liveBodies(joint: Joint, chordError = 0.05): Promise<LiveBody[]> {
  const adapter: LiveBody = { id: 'adapter', mesh: await meshTurned(joint.adapter, { chordError }), z: 0 };
  if (!joint.wheel || joint.wheelZ === null) return [adapter];
  return [adapter, { id: 'wheel', mesh: meshSheet(joint.wheel, { chordError }), z: joint.wheelZ }];
}
