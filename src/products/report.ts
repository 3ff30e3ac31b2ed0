/** The report: a page to print, the same as text, and as data. It is made last, because it lists the other files. */
import { type FilesReport, reportData } from '../report/report-data.ts';
import { reportHtml } from '../report/report-html.ts';
import { reportJson } from '../report/report-json.ts';
import { reportText } from '../report/report-text.ts';
import { writeSvg } from '../write/svg.ts';
import { type MadeFile, type Making, utf8 } from './product.ts';
import { sheetOrders } from './sheet-order.ts';

export const reportKind = 'report';

/** Names of the report's files. */
export function reportNames(base: string): string[] {
  return [`${base}-report.html`, `${base}-report.txt`, `${base}-report.json`];
}

/** The report's three files. `jobName` is the job file's name as it was given. */
export async function reportFiles(making: Making, jobName: string, files: FilesReport): Promise<MadeFile[]> {
  const { joint, findings, base, pictures, revision } = making;
  const data = reportData(joint, findings, files, revision, await sheetOrders(making));
  const shown = pictures().map(({ caption, drawing, column = false }) => ({
    caption,
    column,
    svg: writeSvg(drawing, { standalone: false }),
  }));
  const [html, text, json] = reportNames(base) as [string, string, string];
  return [
    { kind: reportKind, name: html, bytes: utf8(reportHtml(data, shown)) },
    { kind: reportKind, name: text, bytes: utf8(reportText(data)) },
    { kind: reportKind, name: json, bytes: utf8(`${JSON.stringify(reportJson(data, jobName), null, 2)}\n`) },
  ];
}
