/** Thermal images of runs on one scale of colours: regions with the isotherm of their touch limit, and spots with their corrected temperatures. */
import { type Figure, isPresent, type PresentFigure } from '../../figures/figure.ts';
import type { ImageBox, ImagePoint } from '../../figures/surface/in-image.ts';
import type { Matrix } from '../../figures/surface/matrix.ts';
import { readingOf } from '../../figures/surface/reading-of.ts';
import type { Surface, SurfaceReading } from '../../figures/surface/surface-table.ts';
import { error } from '../../problem.ts';
import type { PlotSubject } from '../drawing/drawn.ts';
import type { Plan, Planned, Planner } from '../drawing/plan.ts';
import { contours, type Spot } from './contour.ts';
import { layOutThermal } from './layout.ts';
import { thermalAlt, thermalCsv, thermalMethod, thermalTable, thermalTitle } from './words.ts';

/** A spot or region of an image. */
export interface Place {
  readonly id: string;
  readonly title: string;
  readonly at: ImagePoint;
  readonly box: ImageBox | null;
  /** `surface`, `touch_margin`, and of regions the mean and 99th percentile. */
  readonly surface: Figure;
  readonly margin: Figure | undefined;
  readonly mean: Figure | undefined;
  readonly percentile: Figure | undefined;
  /** Lines along which the surface is at its touch limit, in pixels of the image; none where it is nowhere. */
  readonly isotherm: readonly (readonly Spot[])[];
}

export interface Image {
  /** '' on the run's own page. */
  readonly alias: string;
  readonly matrix: Matrix;
  readonly places: readonly Place[];
}

export interface Thermal {
  readonly images: readonly Image[];
  /** Of readings in all images, °C as the cameras show them. */
  readonly coldest: number;
  readonly hottest: number;
}

/** Plans the images of the runs that have one; all must. */
export const planThermal: Planner = (request, subjects): Planned => {
  const without = subjects.filter(({ surface }) => !surface?.image);
  if (without.length > 0) {
    return without.map(({ alias, title }) =>
      error('no-image', request.place, `\`${alias === '' ? title : alias}\` has no thermal image to draw`, {
        expected: 'a run with `image` below `surface`',
        remedy: 'name it there, or leave the run out',
      }),
    );
  }
  const images = subjects.map(imageOf);
  const readings = images.map(({ matrix }) => matrix.values);
  const thermal: Thermal = {
    images,
    coldest: readings.reduce(
      (least, values) => values.reduce((low, value) => Math.min(low, value), least),
      Number.POSITIVE_INFINITY,
    ),
    hottest: readings.reduce(
      (most, values) => values.reduce((high, value) => Math.max(high, value), most),
      Number.NEGATIVE_INFINITY,
    ),
  };
  return {
    title: request.title ?? thermalTitle(thermal),
    alt: thermalAlt(thermal),
    method: thermalMethod(thermal),
    csv: thermalCsv(thermal),
    table: thermalTable(thermal),
    layOut: (size) => layOutThermal(thermal, size),
    shown: [],
  } satisfies Plan;
};

function imageOf(subject: PlotSubject): Image {
  const surface = subject.surface!;
  const matrix = surface.image!;
  const places = surface.readings.flatMap((reading) =>
    reading.at ? [placeOf(subject, surface, matrix, reading, reading.at)] : [],
  );
  return { alias: subject.alias, matrix, places };
}

function placeOf(
  { derived, context }: PlotSubject,
  surface: Surface,
  matrix: Matrix,
  reading: SurfaceReading,
  at: ImagePoint,
): Place {
  const figure = (name: string) => derived.figures.get(`${name}.${reading.spot}`);
  const [own, margin] = [figure('surface')!, figure('touch_margin')];
  const box = reading.region?.box ?? null;
  const limit = box && isPresent(own) && margin && isPresent(margin) ? atLimit(own, margin) : null;
  const shown = limit === null ? null : readingOf(context, surface, reading, limit);
  return {
    id: reading.spot,
    title: reading.title,
    at,
    box,
    surface: own,
    margin,
    mean: figure('surface_mean'),
    percentile: figure('surface_percentile_99'),
    isotherm: box === null || shown === null ? [] : isothermIn(matrix, box, shown),
  };
}

/** The temperature at which nothing would be left of the margin, °C. */
function atLimit(surface: PresentFigure, margin: PresentFigure): number {
  return surface.quantity.value + margin.quantity.value;
}

/** Within the box alone: elsewhere the surface is another. */
function isothermIn({ width, height, values }: Matrix, box: ImageBox, level: number): Spot[][] {
  const [left, top] = [Math.ceil(box.x[0] * width - 0.5), Math.ceil(box.y[0] * height - 0.5)];
  const [right, bottom] = [Math.floor(box.x[1] * width - 0.5), Math.floor(box.y[1] * height - 0.5)];
  const grid = {
    width: right - left + 1,
    height: bottom - top + 1,
    at: (column: number, row: number) => values[(row + top) * width + column + left]!,
  };
  return contours(grid, level).map((line) => line.map(([x, y]): Spot => [x + left, y + top]));
}
