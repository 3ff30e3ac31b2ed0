/** Everything the measuring room offers to the rest of the house. */

export type { Answer, Asked } from './answer.ts';
export { answerBalance } from './answer-balance.ts';
export { answerCircle, type CircleTyped } from './answer-circle.ts';
export { answerPattern, type PatternTyped } from './answer-pattern.ts';
export { answerRegister, type RegisterTyped } from './answer-register.ts';
export { answerRing, type RingTyped } from './answer-ring.ts';
export { answerRunout, type RunoutTyped } from './answer-runout.ts';
export { answerSensor, type SensorTyped } from './answer-sensor.ts';
export { answerThread, type ThreadTyped } from './answer-thread.ts';
export { answerVibration } from './answer-vibration.ts';
export type { BalanceTyped } from './balance-typed.ts';
export {
  bestChord,
  type ChordChoice,
  type ChordOver,
  chordAdvice,
  chordChoices,
  chordFactor,
  chordOvers,
  jawError,
  jawNote,
  type Span,
  spanWords,
} from './chord.ts';
export { type ChordNetwork, distancesNeeded, type HoleDistance, patternFromDistances } from './chord-network.ts';
export { type ChordEstimate, type ChordReading, type ChordSet, circleFromChords } from './chord-set.ts';
export { type CircleFit, fitCircle, type Point } from './circle-fit.ts';
export { type BlockParts, flangeBlock } from './flange-block.ts';
export { equalAngles, fitHarmonics } from './harmonics.ts';
export { fromReadings, givenOnce, type Instrument, instrumentDoubt, type Measured, oddReading } from './measured.ts';
export { type Pattern, recognisePattern } from './pattern.ts';
export { pointsFromCsv } from './points-from-csv.ts';
export { type DrawnHoles, holesFromDxf } from './points-from-dxf.ts';
export { checkDiagonal, rectangleCircle } from './rectangle.ts';
export { type RegisterSize, sizeRegister } from './register.ts';
export { type FaceRunout, faceRunout, type RimRunout, rimRunout } from './runout.ts';
export { identifyThread, type ThreadCandidate, type ThreadTwin, threadTwins, twinOf } from './thread-id.ts';
export { instruments } from './typed.ts';
export type { VibrationTyped } from './vibration-typed.ts';
