/** A small record copy, for tests. */
import { copyId } from '../../../src/compute/record-copies/copy.ts';
import type { RecordCopy } from '../../../src/register/sealed/record-copies.ts';

type Run = RecordCopy['record']['runs'][number];
type Figure = Run['figures'][string];

const OFFSET = 'instrument:probe/temperature/offset';

/** A temperature with one source. */
export function temperature(value: number, u = 0.5): Figure {
  return {
    value,
    unit: '°C',
    u,
    dof: null,
    interval: [value - 1.96 * u, value + 1.96 * u],
    parts: { [OFFSET]: u },
    definition: 'The largest reading of the load phase.',
    source: 'common practice, no source',
    from: { columns: ['soc'], rows: [302, 3902] },
    of: { channel: 'soc', phase: 'load' },
  };
}

/** A run of one channel. */
export function recordedRun(alias: string, peak: number, more: Partial<Run> = {}): Run {
  const run = `larch-${alias}`;
  return {
    alias,
    run,
    title: `The ${alias} setting`,
    date: alias === 'fast' ? '2026-03-14' : '2026-03-12',
    device: { id: 'larch-2', title: 'Larch 2', maker: 'Invented Works', invented: true },
    specimen: 'no-1',
    setting: [{ label: 'clock', text: '2.6 GHz' }],
    conditions: [{ label: 'ambient', text: '22.4 ± 0.5 °C' }],
    ambient: { sources: {}, figures: {} },
    channels: [{ name: 'soc', quantity: 'temperature', at: '', instrument: 'probe' }],
    instruments: [{ id: 'probe', title: 'Probe', accuracy: 'temperature ± 1 K' }],
    log: { file: `data/larch-2/${alias}-soak.csv`, sha256: 'a'.repeat(64), rows: 3901, span_s: 3900 },
    tables: [{ file: `data/larch-2/${alias}-scores.csv`, sha256: 'b'.repeat(64) }],
    sources: { [OFFSET]: { title: 'offset of the probe', dof: null } },
    figures: { peak_temperature: temperature(peak), time_to_throttle: { absent: 'not-throttled', why: 'It did not throttle.' } },
    series: {
      format: 1,
      run,
      load: 300,
      span: 3900,
      phases: [{ name: 'load', from: 300, to: 3900, inferred: false }],
      channels: [
        { name: 'soc', quantity: 'temperature', unit: '°C', decimals: 1, t: [0, 300, 3900], y: [30.5, 31, peak], breaks: [2] },
      ],
    },
    cautions: [],
    ...more,
  };
}

/** What is recorded: the fast setting beside the rated one. */
export function recorded(more: Partial<RecordCopy['record']> = {}): RecordCopy['record'] {
  return {
    id: 'larch-steps',
    title: 'Two settings',
    reference: 'rated',
    runs: [recordedRun('rated', 61.5), recordedRun('fast', 71.3)],
    sources: { [OFFSET]: { title: 'offset of the probe', dof: null } },
    figures: { 'rise_delta.fast': { ...temperature(9.75), unit: 'K' } },
    methods: { peak_temperature: 'c'.repeat(64), rise_delta: 'd'.repeat(64) },
    ...more,
  };
}

/** It as a copy. */
export function copyOf(record: RecordCopy['record'] = recorded(), date = '2026-03-20'): RecordCopy {
  const content = { format: 1, date, record } as const;
  return { ...content, id: copyId(content) };
}
