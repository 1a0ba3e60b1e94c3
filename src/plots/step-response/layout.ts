/** Where everything of a step response stands, and its specification. */

import { figureText } from '../data/figure-text.ts';
import { stack } from '../drawing/config.ts';
import type { LineData } from '../drawing/lines/drawn-line.ts';
import type { Mean } from '../drawing/lines/means.ts';
import type { Label, Rule } from '../drawing/marks.ts';
import { inkOf } from '../drawing/palette.ts';
import { type Frame, frameOf, headingRoom, type LabelledLine, type PanelContent, panelSpec } from '../drawing/panel.ts';
import type { Size } from '../drawing/size.ts';
import { textWidth } from '../drawing/text-width.ts';
import { niceScale, pixelOf, type Scale, timeScale } from '../drawing/ticks.ts';
import { valueScale } from '../drawing/value-scale.ts';
import type { Spec } from '../drawing/vega.ts';
import { withUnit } from '../drawing/wording.ts';
import type { Course, StepResponse } from './plan.ts';

/** Points of a fitted curve. */
const CURVE = 120;
/** Height of the residuals, as a share of the panel above. */
const STRIP = 0.3;
/** Distance of a label from a rule, px. */
const BESIDE = 6;

/** The specification of a step response in a size: the responses, and below them what the fits leave over. */
export function layOutResponse(response: StepResponse, size: Size): Spec {
  const height = size.height;
  const heights = [height, Math.round(height * STRIP)];
  const x = timeScale(0, response.to, size.timeTicks);
  const above = mainPanel(response, size, height);
  const fitted = response.courses.filter(({ fit }) => fit !== null);
  const below = fitted.length > 0 && size.name !== 'still';
  const contents = below ? [above, residualPanel(fitted, heights[1]!)] : [above];
  const frame = frameOf(contents, heights, x, size);
  const title = `Time since load start (${response.time.unit})`;
  const panels = contents.map((content, i) => panelSpec(content, frame, heights[i]!, i === contents.length - 1 ? title : null));
  return stack(panels, size, headingRoom(size) + 10);
}

/** What is drawn heavy over the readings: the fitted curve, else means. */
export function overOf(course: Course): readonly Mean[] | null {
  const { fit } = course;
  if (!fit) return course.means;
  const end = course.x.at(-1)!;
  return Array.from({ length: CURVE + 1 }, (_, i) => {
    const x = end * (i / CURVE) ** 2;
    return { x, y: fit.at(x), segment: 0 };
  });
}

function mainPanel(response: StepResponse, size: Size, height: number): PanelContent {
  const y = valueScale({ kind: 'temperature', rise: response.rise, lines: response.courses }, size.valueTicks);
  return {
    heading: response.rise ? withUnit('Rise over ambient', 'K') : withUnit('Temperature', '°C'),
    lines: response.courses.map(lineOf),
    y,
    stepped: false,
    labelled: true,
    limits: [],
    unit: '',
    named: [],
    shaded: [],
    remarks: (frame) => tauMarks(response.courses, y, frame, height),
  };
}

function lineOf(course: Course): LabelledLine {
  return { k: course.k, x: course.x, y: course.y, segments: course.segments, label: course.label, over: overOf(course) };
}

/** From the curve down to the axis at one time constant, named beside; names of several stand one above the other. */
function tauMarks(courses: readonly Course[], y: Scale, frame: Frame, height: number): { rules: Rule[]; labels: Label[] } {
  const { size, xOf, width } = frame;
  const marked = courses.filter(({ fit }) => fit !== null && xOf(fit.tau) < width);
  const taken = marked.map(({ fit }) => xOf(fit!.tau)).sort((a, b) => a - b);
  const marks = marked.map(({ k, fit }, row) => {
    const x = xOf(fit!.tau);
    const top = pixelOf(fit!.at(fit!.tau), y, height);
    const rule: Rule = { x, x2: x, y: top, y2: height, stroke: inkOf(k), dash: [3, 3] };
    const text = `τ = ${figureText(fit!.figures.timeConstant)}`;
    const left = clearOf(taken, x, textWidth(text, size.small));
    const label: Label = { x: left, y: height - size.small * (0.9 + 1.25 * row), text, size: size.small, fill: inkOf(k) };
    return { rule, label };
  });
  return { rules: marks.map(({ rule }) => rule), labels: marks.map(({ label }) => label) };
}

/** Left edge of a label that begins beside its rule at x, moved right past the rules that would cross it. */
function clearOf(rulesAt: readonly number[], x: number, long: number): number {
  let left = x + BESIDE;
  for (const at of rulesAt) if (at > x && at - BESIDE < left + long && at + BESIDE > left) left = at + BESIDE;
  return left;
}

function residualPanel(courses: readonly Course[], height: number): PanelContent {
  const lines = courses.map(residualLine);
  const largest = Math.max(1e-9, ...lines.flatMap((line) => [...line.y].map(Math.abs)));
  const y = niceScale(-largest, largest, 2);
  return {
    heading: withUnit('Measured less fitted', 'K'),
    lines,
    y,
    stepped: false,
    labelled: false,
    limits: [],
    unit: '',
    named: [],
    shaded: [],
    remarks: ({ width }) => ({ rules: [zeroLine(width, height / 2)], labels: [] }),
  };
}

/** Where measured and fitted agree. */
function zeroLine(width: number, y: number): Rule {
  return { x: 0, x2: width, y, y2: y, stroke: 'var(--plot-soft)' };
}

function residualLine(course: Course): LabelledLine {
  const { residuals } = course.fit!;
  const data: LineData = {
    k: course.k,
    x: Float64Array.from(residuals, ({ x }) => x),
    y: Float64Array.from(residuals, (mean) => mean.y),
    segments: stretches(residuals),
    over: null,
  };
  return { ...data, label: course.label };
}

/** Stretches of means that belong to one unbroken stretch of readings. */
function stretches(means: readonly Mean[]): { start: number; end: number }[] {
  const starts = means.flatMap(({ segment }, i) => (i === 0 || segment !== means[i - 1]!.segment ? [i] : []));
  return starts.map((start, s) => ({ start, end: starts[s + 1] ?? means.length }));
}
