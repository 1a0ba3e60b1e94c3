/** content/quoted/<id>.md: figures that somebody else published, with their source. */
import { CATALOGUE, definitionOf, type FigureName } from '../../figures/catalogue.ts';
import type { PresentFigure } from '../../figures/figure.ts';
import { isParseFailure } from '../../quantities/parse.ts';
import type { Condition, Quoted } from '../register.ts';
import { httpsOf } from '../values/address.ts';
import { textIn } from '../values/mapping.ts';
import { meant } from '../values/names.ts';
import { isBareNumber, quantityOf, tellFailure, tryQuantity } from '../values/quantity-value.ts';
import { map, optional, readShape, required, shape, tellEmpty, text } from '../values/shape.ts';
import { itemOf, type SourceFile } from '../values/source-file.ts';
import { cut, dateOf, lineOf } from '../values/values.ts';
import type { Entry, MapNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

const SOURCE = shape({
  author: required(text, 'who published it', { form: 'words', example: 'R. Fern' }),
  address: required(text, 'where it can be read', { form: 'address', example: 'https://articles.example/boxes' }),
  date: optional(text, 'the day of its publication', { form: 'day' }),
  accessed: required(text, 'the day on which you read it', { form: 'day', example: '2026-03-01' }),
});
export const QUOTED = shape({
  title: required(text, 'the title of what is quoted', { form: 'words', example: 'Hot little boxes' }),
  source: required(map, 'who published it, where and when', { keys: { title: '`source`', shape: SOURCE } }),
  device: optional(text, "the device, in the source's words", { form: 'words', example: 'the same model, another specimen' }),
  conditions: optional(map, "the conditions, in the source's words", { means: 'names with words', example: 'cooling: a fan' }),
  setting: optional(map, "the setting, in the source's words", { means: 'names with words', example: 'clock: 2.4 GHz' }),
  figures: required(map, 'the figures that the source states, with `±` where it does', {
    means: 'names of figures, each with a number and its unit',
    example: 'steady_temperature: 71 °C',
  }),
});

export function readQuoted(source: SourceFile, report: Report): Quoted {
  const fields = readShape(QUOTED, source.root, 'a quoted file', source.start, report);
  const { author, address, date, accessed } = fields.source
    ? readShape(SOURCE, fields.source, '`source`', source.placeOf('source'), report)
    : {};
  const by = lineOf(author, 'author', report) ?? '';
  const published = dateOf(date, 'date', report);
  const device = lineOf(fields.device, 'device', report);
  const words = `${by}${published === undefined ? '' : `, ${published.slice(0, 4)}`}`;
  return {
    ...itemOf(source, fields.title, report),
    source: {
      author: by,
      address: httpsOf(address, 'address', report) ?? '',
      ...(published === undefined ? {} : { date: published }),
      accessed: dateOf(accessed, 'accessed', report) ?? '',
    },
    ...(device === undefined ? {} : { device }),
    conditions: [...wordsOf(fields.setting, report), ...wordsOf(fields.conditions, report)],
    figures: new Map(
      [...(fields.figures?.entries.values() ?? [])].flatMap((entry) => {
        const figure = figureOf(entry, source, words, report);
        return figure ? [[entry.key, figure] as const] : [];
      }),
    ),
  };
}

/** As the source states them: words under names of its own. */
function wordsOf(node: MapNode | undefined, report: Report): Condition[] {
  return [...(node?.entries.values() ?? [])].flatMap((entry) => {
    if (entry.value.kind === 'empty') tellEmpty(entry.key, entry.keyPlace, report);
    const line = entry.value.kind === 'empty' ? undefined : lineOf(textIn(entry, report), entry.key, report);
    return line === undefined ? [] : [{ name: entry.key, text: line }];
  });
}

/** Only what has one unit in the catalogue can be held against one's own. */
const NAMES = CATALOGUE.filter(
  ({ unit }) => unit !== '' && !isParseFailure(tryQuantity(`1 ${unit === '1' ? '' : unit}`, { bare: true })),
);

function figureOf(entry: Entry, { id, file }: SourceFile, words: string, report: Report): PresentFigure | undefined {
  const [name = ''] = entry.key.split('.');
  const definition = NAMES.find((each) => each.name === name) && definitionOf(name);
  if (!definition) {
    const names = NAMES.map((each) => each.name as string);
    report.error('bad-quoted', entry.keyPlace, `\`${cut(entry.key)}\` is not a figure that can be quoted`, {
      expected: 'the name of a figure, such as `steady_temperature` or `load_power`',
      ...meant(name, names),
    });
    return undefined;
  }
  if (entry.value.kind === 'empty') tellEmpty(entry.key, entry.keyPlace, report);
  const node = entry.value.kind === 'empty' ? undefined : textIn(entry, report);
  if (!node) return undefined;
  const { unit } = definition;
  const options = {
    unstated: 'unknown' as const,
    ...(unit === '°C' ? { kind: 'temperature' as const } : unit === 'K' ? { kind: 'difference' as const } : {}),
    ...(unit === '1' ? { bare: true } : {}),
  };
  if (isBareNumber(node.text) && unit !== '1') {
    report.error('number-without-unit', node.place, `\`${entry.key}\` is \`${cut(node.text)}\`, a number without a unit`, {
      remedy: `write the unit after the number, for instance \`${entry.key}: 71 ${unit}\``,
    });
    return undefined;
  }
  const read = tryQuantity(node.text, options);
  if (isParseFailure(read)) return tellFailure(node, entry.key, read, 'bad-quantity', report);
  if (read.unit !== unit) {
    report.error('wrong-unit', node.place, `\`${entry.key}\` is \`${cut(node.text)}\``, { expected: `a value in ${unit}` });
    return undefined;
  }
  return {
    name: definition.name as FigureName,
    quantity: quantityOf(
      { text: node.text, options },
      `quoted:${id}/${entry.key}`,
      `${entry.key.replaceAll('_', ' ')} as ${words} states it`,
    ),
    from: { columns: [], rows: null, file },
    of: { quoted: words },
  };
}
