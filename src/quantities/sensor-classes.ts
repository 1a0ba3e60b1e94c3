/** Tolerance classes of temperature sensors in published standards. Limits in K at t in °C. */

export interface SensorClass {
  readonly ofReading: number;
  readonly absolute: number;
  /** True: the larger of both terms; else their sum. */
  readonly larger: boolean;
  readonly range: readonly [number, number];
}

type Limits = readonly [absolute: number, ofReading: number, from: number, to: number];

/** IEC 60584-1:2013, Table 12 (as makers restate it); J, E and N and classes beyond K and T are from memory. */
const THERMOCOUPLES: ReadonlyMap<string, Limits> = new Map<string, Limits>([
  ['K 1', [1.5, 0.004, -40, 1000]],
  ['K 2', [2.5, 0.0075, -40, 1200]],
  ['N 1', [1.5, 0.004, -40, 1000]],
  ['N 2', [2.5, 0.0075, -40, 1200]],
  ['J 1', [1.5, 0.004, -40, 750]],
  ['J 2', [2.5, 0.0075, -40, 750]],
  ['E 1', [1.5, 0.004, -40, 800]],
  ['E 2', [2.5, 0.0075, -40, 900]],
  ['T 1', [0.5, 0.004, -40, 350]],
  ['T 2', [1, 0.0075, -40, 350]],
]);

/** IEC 60751:2022, tolerance classes of wire-wound resistors; ranges from memory. */
const RESISTORS: ReadonlyMap<string, Limits> = new Map<string, Limits>([
  ['AA', [0.1, 0.0017, -50, 250]],
  ['A', [0.15, 0.002, -100, 450]],
  ['B', [0.3, 0.005, -196, 600]],
  ['C', [0.6, 0.01, -196, 600]],
]);

/** Finds `type K class 1` or `Pt100 class A`; undefined for any other text. */
export function sensorClass(text: string): SensorClass | undefined {
  const couple = /^(?:thermocouple )?type ([A-Z]),? class ([12])$/i.exec(text);
  if (couple) return classOf(THERMOCOUPLES.get(`${couple[1]!.toUpperCase()} ${couple[2]}`), true);
  const resistor = /^Pt ?\d*,? class (AA|A|B|C)$/i.exec(text);
  return resistor ? classOf(RESISTORS.get(resistor[1]!.toUpperCase()), false) : undefined;
}

/** What can be written, for messages. */
export const SENSOR_CLASSES = 'type E, J, K, N or T class 1 or 2, Pt100 class AA, A, B or C';

function classOf(limits: Limits | undefined, larger: boolean): SensorClass | undefined {
  if (!limits) return undefined;
  const [absolute, ofReading, from, to] = limits;
  return { absolute, ofReading, larger, range: [from, to] };
}
