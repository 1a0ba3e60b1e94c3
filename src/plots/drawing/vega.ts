/** The one door to Vega: a Vega-Lite specification in, an SVG out, warnings as data. */
import * as vega from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { compile, type TopLevelSpec } from 'vega-lite';
import { textWidth } from './text-width.ts';

/** A Vega-Lite specification or a part of one, as plain data. */
export type Spec = Readonly<Record<string, unknown>>;

export interface Rendered {
  readonly svg: string;
  /** What Vega or Vega-Lite warned of: an absent field would else draw an empty chart. */
  readonly warnings: readonly string[];
}

interface TextItem {
  readonly fontSize?: number;
}

const { textMetrics } = vega as unknown as { textMetrics: { width: (item: TextItem, text: unknown) => number } };
textMetrics.width = (item, text) => textWidth(String(text ?? ''), item.fontSize ?? 11);

/**
 * Vega makes functions of a specification's expressions. They are ours, the author's words stand in data alone, and to
 * interpret them takes a third longer: that is done only where Node was started without code generation, and in browsers, where
 * the site's policy forbids it and even the attempt would be reported.
 */
const GENERATES = typeof process !== 'undefined' && generatesCode();

function generatesCode(): boolean {
  try {
    return new Function('return true')() === true;
  } catch {
    return false;
  }
}

let last: Promise<unknown> = Promise.resolve();

/**
 * Renders a specification to SVG. One at a time: Vega counts the ids of its definitions for the whole process, so two
 * charts drawn at once would share a counter and their bytes would depend on the order.
 */
export function render(spec: Spec): Promise<Rendered> {
  const turn = last.then(() => renderNow(spec));
  last = turn.catch(() => undefined);
  return turn;
}

async function renderNow(spec: Spec): Promise<Rendered> {
  const warnings: string[] = [];
  const logger = collector(warnings);
  vega.resetSVGDefIds();
  const compiled = compile(spec as unknown as TopLevelSpec, { logger }).spec;
  const runtime = vega.parse(compiled, undefined, { ast: !GENERATES });
  const expressions = GENERATES ? {} : { expr: expressionInterpreter };
  const view = new vega.View(runtime, { renderer: 'none', ...expressions, loader: refusingLoader(), logger });
  try {
    return { svg: await view.toSVG(), warnings };
  } finally {
    view.finalize();
  }
}

/** A logger that keeps warnings and errors. */
function collector(warnings: string[]): vega.LoggerInterface {
  const keep = (...parts: readonly unknown[]) => {
    warnings.push(parts.map(String).join(' '));
    return logger;
  };
  const drop = () => logger;
  const level = ((value?: number) => (value === undefined ? vega.Warn : logger)) as vega.LoggerInterface['level'];
  const logger: vega.LoggerInterface = { level, error: keep, warn: keep, info: drop, debug: drop };
  return logger;
}

/** Nothing is fetched: neither from disk nor from the network. A picture that stands in its own address is none to fetch. */
function refusingLoader(): vega.Loader {
  const refuse = (uri: string) => Promise.reject(new Error(`a plot may load nothing, and asked for ${uri}`));
  const sanitize = (uri: string) => (uri.startsWith('data:image/png;base64,') ? Promise.resolve({ href: uri }) : refuse(uri));
  return { ...vega.loader(), load: refuse, sanitize, http: refuse, file: refuse };
}
