/** Reads what a plan puts where: the data of its layers, panel by panel. */
import type { Rule, SignMark } from '../../src/plots/drawing/marks.ts';
import { isPlan, type Plan, type Planned, type Undrawn } from '../../src/plots/drawing/plan.ts';
import type { Size } from '../../src/plots/drawing/size.ts';

interface Layer {
  readonly mark: { readonly type: string };
  readonly data: { readonly values: readonly object[] };
  readonly encoding: Readonly<
    Record<string, { readonly scale?: { readonly domain?: readonly number[]; readonly type?: string } | null }>
  >;
}

export interface PanelParts {
  readonly width: number;
  readonly height: number;
  readonly rules: readonly Rule[];
  readonly signs: readonly SignMark[];
  readonly texts: readonly {
    readonly x: number;
    readonly y: number;
    readonly text: string;
    readonly align: string;
    readonly size: number;
  }[];
  /** Pixels of a value on an axis that the drawing gives, by its own domain. */
  readonly xOf: (value: number) => number;
  readonly yOf: (value: number) => number;
}

/** The plan, which there must be. */
export function drawable(planned: Planned | Undrawn): Plan {
  if (!isPlan(planned)) throw new Error(JSON.stringify(planned));
  return planned;
}

export function partsOf(plan: Plan, size: Size): PanelParts[] {
  const panels = plan.layOut(size).vconcat as { width: number; height: number; layer: Layer[] }[];
  return panels.map(({ width, height, layer }) => {
    const values = (type: string, with_: string) =>
      layer.flatMap(({ mark, data }) => (mark.type === type ? data.values.filter((value) => with_ in value) : []));
    const axes = layer.find(({ encoding }) => encoding.x?.scale?.domain)!.encoding;
    const along = (axis: 'x' | 'y') => {
      const { domain, type } = axes[axis]!.scale as { domain: [number, number]; type?: string };
      const on = type === 'log' ? Math.log : (value: number) => value;
      return (value: number) => (on(value) - on(domain[0])) / (on(domain[1]) - on(domain[0]));
    };
    return {
      width,
      height,
      rules: values('rule', 'x2') as Rule[],
      signs: values('point', 'shape') as SignMark[],
      texts: values('text', 'text') as PanelParts['texts'] as never,
      xOf: (value) => along('x')(value) * width,
      yOf: (value) => (1 - along('y')(value)) * height,
    };
  });
}
