/** content/attempts/<id>.md: settings tried on a specimen, in a CSV, and what came of each. */
import type { PassCriterion } from '../../figures/stability/ladder.ts';
import { TABLE_FORMS } from '../../figures/table-layout.ts';
import type { Place } from '../../problem.ts';
import type { Attempts, DataFiles } from '../register.ts';
import { referenceOf } from '../sections/shared-keys.ts';
import { readTableKey, TABLE, tellNoFile } from '../sections/table.ts';
import { TEMPERATURE, TIME } from '../values/quantity-kinds.ts';
import { quantityOf, statedQuantity } from '../values/quantity-value.ts';
import { map, optional, readShape, required, shape, text, textOrMap } from '../values/shape.ts';
import { itemOf, type SourceFile } from '../values/source-file.ts';
import type { Reference } from '../values/stated-value.ts';
import { idOf, lineOf } from '../values/values.ts';
import type { MapNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

/** A soak of no time is none. */
const DURATION = { ...TIME, example: '60 min', above: 0 };
const PASSED = shape({
  test: optional(text, 'the test that was passed', { form: 'words' }),
  duration: optional(text, 'how long it ran', { quantity: DURATION }),
  ambient: optional(text, 'the ambient at which it ran', { quantity: TEMPERATURE }),
});
export const ATTEMPTS = shape({
  title: required(text, 'what was tried, for readers', { form: 'words', example: 'Settings tried on specimen no-1' }),
  device: required(text, 'the model under test', { form: 'id' }),
  specimen: required(text, 'the piece that was tested', { means: 'lower-case letters and digits in words joined by `-`' }),
  table: required(textOrMap, 'the table of attempts', { form: 'path', keys: { title: '`table` of attempts', shape: TABLE } }),
  passed: optional(map, 'what "passed" means', { keys: { title: '`passed`', shape: PASSED } }),
});

export interface StatedAttempts {
  readonly device: Reference | undefined;
  readonly attempts: Attempts;
}

export function readAttempts(source: SourceFile, data: DataFiles, report: Report): StatedAttempts {
  const fields = readShape(ATTEMPTS, source.root, 'an attempts file', source.start, report);
  const device = referenceOf(fields.device, 'device', report);
  const table = readTableKey(fields.table, 'table', TABLE_FORMS.attempts, data, report);
  if (table && table.file === undefined) tellNoFile(table, 'table', report);
  return {
    device,
    attempts: {
      ...itemOf(source, fields.title, report),
      device: device?.value ?? '',
      specimen: idOf(fields.specimen, 'specimen', report) ?? '',
      table: table?.file ?? '',
      ...(table && Object.keys(table.mapping).length > 0 ? { mapping: table.mapping } : {}),
      ...(fields.passed ? { passed: passedOf(fields.passed, source.placeOf('passed'), report) } : {}),
    },
  };
}

/** What "passed" means; what is left out here, the table's columns of the same names may say of each row. */
function passedOf(node: MapNode, place: Place, report: Report): Partial<PassCriterion> {
  const fields = readShape(PASSED, node, '`passed`', place, report);
  const test = lineOf(fields.test, 'test', report);
  const duration = statedQuantity(fields.duration, 'duration', DURATION, report);
  const ambient = statedQuantity(fields.ambient, 'ambient', TEMPERATURE, report);
  return {
    ...(test === undefined ? {} : { test }),
    ...(duration ? { duration: quantityOf(duration, 'passed/duration', '').value } : {}),
    ...(ambient ? { ambient: ambient.text } : {}),
  };
}
