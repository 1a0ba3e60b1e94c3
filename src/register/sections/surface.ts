/** How a run names its surface readings: a path, or a mapping of the path and the instrument that took them. */
import type { Place } from '../../problem.ts';
import type { DataFiles } from '../register.ts';
import { dataPathOf } from '../values/data-path.ts';
import { meant, oneOf } from '../values/names.ts';
import { optional, readShape, shape, text } from '../values/shape.ts';
import type { Inherited, Reference } from '../values/stated-value.ts';
import type { MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import { referenceOf } from './shared-keys.ts';

const SURFACE = shape({ file: text, instrument: optional(text) });

export interface StatedSurface {
  readonly file: string;
  readonly instrument?: Reference;
}

/** @param place - of the key, where a missing file is reported. */
export function readSurfaceKey(
  node: TextNode | MapNode | undefined,
  place: Place,
  data: DataFiles,
  report: Report,
): StatedSurface | undefined {
  if (!node) return undefined;
  const fields = node.kind === 'text' ? undefined : readShape(SURFACE, node, '`surface`', place, report);
  const file = fields ? dataPathOf(fields.file, 'file', data, report) : dataPathOf(node as TextNode, 'surface', data, report);
  const instrument = referenceOf(fields?.instrument, 'instrument', report);
  return file === undefined ? undefined : { file, ...(instrument ? { instrument } : {}) };
}

/** Reports an instrument that is not in the run's list. */
export function checkSurface(surface: StatedSurface | undefined, { instruments }: Inherited, report: Report): void {
  const named = surface?.instrument;
  const listed = (instruments?.value ?? []).map((reference) => reference.value);
  if (!named || listed.includes(named.value)) return;
  const found = `the surface was read by \`${named.value}\`, which is not in the run's list of instruments`;
  report.error('instrument-not-listed', named.place, found, {
    expected: listed.length > 0 ? oneOf(listed) : 'a list `instruments` in the run or in its setup',
    remedy: meant(named.value, listed).remedy ?? `add \`${named.value}\` to \`instruments\``,
  });
}
