/**
 * The readout of charts over time, with scripting: pointing at a chart, touching it or moving its slider tells what every line reads at that
 * moment; a mark makes a span of it. What is told are the drawn readings of the chart's own CSV. The moment stands in the address, and
 * the scale of temperatures is remembered for the whole site.
 */
import { lineNames, nearest, within } from './readout/lines.ts';
import { type Lines, readLines } from './readout/read-lines.ts';
import { inScale, otherScale, type Scale } from './readout/scale.ts';

const REMEMBERED = 'soakproof-temperatures';
const PARAMETER = 'read';
/** Files write it; readers get the sign that the axis has. */
const HYPHEN_OF_NUMBER = /(?<![\p{L}\d])-(?=\d)/gu;

interface Chart {
  readonly id: string;
  readonly figure: HTMLElement;
  readonly slider: HTMLInputElement;
  readonly told: HTMLOutputElement;
  readonly scale: HTMLButtonElement;
  readonly unit: string;
  readonly data: string;
  lines?: Promise<Lines | null>;
  mark: number | null;
}

let scale: Scale = remembered();
const charts = [...document.querySelectorAll<HTMLElement>('figure.plot:has(.readout)')].map(chartOf);
for (const chart of charts) listen(chart);
showAddress();

function chartOf(figure: HTMLElement): Chart {
  const slider = figure.querySelector<HTMLInputElement>('.readout input')!;
  for (const drawing of figure.querySelectorAll<HTMLElement>('[data-along]')) lay(slider, drawing);
  slider.dataset.laid = '';
  return {
    id: figure.id,
    figure,
    slider,
    told: figure.querySelector('output')!,
    scale: figure.querySelector<HTMLButtonElement>('.readout .scale')!,
    unit: figure.querySelector<HTMLElement>('[data-along]')!.dataset.along!.split(' ').at(-1)!,
    data: figure.querySelector<HTMLAnchorElement>('a.drawn-data')!.href,
    mark: null,
  };
}

/** Tells the style sheet where the time axis lies in a drawing, as shares of its width. */
function lay(slider: HTMLInputElement, drawing: HTMLElement): void {
  const [left, width] = placed(drawing);
  const whole = drawing.querySelector('svg')!.viewBox.baseVal.width;
  const size = drawing.classList.contains('narrow') ? 'narrow' : 'wide';
  slider.style.setProperty(`--${size}-from`, String(left / whole));
  slider.style.setProperty(`--${size}-share`, String(width / whole));
}

function listen(chart: Chart): void {
  chart.slider.addEventListener('input', () => tell(chart));
  chart.slider.addEventListener('change', () => remember(chart));
  chart.figure.querySelector('.mark')!.addEventListener('click', () => {
    chart.mark = chart.mark === null ? moment(chart) : null;
    tell(chart);
    remember(chart);
  });
  chart.scale.addEventListener('click', () => {
    scale = otherScale(scale);
    keep(scale);
    for (const each of charts) if (each.lines) tell(each);
  });
  for (const drawing of chart.figure.querySelectorAll<HTMLElement>('[data-along]')) {
    let pressed = false;
    const point = (event: PointerEvent) => {
      chart.slider.value = String(timeAt(drawing, event.clientX));
      tell(chart);
    };
    drawing.addEventListener('pointerdown', (event) => {
      point(event);
      pressed = true;
      chart.mark = moment(chart);
    });
    drawing.addEventListener('pointermove', (event) => {
      if (pressed || event.pointerType === 'mouse') point(event);
    });
    const end = () => {
      if (!pressed) return;
      pressed = false;
      if (Math.abs(moment(chart) - chart.mark!) < Number(chart.slider.step) * 5) chart.mark = null;
      tell(chart);
      remember(chart);
    };
    for (const name of ['pointerup', 'pointercancel', 'pointerleave'] as const) drawing.addEventListener(name, end);
  }
}

function moment(chart: Chart): number {
  return Number(chart.slider.value);
}

/** Left edge and width of the data area, first and last moment. */
function placed(drawing: HTMLElement): [left: number, width: number, from: number, to: number] {
  const [left, width, from, to] = drawing.dataset.along!.split(' ').map(Number);
  return [left!, width!, from!, to!];
}

