/** content/devices/<id>.md: a model's ratings and limits. */

import type { Device } from '../register.ts';
import { readFormer } from '../sections/former-addresses.ts';
import { type NameRule, namedEntries, textIn } from '../values/mapping.ts';
import { isSnakeName, SNAKE_RULE, snakeFromWords } from '../values/names.ts';
import { CLOCK, TEMPERATURE, VOLTAGE } from '../values/quantity-kinds.ts';
import { quantityOf, type StatedQuantity, statedQuantity } from '../values/quantity-value.ts';
import { optional, readShape, required, shape, tellEmpty, text, textOrList, textOrMap } from '../values/shape.ts';
import { itemOf, type SourceFile } from '../values/source-file.ts';
import { lineOf, wordOf, yesNoOf } from '../values/values.ts';
import type { MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

const POWER = ['mains', 'adapter', 'battery'] as const;

export const DEVICE = shape({
  title: required(text, 'the name of the model, for readers', { form: 'words', example: 'Larch 2' }),
  maker: required(text, 'who makes it', { form: 'words' }),
  invented: optional(text, 'the device and its numbers are made up; its pages say so', { form: 'yes or no', otherwise: 'no' }),
  rated_clock: optional(text, "the maker's clock; a setting above it calls for a caution", { quantity: CLOCK }),
  throttle_at: optional(textOrMap, 'the temperature at which it throttles: of the primary temperature, or one for each channel', {
    quantity: TEMPERATURE,
    example: '95 °C',
  }),
  supply: optional(text, "the maker's supply voltage", { quantity: VOLTAGE }),
  power: optional(text, 'what feeds it; mains and batteries call for cautions', { words: POWER }),
  was: optional(textOrList, 'where it stood before, so that old links still lead to it', {
    form: 'page',
    example: 'devices/old-id/',
  }),
});

/** Key of a throttle limit that is stated without a channel: it is that of a run's primary temperature. */
export const PRIMARY = '*';

export function readDevice(source: SourceFile, report: Report): Device {
  const fields = readShape(DEVICE, source.root, 'a device', source.start, report);
  const rating = (stated: StatedQuantity, key: string) =>
    quantityOf(stated, `device:${source.id}/${key}`, `${key.replace(/[._]/g, ' ')} of ${source.id}`);
  const ratedClock = statedQuantity(fields.rated_clock, 'rated_clock', CLOCK, report);
  const supply = statedQuantity(fields.supply, 'supply', VOLTAGE, report);
  const power = wordOf(fields.power, 'power', POWER, report);
  const limits = limitsOf(fields.throttle_at, report);
  return {
    ...itemOf(source, fields.title, report),
    maker: makerOf(fields.maker, report),
    invented: yesNoOf(fields.invented, 'invented', report) ?? false,
    ...(ratedClock ? { ratedClock: rating(ratedClock, 'rated_clock') } : {}),
    throttleAt: Object.fromEntries(
      limits.map(([channel, limit]) => [channel, rating(limit, channel === PRIMARY ? 'throttle_at' : `throttle_at.${channel}`)]),
    ),
    ...(supply ? { supply: rating(supply, 'supply') } : {}),
    ...(power ? { power } : {}),
    ...readFormer(fields.was, 'devices', source, report),
  };
}

/** What `add` and `new` write until somebody states the maker. */
export const NO_MAKER = 'not stated';

function makerOf(node: TextNode | undefined, report: Report): string {
  if (node?.text.toLowerCase() === NO_MAKER)
    report.warning('maker-not-stated', node.place, `\`maker\` is \`${node.text}\``, {
      expected: 'who makes the device',
      remedy: 'write the name of the maker, or `unknown` where nobody can tell',
    });
  return lineOf(node, 'maker', report) ?? '';
}

const CHANNEL_NAMES: NameRule = {
  rule: 'bad-name',
  what: 'a channel',
  fits: isSnakeName,
  expected: SNAKE_RULE,
  better: snakeFromWords,
};

function limitsOf(node: TextNode | MapNode | undefined, report: Report): (readonly [string, StatedQuantity])[] {
  if (!node) return [];
  if (node.kind === 'text') {
    const limit = statedQuantity(node, 'throttle_at', TEMPERATURE, report);
    return limit ? [[PRIMARY, limit]] : [];
  }
  if (node.entries.size === 0) tellEmpty('throttle_at', node.place, report);
  return namedEntries(node, CHANNEL_NAMES, report).flatMap((entry) => {
    const limit = statedQuantity(textIn(entry, report), entry.key, TEMPERATURE, report);
    return limit ? [[entry.key, limit] as const] : [];
  });
}
