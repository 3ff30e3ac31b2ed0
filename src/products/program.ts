/** Drilling programs, one a side, each with a dry copy. Off until asked for by name: a machine does what it is told. */
import type { Joint } from '../job/joint.ts';
import { drillingPlan } from '../shop/drilling-plan.ts';
import type { WorkFace } from '../shop/hole-table.ts';
import { drillingProgram } from '../shop/program.ts';
import { writeRs274 } from '../write/rs274.ts';
import { type MadeFile, type Product, utf8, verdictWords } from './product.ts';

const kind = 'program';
const faces: readonly WorkFace[] = ['driving', 'driven'];
const worked = (joint: Joint): WorkFace[] => faces.filter((face) => drillingPlan(joint, face) !== null);

const nameOf = (base: string, face: WorkFace, dry: boolean): string => `${base}-${face}-side${dry ? '-dry' : ''}.ngc`;

export const programFiles: Product = {
  kind,
  about: 'drilling programs of the adapter, one a side with a dry copy: a starting point, ISO 6983 (RS-274), mm',
  metal: true,
  applies: (joint) => worked(joint).length > 0,
  asked: () => false,
  names: ({ joint, base }) => worked(joint).flatMap((face) => [nameOf(base, face, false), nameOf(base, face, true)]),
  async make({ joint, base, revision, verdict, forced }) {
    const warning = verdictWords(verdict, forced);
    return faces.flatMap((face): MadeFile[] => {
      const plan = drillingPlan(joint, face);
      if (!plan) return [];
      return [false, true].map((dry) => {
        const program = drillingProgram(joint, plan, { title: joint.job.title, revision, warning, dry });
        return { kind, name: nameOf(base, face, dry), bytes: utf8(writeRs274(program)) };
      });
    });
  },
};
