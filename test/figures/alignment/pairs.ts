/** A device's log and a meter's of one soak, on clocks that lie apart, as their files are written. Invented. */
import type { Log, LogDeclaration } from '../../../src/intake/log.ts';
import { read } from '../../../src/intake/read.ts';
import { random } from '../../simulator/random.ts';

const PLACE = { file: 'content/runs/invented.md', line: 1, column: 1 };

/** Seconds to add to the meter's clock. */
export const OFF = 37;

export interface Pair {
  readonly device: { readonly bytes: Uint8Array; readonly declaration: LogDeclaration };
  readonly meter: { readonly bytes: Uint8Array; readonly declaration: LogDeclaration };
  /** When the load begins and ends, s since the device's first row. */
  readonly load: readonly [from: number, to: number];
}

/** Mean power of idle and load, W. */
export const POWER = { idle: 3, load: 9 };

/** The device writes epoch milliseconds, the meter civil time and decimal commas; instants and readings scatter. */
export function pairOf(seed: number, meterStep = 1): Pair {
  const { uniform, normal } = random(seed);
  const start = 1_773_480_000 + Math.floor(uniform() * 1e6);
  const [from, to] = [300 + 3 * uniform(), 2100 + 3 * uniform()];
  const loaded = (t: number) => t >= from && t < to;
  const first = uniform();
  const rows: string[] = [];
  let temperature = 40;
  for (let t = first; t < 2700; t += 1) {
    temperature += ((loaded(t) ? 75 : 40) - temperature) / 300;
    const use = (loaded(t) ? 98 : 3) + normal();
    rows.push(`${Math.round((start + t + 0.01 * normal()) * 1000)},${use.toFixed(1)},${(temperature + 0.1 * normal()).toFixed(1)}`);
  }
  const metered: string[] = [];
  for (let t = 60 + meterStep * uniform(); t < 2500; t += meterStep) {
    const power = (loaded(t) ? POWER.load : POWER.idle) + 0.05 * normal();
    const shown = new Date((start + t - OFF) * 1000).toISOString().slice(0, 19).replace('T', ' ');
    metered.push(`${shown};${power.toFixed(2).replace('.', ',')}`);
  }
  const encode = (lines: readonly string[]) => new TextEncoder().encode(`${lines.join('\n')}\n`);
  const common = { repairs: [], place: PLACE };
  return {
    device: {
      bytes: encode(['epoch_ms,cpu [%],soc [°C]', ...rows]),
      declaration: {
        ...common,
        file: 'invented/device.csv',
        time: { format: 'epoch', unit: 'ms' },
        channels: [
          { name: 'load', quantity: 'utilisation', column: 'cpu [%]', place: PLACE },
          { name: 'soc', quantity: 'temperature', column: 'soc [°C]', place: PLACE },
        ],
      },
    },
    meter: {
      bytes: encode(['Zeit;Leistung [W]', ...metered]),
      declaration: {
        ...common,
        file: 'invented/meter.csv',
        time: { zone: 'UTC' },
        channels: [{ name: 'input', quantity: 'power', column: 'Leistung [W]', at: 'board input', place: PLACE }],
      },
    },
    load: [from - first, to - first],
  };
}

/** Both logs of a pair as they are read. */
export function logsOf({ device, meter }: Pair): readonly [device: Log, meter: Log] {
  const [a, b] = [device, meter].map(({ bytes, declaration }) => read(bytes, declaration, declaration.file).log);
  return [a!, b!];
}
