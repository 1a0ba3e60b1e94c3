/** Where the heat comes from: switching, leakage, and the rest of the board. */

export interface PowerModel {
  /** Switching power at full load: this × clock × voltage², W/(Hz·V²). */
  readonly switching: number;
  /** Core voltage at standstill and its rise with the clock: V and V/Hz. */
  readonly baseVoltage: number;
  readonly voltagePerClock: number;
  /** Leakage of the die at `leakageAt` °C and 1 V, W; it grows by e every `leakageScale` K, and with the square of the voltage. */
  readonly leakage: number;
  readonly leakageAt: number;
  readonly leakageScale: number;
  /** Memory, storage, regulators: W while idle and while loaded. */
  readonly boardIdle: number;
  readonly boardLoad: number;
  /** Share of the full switching power that is left at idle, and the clock at idle, Hz. */
  readonly idleActivity: number;
  readonly idleClock: number;
}

/** What the die does at an instant. */
export interface Operation {
  /** Hz. */
  readonly clock: number;
  /** Above or below the voltage that belongs to the clock, V. */
  readonly voltageOffset: number;
  /** Share of the full switching power, 1 at full load. */
  readonly activity: number;
}

/** Power of the die at a die temperature in °C, W: A·C·V²·f and leakage (Weste and Harris, "CMOS VLSI Design", chapter on power). */
export function diePower(model: PowerModel, operation: Operation, temperature: number): number {
  const voltage = coreVoltage(model, operation);
  const switching = operation.activity * model.switching * operation.clock * voltage ** 2;
  return switching + leakage(model, voltage, temperature);
}

/** Its slope with the die temperature, W/K: all of it is leakage. */
export function diePowerSlope(model: PowerModel, operation: Operation, temperature: number): number {
  return leakage(model, coreVoltage(model, operation), temperature) / model.leakageScale;
}

function coreVoltage(model: PowerModel, operation: Operation): number {
  return model.baseVoltage + model.voltagePerClock * operation.clock + operation.voltageOffset;
}

function leakage(model: PowerModel, voltage: number, temperature: number): number {
  return model.leakage * voltage ** 2 * Math.exp((temperature - model.leakageAt) / model.leakageScale);
}
