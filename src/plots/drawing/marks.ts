/**
 * The few marks that all plots are made of, as Vega-Lite layers. Lines and points stand in the units of the data, on
 * scales; what explains them (bands, rules, texts) stands in pixels from the data area's upper left corner.
 */
import { dashOf, inkOf, shapeOf } from './palette.ts';

import type { Scale } from './ticks.ts';
import type { Spec } from './vega.ts';

export const FONT = "'Source Sans 3', sans-serif";

/** Words in the drawing. `y` is the middle of the line. */
export interface Label {
  readonly x: number;
  readonly y: number;
  readonly text: string | readonly string[];
  readonly size: number;
  readonly fill: string;
  readonly align?: 'left' | 'center' | 'right';
}

export interface Rule {
  readonly x: number;
  readonly y: number;
  readonly x2: number;
  readonly y2: number;
  readonly stroke: string;
  readonly width?: number;
  readonly dash?: readonly number[];
}

export interface Band {
  readonly x: number;
  readonly y: number;
  readonly x2: number;
  readonly y2: number;
}

/** A reading to draw. */
export interface Point {
  readonly x: number;
  readonly y: number;
  /** Style, from 0. */
  readonly k: number;
  /** Stretch of the line: it breaks between two. */
  readonly s: number;
}

const pixel = (field: string) => ({ field, type: 'quantitative', scale: null, axis: null });
const asIs = (field: string) => ({ field, type: 'nominal', scale: null, legend: null });

export function texts(labels: readonly Label[]): Spec {
  return {
    data: { values: labels.map((label) => ({ align: 'left', ...label })) },
    mark: {
      type: 'text',
      align: { expr: 'datum.align' },
      baseline: 'middle',
      fontSize: { expr: 'datum.size' },
      lineHeight: { expr: 'datum.size + 1' },
    },
    encoding: { x: pixel('x'), y: pixel('y'), text: { field: 'text' }, fill: asIs('fill') },
  };
}

export function rules(lines: readonly Rule[]): Spec {
  return {
    data: { values: lines.map((line) => ({ width: 1, dash: [1, 0], ...line })) },
    mark: { type: 'rule', strokeWidth: { expr: 'datum.width' }, strokeDash: { expr: 'datum.dash' } },
    encoding: { x: pixel('x'), y: pixel('y'), x2: { field: 'x2' }, y2: { field: 'y2' }, stroke: asIs('stroke') },
  };
}

/** Tinted stretches: ink at low opacity, so that the grid below shows on light and dark paper alike. */
export function bands(rects: readonly Band[]): Spec {
  return {
    data: { values: rects },
    mark: { type: 'rect', fill: 'var(--plot-ink)', fillOpacity: 0.05 },
    encoding: { x: pixel('x'), y: pixel('y'), x2: { field: 'x2' }, y2: { field: 'y2' } },
  };
}

/** Bars in the colour of their run, paler than its line so that a whisker shows on them. */
export function bars(rects: readonly (Band & { readonly fill: string })[]): Spec {
  return {
    data: { values: rects },
    mark: { type: 'rect', fillOpacity: 0.3 },
    encoding: { x: pixel('x'), y: pixel('y'), x2: { field: 'x2' }, y2: { field: 'y2' }, fill: asIs('fill') },
  };
}

/** A sign in pixels, of a shape and a colour of its own. */
export interface SignMark {
  readonly x: number;
  readonly y: number;
  readonly shape: string;
  readonly stroke: string;
  readonly fill: string;
}

export function signs(marks: readonly SignMark[], size = 90): Spec {
  return {
    data: { values: marks },
    mark: { type: 'point', size, strokeWidth: 1.75, fillOpacity: 1 },
    encoding: { x: pixel('x'), y: pixel('y'), shape: asIs('shape'), stroke: asIs('stroke'), fill: asIs('fill') },
  };
}

/** A picture in pixels, stretched to its size; `url` is a data address. */
export interface ImageMark {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly url: string;
}

