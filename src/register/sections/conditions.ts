/** Conditions and settings of a run or setup: words, or quantities. */
import { MEASURED_AT, type MeasuredAt } from '../../intake/log.ts';
import { CONDITION_NAMES, CONDITIONS, type ConditionKind, type ConditionName } from '../values/condition-kinds.ts';
import { type NameRule, namedEntries, textIn } from '../values/mapping.ts';
import { isSnakeName, SNAKE_RULE, snakeFromWords } from '../values/names.ts';
import { AMBIENT, CLOCK, kindByName, SUPPLY, VOLTAGE_OFFSET } from '../values/quantity-kinds.ts';
import { isBareNumber, looseQuantity, measuredQuantity, statedQuantity } from '../values/quantity-value.ts';
import { optional, readShape, required, shape, text, textOrMap } from '../values/shape.ts';
import type { StatedCondition } from '../values/stated-value.ts';
import type { Takes } from '../values/takes.ts';
import { cut, wordOf } from '../values/values.ts';
import type { MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

type Reading = ConditionKind['reading'];
type Reader = (name: ConditionName, node: TextNode | MapNode, report: Report) => StatedCondition | undefined;

/** Kind of node that each reading takes, and what it makes of it. */
const READINGS: Readonly<Record<Reading, { readonly node: typeof text | typeof textOrMap; readonly read: Reader }>> = {
  ambient: { node: text, read: (_name, node, report) => ambientOf(node as TextNode, report) },
  supply: { node: textOrMap, read: (_name, node, report) => supplyOf(node, report) },
  words: { node: text, read: (name, node) => ({ name, text: (node as TextNode).text }) },
  'words or a quantity': { node: text, read: (name, node, report) => wordsOf(name, node as TextNode, report) },
};

const SUPPLY_KEYS = shape({
  voltage: required(text, 'the voltage', { quantity: SUPPLY }),
  at: optional(text, 'where it was measured', { words: MEASURED_AT, example: 'board input' }),
});

/** What a condition of each reading may be. */
const TAKES: Readonly<Record<Reading, Takes>> = {
  ambient: { quantity: AMBIENT },
  supply: { means: 'a voltage, with the place behind `at`', keys: { title: '`supply` below `conditions`', shape: SUPPLY_KEYS } },
  words: { form: 'words' },
  'words or a quantity': { means: 'words, or a number with its unit' },
};

export const CONDITIONS_SHAPE = shape(
  Object.fromEntries(
    CONDITION_NAMES.map((name) => {
      const { reading, about } = CONDITIONS[name];
      return [name, optional(READINGS[reading].node, about, TAKES[reading])];
    }),
  ),
);

/** The conditions that one file states, in the author's order. */
export function readConditions(node: MapNode | undefined, report: Report): Map<string, StatedCondition> {
  const read = new Map<string, StatedCondition>();
  if (!node) return read;
  const fields = readShape(CONDITIONS_SHAPE, node, '`conditions`', node.place, report);
  const conditions = CONDITION_NAMES.map((name) => {
    const value = fields[name];
    return value && READINGS[CONDITIONS[name].reading].read(name, value, report);
  });
  for (const name of node.entries.keys()) {
    const condition = conditions.find((each) => each?.name === name);
    if (condition) read.set(name, condition);
  }
  return read;
}

function ambientOf(node: TextNode, report: Report): StatedCondition | undefined {
  const quantity = statedQuantity(node, 'ambient', AMBIENT, report);
  return quantity && { name: 'ambient', text: quantity.text, quantity };
}

/** `5.1 V`, `5.1 V at board input`, or a mapping of `voltage` and `at`. */
function supplyOf(node: TextNode | MapNode, report: Report): StatedCondition | undefined {
  const { voltage, at } = node.kind === 'text' ? splitAt(node) : readShape(SUPPLY_KEYS, node, '`supply`', node.place, report);
  const place = wordOf(at, 'at', MEASURED_AT, report);
  const quantity = statedQuantity(voltage, 'supply', SUPPLY, report);
  if (!quantity) return undefined;
  return {
    name: 'supply',
    text: place ? `${quantity.text} at ${place}` : quantity.text,
    quantity,
    ...(place ? { at: place as MeasuredAt } : {}),
  };
}

function splitAt(node: TextNode): { voltage: TextNode; at?: TextNode } {
  const parts = /^(.*?)\s+at\s+(.*)$/s.exec(node.text);
  if (!parts) return { voltage: node };
  return { voltage: { ...node, text: parts[1]! }, at: { ...node, text: parts[2]! } };
}

/** Words, or a quantity where they read as one; a bare number lacks its unit. */
function wordsOf(name: ConditionName, node: TextNode, report: Report): StatedCondition | undefined {
  if (isBareNumber(node.text)) {
    report.error('number-without-unit', node.place, `\`${name}\` is \`${cut(node.text)}\`, a number without a unit`, {
      expected: 'words, or a number with its unit',
      remedy: `write the unit after the number, for instance \`${name}: ${CONDITIONS[name].example}\``,
    });
    return undefined;
  }
  const quantity = measuredQuantity(node.text);
  return { name, text: node.text, ...(quantity ? { quantity } : {}) };
}

const SETTING_NAMES: NameRule = {
  rule: 'bad-name',
  what: 'a setting',
  fits: isSnakeName,
  expected: SNAKE_RULE,
  better: snakeFromWords,
};

/** The settings that one file states: `clock` and `voltage_offset` are quantities, others what they look like. */
export function readSetting(node: MapNode | undefined, report: Report): Map<string, StatedCondition> {
  const read = new Map<string, StatedCondition>();
  if (!node) return read;
  for (const entry of namedEntries(node, SETTING_NAMES, report)) {
    const value = textIn(entry, report);
    const condition = value && settingOf(entry.key, value, report);
    if (condition) read.set(entry.key, condition);
  }
  return read;
}

function settingOf(name: string, node: TextNode, report: Report): StatedCondition | undefined {
  const known = name === 'clock' ? CLOCK : name === 'voltage_offset' ? VOLTAGE_OFFSET : undefined;
  const kind = known ?? (isBareNumber(node.text) ? kindByName(name) : undefined);
  if (kind) {
    const quantity = statedQuantity(node, name, kind, report);
    return quantity && { name, text: quantity.text, quantity };
  }
  const quantity = looseQuantity(node.text);
  if (quantity) return { name, text: node.text, quantity };
  if (!node.quoted && /^[+\-−]?\d[\d.,]*\s*\S+$/.test(node.text)) tellWords(name, node, report);
  return { name, text: node.text };
}

function tellWords(name: string, node: TextNode, report: Report): void {
  report.warning('quantity-as-words', node.place, `\`${name}\` is kept as words: \`${cut(node.text)}\` has no unit that is known`, {
    remedy: 'correct the unit, or put the value in quotes if it is words',
  });
}
