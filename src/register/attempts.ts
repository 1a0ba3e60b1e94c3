/** content/attempts/<id>.md: settings tried on a specimen, in a CSV, and what came of each. */
import { dataPathOf } from './data-path.ts';
import type { DataFiles } from './read.ts';
import type { Attempts } from './register.ts';
import type { Report } from './report.ts';
import { readShape, shape, text } from './shape.ts';
import { referenceOf } from './shared.ts';
import { itemOf, type SourceFile } from './source-file.ts';
import type { Reference } from './stated.ts';
import { idOf } from './values.ts';

const ATTEMPTS = shape({ title: text, device: text, specimen: text, table: text });

export interface StatedAttempts {
  readonly device: Reference | undefined;
  readonly attempts: Attempts;
}

export function readAttempts(source: SourceFile, data: DataFiles, report: Report): StatedAttempts {
  const fields = readShape(ATTEMPTS, source.root, 'an attempts file', source.start, report);
  const device = referenceOf(fields.device, 'device', report);
  return {
    device,
    attempts: {
      ...itemOf(source, fields.title, report),
      device: device?.value ?? '',
      specimen: idOf(fields.specimen, 'specimen', report) ?? '',
      table: dataPathOf(fields.table, 'table', data, report) ?? '',
    },
  };
}