export function images(marks: readonly ImageMark[]): Spec {
  return {
    data: { values: marks },
    mark: {
      type: 'image',
      aspect: false,
      align: 'left',
      baseline: 'top',
      width: { expr: 'datum.width' },
      height: { expr: 'datum.height' },
    },
    encoding: { x: pixel('x'), y: pixel('y'), url: { field: 'url', type: 'nominal' } },
  };
}

/** Lines in pixels in the colour of limits, with an edge of paper, so that they show on anything. */
export function paths(all: readonly (readonly (readonly [x: number, y: number])[])[]): Spec {
  const values = all.flatMap((line, s) => line.map(([x, y]) => ({ x, y, s })));
  const encoding = { x: pixel('x'), y: pixel('y'), detail: { field: 's', type: 'nominal' }, order: { value: null } };
  const drawn = (stroke: string, strokeWidth: number) => ({
    mark: { type: 'line', stroke, strokeWidth, strokeJoin: 'round' },
    encoding,
  });
  return { data: { values, format: { parse: null } }, layer: [drawn('var(--plot-paper)', 3.5), drawn('var(--plot-limit)', 1.75)] };
}

/** Nothing but the axes. */
export function empty(axes: Axes): Spec {
  return {
    data: { values: [{ x: axes.x.from, y: axes.y.from }] },
    mark: { type: 'point', size: 0, stroke: 'none' },
    encoding: positions(axes),
  };
}

const STRONG = { strokeWidth: 1.75, strokeJoin: 'round' };
const FAINT = { strokeWidth: 0.75, strokeOpacity: 0.45, strokeJoin: 'round' };

/** Lines on the two scales, with the axes. `styles` are those of the points, ascending. */
export function lines(
  points: readonly Point[],
  styles: readonly number[],
  axes: Axes,
  more: { readonly stepped?: boolean; readonly faint?: boolean } = {},
): Spec {
  return {
    data: { values: points, format: { parse: null } },
    mark: { type: 'line', ...(more.faint ? FAINT : STRONG), ...(more.stepped ? { interpolate: 'step-after' } : {}) },
    encoding: {
      ...positions(axes),
      stroke: styled(styles, inkOf),
      detail: { field: 's', type: 'nominal' },
      order: null,
      ...(more.faint ? {} : { strokeDash: styled(styles, dashOf) }),
    },
  };
}

/** Markers on the same scales, filled with paper so that the line does not run through them. */
export function markers(points: readonly Point[], styles: readonly number[], axes: Axes, size = 34): Spec {
  return {
    data: { values: points, format: { parse: null } },
    mark: { type: 'point', size, fill: 'var(--plot-paper)', fillOpacity: 1, strokeWidth: 1.5 },
    encoding: { ...positions(axes), stroke: styled(styles, inkOf), shape: styled(styles, shapeOf) },
  };
}

export interface Axes {
  readonly x: Scale;
  readonly y: Scale;
  /** Title of the horizontal axis; '' for labels alone; null: neither labels nor title (another panel below has them). */
  readonly xTitle: string | null;
  /** Horizontal lines at the ticks of y, or none. */
  readonly grid: 'y' | 'none';
}

function positions(axes: Axes) {
  const label = axes.xTitle === null ? { labels: false, title: null } : { title: axes.xTitle || null };
  return {
    x: { field: 'x', type: 'quantitative', scale: scaleOf(axes.x), axis: { ...axisOf(axes.x), ...label, grid: false } },
    y: {
      field: 'y',
      type: 'quantitative',
      scale: scaleOf(axes.y),
      axis: { ...axisOf(axes.y), title: null, grid: axes.grid === 'y', domain: false, ticks: false },
    },
  };
}

const scaleOf = ({ from, to, log }: Scale) => ({ domain: [from, to], nice: false, ...(log ? { type: 'log' } : { zero: false }) });
const axisOf = (scale: Scale) => ({
  values: scale.ticks,
  format: scale.ragged ? '~r' : `.${scale.decimals}f`,
  labelOverlap: false,
  labelFlush: false,
});

function styled(styles: readonly number[], byStyle: (k: number) => unknown) {
  return { field: 'k', type: 'nominal', legend: null, scale: { domain: styles, range: styles.map(byStyle) } };
}
