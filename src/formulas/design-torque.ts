/**
 * The torque that a joint is sized for. N.m, kg, mm.
 *
 * Valid for: a joint in the shaft between a gearbox and a final drive, or any shaft whose peak torque is known. Left out: the inertia
 * of engine and flywheel when a clutch is dropped or a wheel lands; a shock factor stands for them.
 */

/** Standard gravity, m/s2 (3rd CGPM, 1901). */
const gravity = 9.80665;

/** What turns the shaft. */
export interface EngineChain {
  /** Greatest torque of the engine or motor, N.m, > 0. */
  readonly torque: number;
  /** Ratios between engine and shaft, > 0: above 1 the shaft turns slower and carries more. */
  readonly ratios: readonly number[];
  /** Torque ratio of a torque converter at stall, at least 1; left out: none. */
  readonly converter?: number | undefined;
  /** Share of the torque that arrives, above 0 up to 1; left out: all of it, the safe side. */
  readonly efficiency?: number | undefined;
}

/** What holds the far end of the shaft. */
export interface TyreChain {
  /** Mass on the driven axle, kg, > 0. */
  readonly load: number;
  /** Rolling radius, mm, > 0. */
  readonly radius: number;
  /** Friction of tyre on ground. */
  readonly grip: number;
  /** Ratio from this shaft to the wheels, > 0. */
  readonly ratio: number;
}

/** One factor of a chain, as it is shown. */
export interface TorqueStep {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
}

/** One way of arriving at a torque, N.m, with its factors. */
export interface TorqueChain {
  readonly value: number;
  readonly steps: readonly TorqueStep[];
}

/** The torque to design with. */
export interface DesignTorque {
  /** Peak torque times shock, N.m. */
  readonly value: number;
  /** Peak torque before shock, N.m. */
  readonly peak: number;
  readonly shock: number;
  readonly governs: 'given' | 'engine' | 'tyres';
  /** The factors of what governs, in order. */
  readonly steps: readonly TorqueStep[];
  /** What engine and tyres come to, N.m, the lower of the two; null when neither is known. */
  readonly chain: number | null;
}

/** Torque that the engine can put on the shaft: engine torque x converter x ratios x efficiency. Statics. */
export function engineTorque({ torque, ratios, converter, efficiency }: EngineChain): TorqueChain {
  const steps: TorqueStep[] = [
    { what: 'engine torque', value: torque, unit: 'N.m' },
    ...(converter === undefined ? [] : [{ what: 'torque converter at stall', value: converter, unit: 'x' }]),
    ...ratios.map((ratio) => ({ what: 'ratio', value: ratio, unit: 'x' })),
    ...(efficiency === undefined ? [] : [{ what: 'efficiency', value: efficiency, unit: 'x' }]),
  ];
  return { value: steps.reduce((product, { value }) => product * value, 1), steps };
}

/**
 * Torque on the shaft at which the tyres slip: load x g x grip x rolling radius / ratio. Statics; the tractive limit of vehicle
 * dynamics (grip 0.7 to 1.0 on dry road). Losses of the final drive would add a few percent.
 */
export function tyreTorque({ load, radius, grip, ratio }: TyreChain): TorqueChain {
  const steps: TorqueStep[] = [
    { what: 'load on the driven axle', value: load, unit: 'kg' },
    { what: 'gravity', value: gravity, unit: 'm/s2' },
    { what: 'grip of the tyres', value: grip, unit: 'x' },
    { what: 'rolling radius', value: radius, unit: 'mm' },
    { what: 'ratio to the wheels', value: ratio, unit: '/' },
  ];
  return { value: (load * gravity * grip * radius) / 1000 / ratio, steps };
}

/**
 * The torque to design with, and what it rests on; null when nothing is known. A given peak torque stands before every chain. Of engine
 * and tyres the lower governs: the tyres slip before the engine can give more, or the engine gives out before they slip.
 * @param shock factor on the peak, at least 1
 */
export function designTorque(known: {
  readonly given?: number | undefined;
  readonly engine?: EngineChain | undefined;
  readonly tyre?: TyreChain | undefined;
  readonly shock?: number | undefined;
}): DesignTorque | null {
  const shock = known.shock ?? 1;
  const chains = [
    ...(known.engine ? [{ governs: 'engine' as const, ...engineTorque(known.engine) }] : []),
    ...(known.tyre ? [{ governs: 'tyres' as const, ...tyreTorque(known.tyre) }] : []),
  ].sort((a, b) => a.value - b.value);
  const lowest = chains[0];
  const chain = lowest?.value ?? null;
  const of = (peak: number, governs: DesignTorque['governs'], steps: readonly TorqueStep[]): DesignTorque => ({
    value: peak * shock,
    peak,
    shock,
    governs,
    steps,
    chain,
  });
  if (known.given !== undefined) {
    return of(known.given, 'given', [{ what: 'peak torque', value: known.given, unit: 'N.m' }]);
  }
  return lowest ? of(lowest.value, lowest.governs, lowest.steps) : null;
}
