/** The index of an invented site of many runs: seeded, with titles, settings and figures that differ as those of a real site would. */
import { ranksOf } from '../../src/compute/discovery/main-figures.ts';
import { OUTCOMES } from '../../src/compute/discovery/outcome.ts';
import type { RunsModel, RunsRow } from '../../src/compute/models/discovery.ts';
import { compareText } from '../../src/problem.ts';
import { printQuantity } from '../../src/quantities/print.ts';

const PLANTS = ['Alder', 'Birch', 'Cedar', 'Elder', 'Fir', 'Hazel', 'Juniper', 'Larch', 'Maple', 'Rowan', 'Spruce', 'Willow'];
const MAKERS = ['Tannery Row Computing', 'Millrace Boards', 'Three Weirs', 'Old Quay Systems'];
const KINDS = [
  'hour soak',
  'with the lid off',
  'after the update',
  'in a closed cupboard',
  'standing upright',
  'on battery',
  'with a fan',
];
const PACES = ['Slow', 'Rated', 'Brisk', 'Quick', 'Fast', 'Highest'];
const COLUMNS = [
  { name: 'peak_temperature', label: 'peak temperature', unit: '°C', step: 0.5, from: 40, to: 95 },
  { name: 'steady_temperature', label: 'steady temperature', unit: '°C', step: 0.5, from: 38, to: 93 },
  { name: 'mean_clock', label: 'mean clock', unit: 'Hz', step: 1e6, from: 8e8, to: 3e9 },
  { name: 'load_power', label: 'load power', unit: 'W', step: 0.001, from: 2, to: 24 },
] as const;

/** The model of an index with that many runs. */
export function manyRuns(count: number): RunsModel {
  const chance = seeded(20_260_314);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(chance() * list.length)]!;
  const devices = PLANTS.flatMap((plant, at) =>
    [1, 2, 3].map((number) => ({ plant, number, maker: MAKERS[at % MAKERS.length]! })),
  ).map(({ plant, number, maker }) => ({
    id: `${plant.toLowerCase()}-${number}`,
    title: `${plant} ${number}`,
    maker,
    makerId: maker.toLowerCase().replaceAll(' ', '-'),
  }));
  const clocks = Array.from({ length: 24 }, (_unused, at) => `${(0.8 + at / 10).toFixed(1)} GHz`);
  const chosen = Array.from({ length: count }, () => Math.floor(chance() * clocks.length));
  const values = COLUMNS.map(({ from, to, step }) =>
    chosen.map(() => (chance() < 0.06 ? null : Math.round((from + chance() * (to - from)) / step) * step)),
  );
  const rows = chosen.map((clock, at): RunsRow => {
    const device = pick(devices);
    const note = Math.floor(at / 3);
    return {
      id: `${device.id}-${pick(PACES).toLowerCase()}-${at}`,
      title: `${pick(PACES)} setting, ${pick(KINDS)}, take ${1 + (at % 7)}`,
      device: device.id,
      specimen: `no-${1 + Math.floor(chance() * 3)}`,
      date: new Date(Date.UTC(2026, 0, 1) - at * 30_000_000).toISOString().slice(0, 10),
      setting: `clock\u00a0${clocks[clock]!.replace(' ', '\u00a0')}, voltage\u00a0offset\u00a0${10 * Math.floor(chance() * 9)}\u00a0mV`,
      figures: COLUMNS.map(({ unit, step }, column) => {
        const value = values[column]![at]!;
        return value === null
          ? { shown: '', detail: pick(['not steady', 'too short', 'no channel', 'load changed']) }
          : { shown: printQuantity({ value, unit, parts: null, step }).text, detail: '' };
      }),
      outcomes: OUTCOMES.filter(() => chance() < 0.3).map(({ title }) => title.replaceAll(' ', '\u00a0')),
      notes: [{ title: `What the ${device.title} gives at ${clocks[clock]} (${note})`, path: `notes/what-it-gives-${note}/` }],
      status: 'published',
    };
  });
  return {
    kind: 'runs',
    invented: true,
    columns: COLUMNS.map(({ name, label }, at) => ({ name, label, ranks: ranksOf(values[at]!) })),
    rows,
    devices: devices.map((device) => ({ ...device, runs: rows.filter((row) => row.device === device.id).length })),
    comparisons: [],
    choices: {
      devices: devices.map(({ id, title }) => ({ id, title })),
      specimens: ['no-1', 'no-2', 'no-3'].map((id) => ({ id, title: id })),
      makers: MAKERS.toSorted(compareText).map((title) => ({ id: title.toLowerCase().replaceAll(' ', '-'), title })),
      clocks: clocks.map((title) => ({ id: title.replace(' ', ''), title })),
      outcomes: OUTCOMES.map(({ id, title }) => ({ id, title })),
    },
    clocks: chosen,
  };
}

/** Numbers from 0 to 1 by a multiplicative congruential generator (Park and Miller 1988). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
