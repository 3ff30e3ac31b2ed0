import { balanceGrades } from './balance-grades.ts';
import { airDies, bendRadii, bendRules, kFactors } from './bend-practice.ts';
import { buttonScrews, inchButtonScrews } from './button-screws.ts';
import { clearanceHoles, inchClearanceHoles } from './clearance-holes.ts';
import { counterbores, inchCounterbores } from './counterbores.ts';
import { countersinks } from './countersinks.ts';
import { countersunkScrews, inchCountersunkScrews } from './countersunk-screws.ts';
import { cutFeeds, cutSpeeds, drillFeeds } from './cutting-speed-tables.ts';
import { dowelPins } from './dowel-pins.ts';
import { letterDrills, numberDrills } from './drills-gauge.ts';
import { fractionalDrills, metricDrills } from './drills-stepped.ts';
import { embeddingAmounts } from './embedding.ts';
import { flatnessTolerances } from './flatness.ts';
import { faceFriction, slipClasses, threadFriction } from './friction.ts';
import { generalAngles, generalEdges, generalLinear } from './general-tolerances.ts';
import { hexNuts, inchHexNuts } from './hex-nuts.ts';
import { hexScrews, inchHexScrews } from './hex-screws.ts';
import { holeDeviationsJ, shaftDeviations } from './iso286-deviations.ts';
import { holeDeltas, standardTolerances } from './iso286-grades.ts';
import { limitingPressures } from './limiting-pressure.ts';
import { machiningRules, setups } from './machining-practice.ts';
import { materialTable } from './material-table.ts';
import { metricCoarse, metricFine } from './metric-threads.ts';
import { printedFits, printedHoles, printShrinkage } from './print-practice.ts';
import { inchGrades, proofLoads, propertyClasses } from './property-classes.ts';
import { buttonLengths, flatLengths, hexLengths, inchLengthRanges, socketLengths } from './screw-lengths.ts';
import { applicationFactors } from './service-factors.ts';
import { jointAngleTable, shaftRules } from './shaft-practice.ts';
import { criticalConstants, speedShares } from './shaft-speed-rules.ts';
import { shaftTubes } from './shaft-tubes.ts';
import { cutTolerances, kerfs, sheetRules } from './sheet-cutting.ts';
import { smallestParts } from './sheet-parts.ts';
import { inchSocketCapScrews, socketCapScrews } from './socket-cap-screws.ts';
import { processRoughness, roughnessGrades } from './surface-roughness.ts';
import type { StandardTable } from './table.ts';
import { tapRunouts } from './tap-depth.ts';
import { threadEngagement } from './thread-engagement.ts';
import { pitchDiameterTolerances, pitchTolerances } from './thread-tolerances.ts';
import { tighteningFactors, torqueFactors } from './tightening.ts';
import { toothRules } from './tooth-rules.ts';
import { unifiedThreads } from './unified-threads.ts';
import { inchWashers, washers } from './washers.ts';

/** Every table of this folder, for documentation and for the test that builds every row. New tables are added here. */
export const allTables: readonly StandardTable[] = [
  standardTolerances,
  shaftDeviations,
  holeDeviationsJ,
  holeDeltas,
  metricCoarse,
  metricFine,
  unifiedThreads,
  pitchTolerances,
  pitchDiameterTolerances,
  socketCapScrews,
  inchSocketCapScrews,
  countersunkScrews,
  inchCountersunkScrews,
  buttonScrews,
  inchButtonScrews,
  hexScrews,
  inchHexScrews,
  socketLengths,
  flatLengths,
  buttonLengths,
  hexLengths,
  inchLengthRanges,
  clearanceHoles,
  inchClearanceHoles,
  counterbores,
  inchCounterbores,
  countersinks,
  dowelPins,
  washers,
  inchWashers,
  hexNuts,
  inchHexNuts,
  propertyClasses,
  inchGrades,
  proofLoads,
  threadEngagement,
  tapRunouts,
  materialTable,
  balanceGrades,
  sheetRules,
  cutTolerances,
  kerfs,
  kFactors,
  airDies,
  bendRadii,
  bendRules,
  smallestParts,
  roughnessGrades,
  processRoughness,
  toothRules,
  setups,
  machiningRules,
  printedHoles,
  printedFits,
  printShrinkage,
  metricDrills,
  fractionalDrills,
  numberDrills,
  letterDrills,
  generalLinear,
  generalEdges,
  generalAngles,
  flatnessTolerances,
  threadFriction,
  faceFriction,
  slipClasses,
  limitingPressures,
  embeddingAmounts,
  tighteningFactors,
  torqueFactors,
  applicationFactors,
  criticalConstants,
  speedShares,
  shaftTubes,
  shaftRules,
  jointAngleTable,
  cutSpeeds,
  drillFeeds,
  cutFeeds,
];
