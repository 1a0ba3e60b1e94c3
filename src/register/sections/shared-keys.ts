/** Reads what setups and runs have in common. */
import { CRITERION_NAMES } from '../../figures/thermal/criteria.ts';
import type { Place } from '../../problem.ts';
import { readLicence } from '../values/licence.ts';
import { list, map, optional, text, textOrList, textOrMap } from '../values/shape.ts';
import type { Reference, Shared } from '../values/stated-value.ts';
import { idOf, textsOf, wordOf } from '../values/values.ts';
import type { ListNode, MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import { readChannels } from './channels.ts';
import { readConditions, readSetting } from './conditions.ts';
import { readPhases } from './phases.ts';
import { readKnown } from './repairs.ts';

/** Keys that a setup and a run share, for their shapes. */
export const SHARED_KEYS = {
  device: optional(text),
  specimen: optional(text),
  conditions: optional(map),
  setting: optional(map),
  instruments: optional(textOrList),
  channels: optional(map),
  phases: optional(textOrMap),
  steady: optional(text),
  known: optional(list),
  licence: optional(textOrMap),
};

export interface SharedFields {
  readonly device?: TextNode | undefined;
  readonly specimen?: TextNode | undefined;
  readonly conditions?: MapNode | undefined;
  readonly setting?: MapNode | undefined;
  readonly instruments?: TextNode | ListNode | undefined;
  readonly channels?: MapNode | undefined;
  readonly phases?: TextNode | MapNode | undefined;
  readonly steady?: TextNode | undefined;
  readonly known?: ListNode | undefined;
  readonly licence?: TextNode | MapNode | undefined;
}

/**
 * @param inherits - true where a setup stands behind, so that a channel may be taken away.
 * @param places - of the file's keys, for problems of a whole list.
 */
export function readShared(
  fields: SharedFields,
  of: 'run' | 'setup',
  inherits: boolean,
  places: (key: string) => Place,
  report: Report,
): Shared {
  const device = referenceOf(fields.device, 'device', report);
  const specimen = idOf(fields.specimen, 'specimen', report);
  const ids = textsOf(fields.instruments, 'instruments', places('instruments'), report)?.flatMap(
    (node) => referenceOf(node, 'instruments', report) ?? [],
  );
  const phases = readPhases(fields.phases, report);
  const steady = wordOf(fields.steady, 'steady', CRITERION_NAMES, report);
  const licence = readLicence(fields.licence, places('licence'), report);
  return {
    ...(device ? { device } : {}),
    ...(specimen === undefined ? {} : { specimen }),
    conditions: readConditions(fields.conditions, report),
    setting: readSetting(fields.setting, report),
    ...(ids ? { instruments: { value: ids, place: places('instruments') } } : {}),
    ...readChannels(fields.channels, inherits, report),
    ...(phases ? { phases } : {}),
    ...(steady === undefined ? {} : { steady }),
    known: readKnown(fields.known, of, places('known'), report),
    ...(licence ? { licence } : {}),
  };
}

/** The id of another file, with its place. */
export function referenceOf(node: TextNode | undefined, key: string, report: Report): Reference | undefined {
  const id = idOf(node, key, report);
  return id === undefined ? undefined : { value: id, place: node!.place };
}