function timeAt(drawing: HTMLElement, clientX: number): number {
  const svg = drawing.querySelector('svg')!;
  const box = svg.getBoundingClientRect();
  const [left, width, from, to] = placed(drawing);
  const share = (((clientX - box.left) / box.width) * svg.viewBox.baseVal.width - left) / width;
  return from + Math.min(Math.max(share, 0), 1) * (to - from);
}

async function tell(chart: Chart): Promise<void> {
  draw(chart);
  chart.lines ??= readLines(chart.data);
  const lines = await chart.lines;
  if (lines === null) {
    chart.told.textContent = 'The drawn data could not be loaded.';
    return;
  }
  chart.scale.hidden = !lines.some(({ unit }) => unit === '°C' || unit === 'K');
  chart.scale.textContent = `in ${otherScale(scale)}`;
  const at = moment(chart);
  const span = chart.mark === null ? null : ([Math.min(at, chart.mark), Math.max(at, chart.mark)] as const);
  const names = lineNames(lines);
  const reach = (Number(chart.slider.max) - Number(chart.slider.min)) / 50;
  const told = lines.flatMap((line, i) => {
    const found = span ? within(line, span) : nearest(line, at, reach);
    return found === null ? [] : [`${names[i]} ${found.map((text) => inScale(text, line.unit, scale)).join(' to ')}`];
  });
  const when = span ? `${round(span[0])} to ${round(span[1])} ${chart.unit}` : `${round(at)} ${chart.unit}`;
  chart.told.textContent = `${when}: ${told.length === 0 ? 'no reading' : told.join('; ')}`.replaceAll(HYPHEN_OF_NUMBER, '−');
}

/** A line where the moment is, a band where a span is. */
function draw(chart: Chart): void {
  for (const drawing of chart.figure.querySelectorAll<HTMLElement>('[data-along]')) {
    const svg = drawing.querySelector('svg')!;
    const [left, width, from, to] = placed(drawing);
    const x = (time: number) => left + ((time - from) / (to - from)) * width;
    const cursor = svg.querySelector('.cursor') ?? behindWords(svg);
    const [start, end] = [x(moment(chart)), x(chart.mark ?? moment(chart))];
    const look = {
      class: 'cursor',
      x: Math.min(start, end),
      y: 0,
      width: Math.max(Math.abs(end - start), 1),
      height: svg.viewBox.baseVal.height - 44,
    };
    for (const [name, value] of Object.entries(look)) cursor.setAttribute(name, String(value));
    cursor.classList.toggle('span', chart.mark !== null);
  }
}

/** Below the drawing's own marks, so that it strikes through no word. */
function behindWords(svg: SVGSVGElement): Element {
  const cursor = document.createElementNS(svg.namespaceURI!, 'rect');
  svg.prepend(cursor);
  return cursor;
}

function round(time: number): string {
  return String(Number(time.toFixed(2)));
}

function remember(chart: Chart): void {
  const address = new URL(location.href);
  const ends = chart.mark === null ? [moment(chart)] : [chart.mark, moment(chart)];
  address.searchParams.set(PARAMETER, `${chart.id}:${ends.map(round).join('..')}`);
  history.replaceState(history.state, '', address);
}

function showAddress(): void {
  const [, id, first, second] =
    /^(.+):(-?[\d.]+?)(?:\.\.(-?[\d.]+))?$/.exec(new URL(location.href).searchParams.get(PARAMETER) ?? '') ?? [];
  const chart = charts.find((each) => each.id === id);
  if (!chart || first === undefined) return;
  chart.slider.value = second ?? first;
  chart.mark = second === undefined ? null : Number(first);
  tell(chart);
}

function remembered(): Scale {
  try {
    return localStorage.getItem(REMEMBERED) === '°F' ? '°F' : '°C';
  } catch {
    return '°C';
  }
}

function keep(chosen: Scale): void {
  try {
    localStorage.setItem(REMEMBERED, chosen);
  } catch {
    // A browser that keeps nothing shows it for this page.
  }
}
