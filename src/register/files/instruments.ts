/** content/instruments/<id>.md: what an instrument measures, how well, and on which side it is connected. */
import type { AccurateRange, Correction, InstrumentFacts } from '../../figures/context.ts';
import { QUANTITY_KINDS, type QuantityKind } from '../../intake/log.ts';
import { type Accuracy, parseAccuracy } from '../../quantities/accuracy.ts';
import { isParseFailure } from '../../quantities/parse.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import type { Instrument } from '../register.ts';
import { readAccurateRange, readCorrection } from '../sections/calibration.ts';
import { anyStep } from '../values/channel-step.ts';
import { mapIn } from '../values/mapping.ts';
import { meant, oneOf } from '../values/names.ts';
import { STEP_KIND } from '../values/quantity-kinds.ts';
import { isBareNumber, quantityOf, statedQuantity, tellFailure } from '../values/quantity-value.ts';
import { map, optional, readShape, required, shape, tellEmpty, text } from '../values/shape.ts';
import { itemOf, type SourceFile } from '../values/source-file.ts';
import { cut, wordOf } from '../values/values.ts';
import type { Entry, MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

const CONNECTED = ['mains side', 'low voltage side'] as const;
const MEASURE = shape({
  accuracy: optional(text, 'its limits of error, as the data sheet states them', {
    means: 'limits in the unit, in % of the reading, in digits, or a sum of them',
  }),
  resolution: optional(text, 'the last digit, or the smallest step, of its readings', {
    means: 'a number with the unit of the quantity',
  }),
  correction: optional(text, 'what is added to each reading, from a calibration', {
    means: 'a difference with its uncertainty',
    example: '−0.02 ± 0.01 A',
  }),
  accurate_from: optional(text, 'the lowest reading to which its accuracy applies; others are warned of', {
    means: 'a number with the unit of the quantity',
    example: '0.1 A',
  }),
  accurate_to: optional(text, 'the highest reading to which its accuracy applies', {
    means: 'a number with the unit of the quantity',
    example: '3 A',
  }),
});
export const INSTRUMENT = shape({
  title: required(text, 'its name, for readers', { form: 'words', example: 'Inline meter' }),
  connected: optional(text, 'the side on which it is connected; the mains side calls for a caution', { words: CONNECTED }),
  part_of: optional(text, 'a sensor that is part of the specimen, such as one on the die', { words: ['specimen'] }),
  measures: optional(map, 'how well it measures each quantity', {
    each: { title: 'a quantity below `measures`', shape: MEASURE },
    means: 'quantities, each with what is known of it',
  }),
});

interface Measure {
  readonly quantity: QuantityKind;
  readonly accuracy?: Accuracy;
  readonly resolution?: Quantity;
  readonly correction?: Correction;
  readonly accurate?: AccurateRange;
}

export function readInstrument(source: SourceFile, report: Report): Instrument {
  const fields = readShape(INSTRUMENT, source.root, 'an instrument', source.start, report);
  const item = itemOf(source, fields.title, report);
  const connected = wordOf(fields.connected, 'connected', CONNECTED, report);
  const partOf = wordOf(fields.part_of, 'part_of', ['specimen'], report);
  const measures = measuresOf(fields.measures, source.id, report);
  const facts: InstrumentFacts = {
    id: source.id,
    title: item.title,
    ...(connected ? { connected } : {}),
    partOfSpecimen: partOf === 'specimen',
    accuracy: byQuantity(measures, ({ accuracy }) => accuracy),
    resolution: byQuantity(measures, ({ resolution }) => resolution),
    ...(measures.some(({ correction }) => correction) ? { correction: byQuantity(measures, ({ correction }) => correction) } : {}),
    ...(measures.some(({ accurate }) => accurate) ? { accurate: byQuantity(measures, ({ accurate }) => accurate) } : {}),
  };
  return { ...item, facts };
}

function byQuantity<T>(
  measures: readonly Measure[],
  stated: (measure: Measure) => T | undefined,
): Partial<Record<QuantityKind, T>> {
  return Object.fromEntries(measures.map((each) => [each.quantity, stated(each)]).filter(([, value]) => value !== undefined));
}

function measuresOf(node: MapNode | undefined, id: string, report: Report): Measure[] {
  if (!node) return [];
  if (node.entries.size === 0) tellEmpty('measures', node.place, report);
  return [...node.entries.values()].flatMap((entry) => {
    const quantity = QUANTITY_KINDS.find((kind) => kind === entry.key);
    if (!quantity) {
      report.error('unknown-key', entry.keyPlace, `\`measures\` has no key \`${cut(entry.key)}\``, {
        expected: oneOf(QUANTITY_KINDS),
        ...meant(entry.key, QUANTITY_KINDS),
      });
      return [];
    }
    const measure = measureOf(quantity, entry, id, report);
    return measure ? [measure] : [];
  });
}

function measureOf(quantity: QuantityKind, entry: Entry, id: string, report: Report): Measure | undefined {
  if (entry.value.kind === 'empty') {
    report.error('empty-value', entry.keyPlace, `\`${quantity}\` has no value`, {
      remedy: 'state `accuracy` or `resolution` below it, or remove the key',
    });
    return undefined;
  }
  const node = mapIn(entry, report);
  if (!node) return undefined;
  const fields = readShape(MEASURE, node, `\`${quantity}\` of an instrument`, entry.keyPlace, report);
  const resolution = resolutionOf(fields.resolution, quantity, id, report);
  const accuracy = accuracyOf(fields.accuracy, quantity, report);
  if (accuracy && accuracy.digits > 0 && !fields.resolution) {
    report.error('no-resolution', fields.accuracy!.place, `\`accuracy\` counts digits: \`${cut(accuracy.text)}\``, {
      expected: 'a `resolution`, which says what the last digit is worth',
      remedy: `add for instance \`resolution: ${STEP_KIND[quantity]?.example ?? '1'}\``,
    });
  }
  const correction = readCorrection(fields.correction, quantity, report);
  const accurate = readAccurateRange(fields, quantity, report);
  return {
    quantity,
    ...(accuracy ? { accuracy } : {}),
    ...(resolution ? { resolution } : {}),
    ...(correction ? { correction } : {}),
    ...(accurate ? { accurate } : {}),
  };
}

function resolutionOf(node: TextNode | undefined, quantity: QuantityKind, id: string, report: Report): Quantity | undefined {
  if (!node) return undefined;
  const kind = STEP_KIND[quantity];
  const stated = kind ? statedQuantity(node, 'resolution', kind, report) : anyStep(node, 'resolution', report);
  return stated && quantityOf(stated, `instrument:${id}/${quantity}/resolution`, `resolution of ${id}`);
}

function accuracyOf(node: TextNode | undefined, quantity: QuantityKind, report: Report): Accuracy | undefined {
  if (!node) return undefined;
  const example = STEP_KIND[quantity]?.example ?? '0.5 %';
  const expected = `limits as a data sheet states them, such as \`0.5 % + 2 digits\` or \`± ${example}\``;
  if (isBareNumber(node.text.replace(/^(?:±|\+\/?-)\s*/, ''))) {
    report.error('number-without-unit', node.place, `\`accuracy\` is \`${cut(node.text)}\`, a number without a unit`, { expected });
    return undefined;
  }
  const read = parseAccuracy(node.text);
  if (isParseFailure(read)) return tellFailure(node, 'accuracy', read, 'bad-accuracy', report);
  const unit = STEP_KIND[quantity]?.unit;
  if (read.unit === undefined || unit === undefined || read.unit === unit) return read;
  report.error('bad-accuracy', node.place, `\`accuracy\` of ${quantity} is \`${cut(node.text)}\`, in ${read.unit}`, { expected });
  return undefined;
}
