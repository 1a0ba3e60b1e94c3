import { describe, expect, it } from 'vitest';
import type { Place } from '../../../src/problem.ts';
import type { Quantity } from '../../../src/quantities/quantity.ts';
import { readRegister } from '../../../src/register/read.ts';
import type { DataFiles, Run } from '../../../src/register/register.ts';
import { DEVICE, FAST, reading, SETUP } from '../base.ts';
import { SERIES } from '../soak-series.ts';

const ALL_THERE: DataFiles = { kind: () => 'file' };

/** A run for eyes: quantities as `22.4 °C {source: share}`, places as `file:line:column`, what the context repeats left out. */
function plain(run: Run): unknown {
  const { placeOf: _placeOf, facts, factPlaces: _factPlaces, context, ...rest } = run;
  const { conditions: _conditions, setting: _setting, phases: _phases, ...said } = rest;
  return JSON.parse(JSON.stringify({ ...said, context, facts: Object.fromEntries(facts) }, short));
}

function short(_: string, value: unknown): unknown {
  const known = value as (Partial<Place> & Partial<Quantity>) | null;
  if (typeof known !== 'object' || known === null) return value === Number.POSITIVE_INFINITY ? 'Infinity' : value;
  if ('column' in known && 'line' in known) return `${known.file}:${known.line}:${known.column}`;
  if (!('parts' in known)) return value;
  const shares = known.parts?.map(({ source, share }) => `${source.id}: ${share.toPrecision(6)}`).join(', ') ?? 'unknown';
  return `${known.value} ${known.unit} {${shares}}`;
}

