/** Figures read back from the JSON that `figures-json.ts` writes, to the last bit: what a browser or a record copy computes and prints from. */
import type { Part, Quantity, Source } from '../quantities/quantity.ts';
import {
  ABSENT_CODES,
  type AbsentFigure,
  type Figure,
  type FigureMap,
  type From,
  type FromFile,
  type NameOfFigure,
  nameIn,
  type PresentFigure,
} from './figure.ts';
import type { PublishedLog, PublishedLogs } from './figures-json.ts';
import { type Json, readable, type Unreadable } from './json.ts';

export { isUnreadable, type Unreadable } from './json.ts';

export interface RunJson extends PublishedLogs {
  readonly run: string;
  readonly device: string;
  readonly specimen: string;
  /** In the author's order. */
  readonly setting: readonly StatedJson[];
  readonly conditions: readonly StatedJson[];
  readonly figures: FigureMap;
}

/** A setting or condition as the author wrote it; a quantity's value in its canonical unit. */
export interface StatedJson {
  readonly name: string;
  readonly text: string;
  readonly value?: number;
  readonly unit?: string;
}

/** Reads `runs/<id>/figures.json`. Never throws: a text that is no such file comes back as the reason in words. */
export function readRunJson(text: string): RunJson | Unreadable {
  return readable(text, (file) => {
    const log = file.maybe('log');
    const others = file.maybe('other_logs')?.list();
    return {
      run: file.at('run').text(),
      device: file.at('device').text(),
      specimen: file.at('specimen').text(),
      ...(log && { log: logOf(log) }),
      ...(others && {
        other_logs: others.map((each) => ({
          ...logOf(each),
          name: each.at('name').text(),
          begins_s: each.at('begins_s').number(),
          u_s: each.at('u_s').number(),
        })),
      }),
      setting: statedOf(file.maybe('setting')),
      conditions: statedOf(file.maybe('conditions')),
      figures: figuresOf(file),
    };
  });
}

function logOf(log: Json): PublishedLog {
  return {
    file: log.at('file').text(),
    sha256: log.at('sha256').text(),
    rows: log.at('rows').number(),
    span_s: log.at('span_s').number(),
  };
}

/** Reads the figures of any `figures.json`, or of what a record copy holds: an object with `sources` and `figures`. Never throws. */
export function readFiguresJson(text: string): FigureMap | Unreadable {
  return readable(text, figuresOf);
}

/** Order as in the file. The name of a figure is the first word of its address. */
function figuresOf(file: Json): FigureMap {
  const sources = new Map(
    file
      .at('sources')
      .entries()
      .map(([id, source]) => [id, sourceOf(id, source)]),
  );
  const read = ([address, figure]: readonly [string, Json]): [string, Figure] => {
    const name = nameIn(address);
    return [address, figure.has('absent') ? absentOf(name, figure) : presentOf(name, figure, sources)];
  };
  return new Map(file.at('figures').entries().map(read));
}

function sourceOf(id: string, source: Json): Source {
  const distribution = source.maybe('distribution')?.oneOf(['rectangular'] as const);
  return {
    id,
    title: source.at('title').text(),
    dof: source.at('dof').nullable()?.positive() ?? null,
    ...(distribution && { distribution }),
  };
}

function absentOf(name: NameOfFigure, figure: Json): AbsentFigure {
  const bound = figure.maybe('bound');
  return {
    name,
    absent: figure.at('absent').oneOf(ABSENT_CODES),
    why: figure.at('why').text(),
    ...(bound && {
      bound: {
        relation: bound.at('relation').oneOf(['>', '<'] as const),
        value: bound.at('value').number(),
        unit: bound.at('unit').text(),
      },
    }),
    ...ofOf(figure),
  };
}

function presentOf(name: NameOfFigure, figure: Json, sources: ReadonlyMap<string, Source>): PresentFigure {
  const step = figure.maybe('step')?.number();
  const repeatabilityOnly = figure.maybe('of')?.maybe('repeatability_only') !== undefined;
  const quantity: Quantity = {
    value: figure.at('value').number(),
    unit: figure.at('unit').text(),
    parts: partsOf(figure.at('parts'), sources),
    ...(repeatabilityOnly ? { repeatabilityOnly } : {}),
    ...(step === undefined ? {} : { step }),
  };
  const inferred = figure.maybe('inferred');
  return {
    name,
    quantity,
    ...(figure.has('own_interval') ? { interval: figure.at('interval').pair() } : {}),
    from: fromOf(figure.at('from')),
    ...(inferred && { inferred: inferred.list().map((each) => each.text()) }),
    ...ofOf(figure),
  };
}

function partsOf(parts: Json, sources: ReadonlyMap<string, Source>): Part[] | null {
  const known = parts.nullable();
  if (known === null) return null;
  return known.entries().map(([id, share]) => {
    const source = sources.get(id);
    return source ? { source, share: share.number() } : share.refuse(`a source listed under sources, and ${id} is not`);
  });
}

function fromOf(from: Json): From {
  const figures = from.maybe('figures');
  const file = from.maybe('file');
  const others = from.maybe('others');
  return {
    ...(figures && { figures: figures.list().map((each) => each.text()) }),
    columns: from
      .at('columns')
      .list()
      .map((each) => each.text()),
    rows: from.at('rows').nullable()?.pair() ?? null,
    ...(file && { file: file.text() }),
    ...(others && { others: others.list().map(fromFile) }),
  };
}

function fromFile(from: Json): FromFile {
  const { columns, rows } = fromOf(from);
  return { columns, rows, file: from.at('file').text() };
}

function ofOf(figure: Json): Pick<Figure, 'of'> {
  const said = (figure.maybe('of')?.entries() ?? []).filter(([key]) => key !== 'repeatability_only');
  return said.length > 0 ? { of: Object.fromEntries(said.map(([key, value]) => [key, value.scalar()])) } : {};
}

function statedOf(stated: Json | undefined): StatedJson[] {
  return (stated?.list() ?? []).map((each) => ({
    name: each.at('name').text(),
    text: each.at('text').text(),
    ...(each.has('value') ? { value: each.at('value').number(), unit: each.at('unit').text() } : {}),
  }));
}
