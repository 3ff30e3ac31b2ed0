/** The inspection record: blank to fill in at the bench, or with what was measured and the verdict on it. */
import type { Finding } from '../model/finding.ts';
import { inspectionHtml, inspectionJson } from '../report/inspection.ts';
import { judgementsOf, validate } from '../validate/all.ts';
import { type Product, utf8 } from './product.ts';

const verdictOf = (findings: readonly Finding[]) => findings.find(({ code }) => code === 'built-verdict');

export const inspectionFiles: Product = {
  kind: 'inspection',
  about: 'inspection record of the finished parts: limits, what was found, what to do',
  metal: false,
  applies: () => true,
  asked: (joint) => joint.job.built !== undefined,
  names: ({ base }) => [`${base}-inspection.html`, `${base}-inspection.json`],
  async make({ joint, findings, base, revision }) {
    const verdict = verdictOf(findings);
    const real = findings.filter(({ code }) => !code.startsWith('built-'));
    const record = {
      title: joint.job.title,
      revision,
      verdict: verdict ? `${verdict.title[0]?.toUpperCase()}${verdict.title.slice(1)}` : 'not measured',
      todo: verdict?.remedy ?? '',
      by: joint.job.built?.by ?? '',
      units: joint.job.units,
      judgements: judgementsOf(joint, joint.job.built ? validate(joint) : real, real),
    };
    return [
      { kind: 'inspection', name: `${base}-inspection.html`, bytes: utf8(inspectionHtml(record)) },
      {
        kind: 'inspection',
        name: `${base}-inspection.json`,
        bytes: utf8(`${JSON.stringify(inspectionJson(record), null, 2)}\n`),
      },
    ];
  },
};
