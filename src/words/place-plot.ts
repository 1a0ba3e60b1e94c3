/** `::plot{kind=… runs="…" channels="…"}`: leaves a numbered place where the plot goes. */
import type { Nodes } from 'mdast';
import { error, type Problem } from '../problem.ts';
import { meant, oneOf } from '../register/names.ts';
import { type PlotRequest, type RequestAttributes, readPlotRequest } from '../register/requests.ts';
import type { PageElement } from './page-node.ts';
import type { WrittenDirective } from './read-directive.ts';
import { placeAt, spanOf, type Writing } from './writing.ts';

/** The place of the plot, or null after reporting what is wrong with the request. */
export function placePlot(writing: Writing, read: WrittenDirective, node: Nodes): PageElement | null {
  const attributes = requestAttributes(writing, read);
  const request = readPlotRequest(attributes, runsOf(writing), placeAt(writing, spanOf(node).start));
  if ('problems' in request) return refuse(writing, request.problems);
  const missing = missingChannels(writing, request, attributes);
  if (missing.length > 0) return refuse(writing, missing);
  const id = freePlotId(writing, request, attributes.has('id'));
  if (id === null) return null;
  writing.plots.push({ ...request, id });
  return { tagName: 'div', properties: { dataPlot: String(writing.plots.length - 1) }, children: [] };
}

/** Attributes with the places of their values. */
export function requestAttributes(writing: Writing, read: WrittenDirective): RequestAttributes {
  return new Map(read.attributes.map(({ name, value, valueStart }) => [name, { value, place: placeAt(writing, valueStart) }]));
}

/** Run ids by alias. */
export function runsOf({ subjects }: Writing): ReadonlyMap<string, string> {
  return new Map([...subjects].filter(([, { kind }]) => kind === 'run').map(([alias, { id }]) => [alias, id]));
}

function refuse(writing: Writing, problems: readonly Problem[]): null {
  writing.problems.push(...problems);
  return null;
}

/** Every run of a plot must have every channel that it asks for. */
function missingChannels({ subjects }: Writing, { runs, channels, place }: PlotRequest, attributes: RequestAttributes): Problem[] {
  const at = attributes.get('channels')?.place ?? place;
  return runs.flatMap(({ alias }) => {
    const names = subjects.get(alias)?.channels.map(({ name }) => name) ?? [];
    return channels
      .filter((channel) => !names.includes(channel))
      .map((channel) =>
        error('unknown-channel', at, `no channel \`${channel}\` in \`${alias}\``, {
          expected: oneOf(names),
          ...meant(channel, names),
        }),
      );
  });
}

/** Ids are unique on a page: a made one gets a number, an author's own twice is an error. */
function freePlotId(writing: Writing, { id, place }: PlotRequest, own: boolean): string | null {
  const taken = new Set(writing.plots.map((plot) => plot.id));
  if (!taken.has(id)) return id;
  if (own)
    return refuse(writing, [
      error('repeated-id', place, `the id \`${id}\` a second time`, { remedy: 'give one of the plots another' }),
    ]);
  let count = 2;
  while (taken.has(`${id}-${count}`)) count += 1;
  return `${id}-${count}`;
}