describe('register/resolved/resolve-run', () => {
  it('resolves a series without an error', () => {
    const { register, problems } = readRegister(SERIES, ALL_THERE);
    expect(problems.map(({ rule }) => rule)).toEqual(['no-instrument']);
    expect([...register.runs.keys()]).toEqual(['larch-fan', 'larch-fast', 'larch-rated', 'larch-slow']);
    expect([...register.comparisons.get('larch-steps')!.runs.keys()]).toEqual(['slow', 'rated', 'fast', 'fan']);
  });

  it('lays what a run states over its setup', () => {
    expect(plain(readRegister(SERIES, ALL_THERE).register.runs.get('larch-fast')!)).toMatchInlineSnapshot(`
      {
        "body": "",
        "bodyLine": 50,
        "channels": [
          {
            "column": "SoC temperature",
            "instrument": "on-die",
            "name": "soc",
            "place": "content/runs/larch-fast.md:18:3",
            "quantity": "temperature",
          },
          {
            "at": "board input",
            "column": "amps",
            "instrument": "inline-meter",
            "name": "board",
            "place": "content/setups/open-bench.md:17:3",
            "quantity": "current",
            "unit": "A",
          },
          {
            "column": "room",
            "instrument": "probe",
            "name": "room",
            "place": "content/runs/larch-fast.md:21:3",
            "quantity": "ambient",
            "unit": "°C",
          },
          {
            "bits": {
              "0": "low voltage",
              "2": "hot",
            },
            "column": "flags",
            "name": "flags",
            "place": "content/runs/larch-fast.md:26:3",
            "quantity": "throttle_flag",
          },
        ],
        "context": {
          "ambient": "23.1 °C {run:larch-fast/ambient: 0.300000}",
          "device": {
            "id": "larch-2",
            "power": "adapter",
            "ratedClock": "2400000000 Hz {}",
            "throttleAt": {
              "soc": "85 °C {}",
              "ssd": "70 °C {}",
            },
          },
          "instruments": {
            "inline-meter": {
              "accuracy": {
                "current": {
                  "absolute": 0,
                  "coverage": "rectangular",
                  "digits": 2,
                  "ofReading": 0.005,
                  "text": "0.5 % + 2 digits",
                },
                "voltage": {
                  "absolute": 0.01,
                  "coverage": "rectangular",
                  "digits": 0,
                  "ofReading": 0.005,
                  "text": "0.5 % + 10 mV",
                  "unit": "V",
                },
              },
              "connected": "low voltage side",
              "id": "inline-meter",
              "partOfSpecimen": false,
              "resolution": {
                "current": "0.01 A {}",
                "voltage": "0.01 V {}",
              },
              "title": "Inline meter",
            },
            "on-die": {
              "accuracy": {},
              "id": "on-die",
              "partOfSpecimen": true,
              "resolution": {},
              "title": "Die sensor",
            },
            "probe": {
              "accuracy": {
                "ambient": {
                  "absolute": 1.5,
                  "coverage": "rectangular",
                  "digits": 0,
                  "ofReading": 0,
                  "text": "± 1.5 °C",
                  "unit": "K",
                },
              },
              "id": "probe",
              "partOfSpecimen": false,
              "resolution": {
                "ambient": "0.1 K {}",
              },
              "title": "Thermocouple with reader",
            },
          },
          "phases": [
            {
              "from": 0,
              "name": "idle",
              "place": "content/runs/larch-fast.md:33:3",
              "to": 300,
            },
            {
              "from": 300,
              "name": "load",
              "place": "content/runs/larch-fast.md:34:3",
              "to": 3900,
            },
            {
              "from": 3900,
              "name": "cool-down",
              "place": "content/runs/larch-fast.md:35:3",
              "to": "Infinity",
            },
          ],
          "run": "larch-fast",
          "setting": {
            "clock": "2600000000 Hz {}",
            "voltageOffset": "0.04 V {}",
          },
          "specimen": "no-1",
          "steady": "iec-60034-1",
          "supply": {
            "at": "board input",
            "voltage": "5.1 V {run:larch-fast/supply: 0.0577350}",
          },
        },
        "date": "2026-03-14",
        "device": "larch-2",
        "facts": {
          "ambient": "23.1 °C {run:larch-fast/ambient: 0.300000}",
          "device.rated_clock": "2400000000 Hz {}",
          "device.supply": "5.1 V {}",
          "device.throttle_at": "85 °C {}",
          "device.throttle_at.soc": "85 °C {}",
          "device.throttle_at.ssd": "70 °C {}",
          "setting.clock": "2600000000 Hz {}",
          "setting.threads": "4 1 {}",
          "setting.voltage_offset": "0.04 V {}",
          "supply": "5.1 V {run:larch-fast/supply: 0.0577350}",
        },
        "file": "content/runs/larch-fast.md",
        "id": "larch-fast",
        "instruments": [
          "inline-meter",
          "on-die",
          "probe",
        ],
        "logs": [
          {
            "declaration": {
              "channels": [
                {
                  "column": "SoC temperature",
                  "instrument": "on-die",
                  "name": "soc",
                  "place": "content/runs/larch-fast.md:18:3",
                  "quantity": "temperature",
                },
                {
                  "at": "board input",
                  "column": "amps",
                  "instrument": "inline-meter",
                  "name": "board",
                  "place": "content/setups/open-bench.md:17:3",
                  "quantity": "current",
                  "unit": "A",
                },
                {
                  "column": "room",
                  "instrument": "probe",
                  "name": "room",
                  "place": "content/runs/larch-fast.md:21:3",
                  "quantity": "ambient",
                  "unit": "°C",
                },
                {
                  "bits": {
                    "0": "low voltage",
                    "2": "hot",
                  },
                  "column": "flags",
                  "name": "flags",
                  "place": "content/runs/larch-fast.md:26:3",
                  "quantity": "throttle_flag",
                },
              ],
              "file": "larch-2/fast.csv",
              "phaseStarts": [
                {
                  "from": 0,
                  "name": "idle",
                  "place": "content/runs/larch-fast.md:33:3",
                },
                {
                  "from": 300,
                  "name": "load",
                  "place": "content/runs/larch-fast.md:34:3",
                },
                {
                  "from": 3900,
                  "name": "cool-down",
                  "place": "content/runs/larch-fast.md:35:3",
                },
              ],
              "place": "content/runs/larch-fast.md:38:9",
              "repairs": [
                {
                  "fromLine": 412,
                  "kind": "drop",
                  "place": "content/runs/larch-fast.md:42:5",
                  "reason": "the line was cut off",
                  "toLine": 412,
                },
                {
                  "bySeconds": 3600,
                  "fromLine": 500,
                  "kind": "shift_time",
                  "place": "content/runs/larch-fast.md:44:5",
                  "reason": "the logger's clock was set during the run",
                  "toLine": 900,
                },
              ],
              "time": {
                "column": "when",
                "format": "iso8601",
                "zone": "+01:00",
              },
            },
            "name": "",
            "sharing": {},
          },
        ],
        "scores": "larch-2/fast-scores.csv",
        "setup": "open-bench",
        "specimen": "no-1",
        "steady": "iec-60034-1",
        "surface": "larch-2/fast-surface.csv",
        "title": "Fast setting, hour soak",
      }
    `);
  });

  it('takes from the setup what a run leaves out', () => {
    const { runs } = readRegister(SERIES, ALL_THERE).register;
    const [rated, fan] = [runs.get('larch-rated')!, runs.get('larch-fan')!];
    expect(rated.conditions.map(({ name, text }) => `${name}: ${text}`)).toEqual([
      'ambient: 22.4 ± 0.5 °C',
      'supply: 5.1 ± 0.1 V at board input',
      'cooling: heat sink, no fan',
      'firmware: 1.10',
      'workload: all cores, integer mix 3.1',
    ]);
    expect(rated.logs[0]!.declaration.time).toEqual({ column: 'when', format: 'iso8601', zone: 'Europe/Vienna' });
    expect(rated.channels.map(({ name }) => name)).toEqual(['soc', 'board', 'ssd']);
    expect(fan.specimen).toBe('no-2');
    expect(fan.phases).toBe('auto');
    expect(fan.conditions.find(({ name }) => name === 'cooling')?.text).toBe('heat sink and fan');
  });

  it('lays an uncertainty that a setup states to each run by itself', () => {
    const { runs } = readRegister(SERIES, ALL_THERE).register;
    const source = (id: string) => runs.get(id)!.facts.get('ambient')!.parts![0]!;
    expect(source('larch-rated').source.id).toBe('run:larch-rated/ambient');
    expect(source('larch-slow').source.id).toBe('run:larch-slow/ambient');
    // JCGM 100:2008, 4.3.7: limits of ± a are a rectangular distribution with u = a/√3.
    expect(source('larch-rated').share / (0.5 / Math.sqrt(3))).toBeCloseTo(1, 12);
  });

  it('leaves the uncertainty of a measured condition open where none is stated, and takes settings and ratings as exact', () => {
    const { register } = reading([SETUP, '22.4 ± 0.5 °C', '22.4 °C']);
    const { facts } = register.runs.get('larch-fast')!;
    expect(facts.get('ambient')!.parts).toBeNull();
    expect(facts.get('setting.clock')!.parts).toEqual([]);
    expect(facts.get('device.rated_clock')!.parts).toEqual([]);
  });

  it('gives a limit without a channel to the primary temperature', () => {
    const { register } = reading([DEVICE, '\n  soc:', '']);
    const run = register.runs.get('larch-fast')!;
    expect(Object.keys(register.devices.get('larch-2')!.throttleAt)).toEqual(['*']);
    expect(run.context.device.throttleAt).toEqual({ soc: { value: 85, unit: '°C', parts: [] } });
    expect(run.facts.get('device.throttle_at')).toBe(run.facts.get('device.throttle_at.soc'));
  });

  it('knows the file and line in which each fact is written', () => {
    const run = reading().register.runs.get('larch-fast')!;
    expect(Object.fromEntries([...run.factPlaces].map(([address, { file, line }]) => [address, `${file}:${line}`]))).toEqual({
      'setting.clock': `${FAST}:6`,
      'setting.voltage_offset': `${FAST}:7`,
      ambient: `${SETUP}:6`,
      'device.rated_clock': `${DEVICE}:5`,
      'device.supply': `${DEVICE}:8`,
      'device.throttle_at': `${DEVICE}:7`,
      'device.throttle_at.soc': `${DEVICE}:7`,
    });
    expect([...run.factPlaces.keys()]).toEqual([...run.facts.keys()]);
  });

  it('finds places in the run, then in its setup, then the nearest key above', () => {
    const run = reading().register.runs.get('larch-fast')!;
    const at = (path: string) => `${run.placeOf(path).file}:${run.placeOf(path).line}:${run.placeOf(path).column}`;
    expect(at('setting.clock')).toBe(`${FAST}:6:3`);
    expect(at('channels.board.unit')).toBe(`${SETUP}:17:5`);
    expect(at('channels.board.missing')).toBe(`${SETUP}:14:3`);
    expect(at('instruments.1')).toBe(`${SETUP}:8:29`);
    expect(at('setting.governor')).toBe(`${FAST}:5:1`);
    expect(at('nothing.of.that')).toBe(`${FAST}:1:1`);
    expect(at('')).toBe(`${FAST}:1:1`);
  });
});
