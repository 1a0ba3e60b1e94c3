/** Gathered comparisons, for tests; all is invented. */
import type { FiguresJson, Gathered, GatheredRun } from '../../../src/compute/models/gathered.ts';
import { figuresJson } from '../../../src/figures/figures-json.ts';
import { recorded, recordedRun } from '../record-copies/recorded.ts';

const CONDITIONS = { cooling: 'no fan', firmware: '1.8', system: 'image 4', workload: 'mix 3.1' };

export interface RunSketch extends Partial<Omit<GatheredRun, 'conditions' | 'setting' | 'ambient'>> {
  readonly setting?: Readonly<Record<string, string>>;
  /** Those that the run states besides, or null for one that it does not state. */
  readonly conditions?: Readonly<Record<string, string | null>>;
  /** Rows of conditions as a page has them, besides those that all sketches state. */
  readonly rows?: GatheredRun['conditions'];
  /** °C and standard uncertainty; measured unless it says otherwise. */
  readonly ambient?: readonly [value: number, u: number, how?: string] | null;
  /** End of the load, s; null for none. */
  readonly loadEnd?: number | null;
}

/** A run with the same conditions as any other, but for what is given. */
export function run(
  alias: string,
  { setting, conditions, ambient, rows: others = [], loadEnd = 3900, ...more }: RunSketch = {},
): GatheredRun {
  const stated = Object.entries({ ...CONDITIONS, ...conditions }).filter(([, text]) => text !== null);
  const rows = (texts: readonly (readonly [string, string | null])[]) => texts.map(([label, text]) => ({ label, text: text! }));
  const base = recordedRun(alias, 60) as GatheredRun;
  const phases = loadEnd === null ? [] : [{ name: 'load', from: 300, to: loadEnd, inferred: false }];
  return {
    ...base,
    setting: rows(Object.entries(setting ?? { clock: alias === 'fast' ? '2.6 GHz' : '2.0 GHz' })),
    conditions: [...others, ...rows(stated)],
    ambient: ambientMap(alias, ambient === undefined ? [22, 0.1] : ambient),
    series: { ...base.series, phases },
    ...more,
  };
}

function ambientMap(alias: string, ambient: NonNullable<RunSketch['ambient']> | null): FiguresJson {
  if (ambient === null) return { sources: {}, figures: {} };
  const [value, u, how = 'measured, channel room'] = ambient;
  const source = { id: `run:${alias}/ambient`, title: `ambient of ${alias}`, dof: null };
  const quantity = { value, unit: '°C', parts: [{ source, share: u }] };
  const figure = { name: 'ambient' as const, quantity, from: { columns: [], rows: null }, of: { ambient: how } };
  const { sources, figures } = figuresJson({}, new Map([['ambient', figure]])) as FiguresJson;
  return { sources, figures };
}

/** Runs compared with the first of them. */
export function comparison(...runs: readonly GatheredRun[]): Gathered {
  return { ...(recorded() as Gathered), reference: runs[0]!.alias, runs };
}
