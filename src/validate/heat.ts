/** Registers cold and hot: unlike materials expand unlike, so a register opens or binds. */
import { eccentricityOf } from '../formulas/fit.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { type FlangeSide, flangeMaterial, overTemperatures } from '../rotor/plays.ts';
import { capital } from '../units/sentence.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { lightTap, loose, madeToMate } from './registers.ts';
import { mm, sourced } from './words.ts';

/** Materials whose expansion differs by less than this are alike for a register, 1/K: 0.01 mm on 100 mm over 50 K. */
const alike = 2e-6;

/** Another least clearance at 20 degrees C (mm; negative: interference), as the job asks for it; empty where it is out of reach. */
function askFor(joint: Joint, side: FlangeSide, least: number, most: number): string {
  if (least < -lightTap || least > most) return '';
  const size = `${least < 0 ? 'interference' : 'clearance'}: ${Math.abs(least).toFixed(3)} mm`;
  const tolerance = madeToMate(joint, side)?.tolerance;
  return `choose another fit at 20 degC (adapter.${side}.fit: { ${size}${tolerance === undefined ? '' : `, tolerance: ${tolerance.toFixed(3)} mm`} })`;
}

function judgeSide(joint: Joint, side: FlangeSide): Finding[] {
  const own = joint.adapterSpec.registers[side];
  if (!own || !joint[side].register) return [];
  const flange = flangeMaterial(joint, side);
  const pair = `${joint.adapterMaterial.name} on ${flange.name}${joint[side].material === null ? ' (taken: the flange material is not given)' : ''}`;
  const common = { feature: `${side}-register` };
  const memory = joint.adapterMaterial.memory || flange.memory;
  const source = sourced('thermal expansion of both materials; limits as for the register at 20 degrees', memory);
  const temperature = joint.job.duty?.temperature;
  if (!temperature) {
    const differ = Math.abs(joint.adapterMaterial.thermalExpansion - flange.thermalExpansion) > alike;
    if (!differ) return [];
    return [
      notAssessed({
        ...common,
        code: 'register-cold-and-hot',
        title: `${side} register cold and hot`,
        why: `${pair}: they expand differently, so the fit changes with heat.`,
        missing: 'Give duty.temperature: { cold: -20 degC, hot: 80 degC }, the coldest and hottest the joint gets.',
        source,
      }),
    ];
  }
  const { cold, hot } = temperature;
  const play = overTemperatures(joint, side, cold, hot);
  if (!play) return [];
  const span = (at: { least: number; greatest: number }) => `${mm(at.least, 3)} to ${mm(at.greatest, 3)}`;
  const why = `${pair}. Clearance at ${cold} degC ${span(play.cold)}, at 20 degC ${span(play.at20)}, at ${hot} degC ${span(play.hot)}.`;
  const statement = { ...common, unit: 'mm', why, source };
  const alikeMetals =
    flange.id === joint.adapterMaterial.id
      ? ''
      : `make the adapter of the flange's metal (adapter.material: ${flange.id}), so that both grow alike`;
  const cureBy = (fit: string): string => {
    const ways = [alikeMetals, fit].filter((way) => way !== '');
    return ways.length === 0
      ? `No fit within reach does it: centre the joint by dowels (adapter.${side}.dowels: auto), or keep it out of the heat and the cold.`
      : `${capital(ways.join(', or '))}.`;
  };
  const looser = Math.ceil((play.at20.least - play.worst.least) * 1000 - 1e-6) / 1000;
  const closer = Math.floor((play.at20.least - (play.worst.greatest - loose)) * 1000 + 1e-6) / 1000;
  return [
    judged(
      {
        ...statement,
        code: 'register-binds',
        title: `least clearance of the ${side} register, cold or hot`,
        cure: cureBy(askFor(joint, side, looser, loose)),
      },
      play.worst.least,
      { limit: 0, sense: 'at least', hard: -0.02 },
    ),
    judged(
      {
        ...statement,
        why: `${why} The part can sit ${mm(eccentricityOf(play.worst.greatest), 3)} off centre.`,
        code: 'register-opens',
        title: `greatest clearance of the ${side} register, cold or hot`,
        cure: cureBy(askFor(joint, side, closer, loose)),
      },
      play.worst.greatest,
      { limit: loose, sense: 'at most', hard: 3 * loose },
    ),
  ];
}

export const heat: Check = {
  id: 'heat',
  title: 'Registers cold and hot',
  source: 'thermal expansion; ISO 286-1',
  run: (joint) => (['driving', 'driven'] as const).flatMap((side) => judgeSide(joint, side)),
};
