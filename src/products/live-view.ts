/** A judged joint as the page shows it: report and pictures as plain data that pass from a worker to the screen. */
import type { Joint } from '../job/joint.ts';
import { revisionOf } from '../job/revision.ts';
import type { Finding } from '../model/finding.ts';
import { type ReportData, reportData } from '../report/report-data.ts';
import { writeSvg } from '../write/svg.ts';
import { picturesInSteps } from './pictures.ts';

export interface LivePicture {
  readonly name: string;
  readonly caption: string;
  /** An SVG element; its ids start with the picture's name. */
  readonly svg: string;
  /** A narrow sheet that is filled from the top down. */
  readonly column: boolean;
}

export interface LiveView {
  readonly report: ReportData;
  readonly revision: string;
  readonly pictures: readonly LivePicture[];
}

/** Everything of a joint that is shown, at once. No mesh is made. */
export const liveView = (joint: Joint, findings: readonly Finding[]): LiveView => ({
  ...liveReport(joint, findings),
  pictures: [...livePictures(joint)].filter((picture): picture is LivePicture => picture !== null),
});

/** What is said of a joint. */
export function liveReport(joint: Joint, findings: readonly Finding[]): Omit<LiveView, 'pictures'> {
  const revision = revisionOf(joint);
  return { revision, report: reportData(joint, findings, null, revision) };
}

/** The pictures one by one, each drawn when it is asked for; null is a pause, the first of them after the pictures of the parts. */
export function* livePictures(joint: Joint): Generator<LivePicture | null, void, void> {
  for (const picture of picturesInSteps(joint)) {
    yield picture && {
      name: picture.name,
      caption: picture.caption,
      svg: writeSvg(picture.drawing, { standalone: false }),
      column: picture.column === true,
    };
  }
}
