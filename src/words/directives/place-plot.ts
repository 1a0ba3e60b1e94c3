/** `::plot{kind=… runs="…" channels="…"}`: leaves a numbered place where the plot goes. */
import type { Nodes } from 'mdast';
import { error, type Place, type Problem } from '../../problem.ts';
import type { Note } from '../../register/register.ts';
import { type PlotRequest, type RequestAttribute, type RequestAttributes, readPlotRequest } from '../../register/requests.ts';
import { meant, oneOf } from '../../register/values/names.ts';
import { placeWithin } from '../expression/text-problem.ts';
import { DIRECTIVES } from '../page/directive-names.ts';
import type { PageElement } from '../page/page-node.ts';
import { placeAt, spanOf, type Writing } from '../page/writing.ts';
import type { Subject } from '../written.ts';
import { withoutCommas } from './name-list.ts';
import type { WrittenDirective } from './read-directive.ts';

const PLOT_ATTRIBUTES = DIRECTIVES.get('plot')?.attributes ?? [];

/** The place of the plot, or null after reporting what is wrong with the request. */
export function placePlot(writing: Writing, read: WrittenDirective, node: Nodes): PageElement | null {
  if (!withoutCommas(writing, read)) return null;
  const index = requested(writing, requestAttributes(writing, read), placeAt(writing, spanOf(node).start));
  return index === null ? null : { tagName: 'div', properties: { dataPlot: String(index) }, children: [] };
}

/** The chart that a note's front matter asks for, after those of its text: its index, or null where there is none. */
export function leadPlot(writing: Writing, { lead }: Pick<Note, 'lead'>): number | null {
  if (lead === undefined) return null;
  const unknown = [...lead.attributes].filter(([name]) => !PLOT_ATTRIBUTES.includes(name));
  if (unknown.length === 0) return requested(writing, lead.attributes, lead.place);
  writing.problems.push(
    ...unknown.map(([name, { place }]) =>
      error('unknown-key', place, `\`lead\` has no key \`${name}\``, {
        expected: oneOf(PLOT_ATTRIBUTES),
        ...meant(name, PLOT_ATTRIBUTES),
      }),
    ),
  );
  return null;
}

/** Index of the plot asked for, or null after reporting what is wrong with the request. */
function requested(writing: Writing, attributes: RequestAttributes, place: Place): number | null {
  const request = readPlotRequest(attributes, runsOf(writing), place, idsOf(writing, 'attempts'), idsOf(writing, 'comparison'));
  if ('problems' in request) return refuse(writing, request.problems);
  const missing = missingChannels(writing, request, attributes);
  if (missing.length > 0) return refuse(writing, missing);
  const id = takeId(writing, request.id, attributes.get('id'));
  if (id === null) return null;
  return writing.plots.push({ ...request, id }) - 1;
}

/** Attributes with the places of their values. */
export function requestAttributes(writing: Writing, read: WrittenDirective): RequestAttributes {
  return new Map(read.attributes.map(({ name, value, valueStart }) => [name, { value, place: placeAt(writing, valueStart) }]));
}

/** Run ids by alias. */
function runsOf(writing: Writing): ReadonlyMap<string, string> {
  return idsOf(writing, 'run');
}

/** Run ids, and ids of what is quoted, by alias: what a table may have as columns. */
export function columnsOf(writing: Writing): ReadonlyMap<string, string> {
  return new Map([...runsOf(writing), ...idsOf(writing, 'quoted')]);
}

/** Ids of the subjects of a kind by alias. */
function idsOf({ subjects }: Writing, wanted: Subject['kind']): ReadonlyMap<string, string> {
  return new Map([...subjects].filter(([, { kind }]) => kind === wanted).map(([alias, { id }]) => [alias, id]));
}

function refuse(writing: Writing, problems: readonly Problem[]): null {
  writing.problems.push(...problems);
  return null;
}

/** Every run of a plot must have every channel that it asks for. */
function missingChannels({ subjects }: Writing, { runs, channels, place }: PlotRequest, attributes: RequestAttributes): Problem[] {
  const written = attributes.get('channels');
  return runs.flatMap(({ alias }) => {
    const names = subjects.get(alias)?.channels.map(({ name }) => name) ?? [];
    return channels
      .filter((channel) => !names.includes(channel))
      .map((channel) =>
        error('unknown-channel', placeOfWord(written, channel) ?? place, `no channel \`${channel}\` in \`${alias}\``, {
          expected: oneOf(names),
          ...meant(channel, names),
        }),
      );
  });
}

/** Where a word of a list stands. */
function placeOfWord(list: RequestAttribute | undefined, word: string): Place | undefined {
  const match = [...(list?.value.matchAll(/\S+/g) ?? [])].find(([found]) => found === word);
  return list && match && placeWithin(list.place, { start: match.index, end: match.index + word.length });
}

/** Ids of plots and tables are unique on a page: a made one gets a number, an author's own twice is an error. */
export function takeId({ ids, problems }: Writing, id: string, own: RequestAttribute | undefined): string | null {
  if (own && ids.has(id)) {
    problems.push(error('repeated-id', own.place, `the id \`${id}\` a second time`, { remedy: 'give one of the two another' }));
    return null;
  }
  let free = id;
  for (let count = 2; ids.has(free); count += 1) free = `${id}-${count}`;
  ids.add(free);
  return free;
}
