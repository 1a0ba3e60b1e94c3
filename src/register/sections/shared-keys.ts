/** Reads what setups and runs have in common. */
import { CRITERION_NAMES, DEFAULT_CRITERION } from '../../figures/thermal/criteria.ts';
import type { Place } from '../../problem.ts';
import { OWN_LICENCE, readLicence } from '../values/licence.ts';
import { list, map, optional, text, textOrList, textOrMap } from '../values/shape.ts';
import type { Reference, Shared } from '../values/stated-value.ts';
import { idOf, textsOf, wordOf } from '../values/values.ts';
import type { ListNode, MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import { CHANNEL, readChannels } from './channels.ts';
import { CONDITIONS_SHAPE, readConditions, readSetting } from './conditions.ts';
import { readPhases } from './phases.ts';
import { KNOWN, readKnown } from './repairs.ts';

/** Keys that a setup and a run share, for their shapes. */
export const SHARED_KEYS = {
  device: optional(text, 'the model under test; needed in the run or in its setup', { form: 'id' }),
  specimen: optional(text, 'the piece that was tested, by an alias of its serial; needed in the run or in its setup', {
    means: 'lower-case letters and digits in words joined by `-`',
  }),
  conditions: optional(map, 'what surrounded the test', { keys: { title: '`conditions`', shape: CONDITIONS_SHAPE } }),
  setting: optional(map, 'what was set for this run', {
    means: '`clock`, `voltage_offset` and names of your own, each with a number and its unit or with words',
    example: 'clock: 2.6 GHz',
  }),
  instruments: optional(textOrList, 'what measured; a list in a run takes the place of the one in its setup', { form: 'id' }),
  channels: optional(map, 'the columns that are read, each under a name; `none` in a run takes a channel of its setup away', {
    each: { title: 'a channel below `channels`', shape: CHANNEL },
  }),
  phases: optional(textOrMap, 'named stretches of the log, from and to since its first row', {
    means: '`auto`, which finds them, or names with `from .. to`',
    otherwise: 'no phases, and no figures of phases',
    example: 'auto',
  }),
  steady: optional(text, 'the criterion by which a temperature is steady', {
    words: CRITERION_NAMES,
    otherwise: DEFAULT_CRITERION,
  }),
  known: optional(list, 'warnings about the log that you can explain', { each: { title: 'an item of `known`', shape: KNOWN } }),
  licence: optional(textOrMap, 'how the data may be used', {
    means: 'an id of the SPDX licence list, or terms of your own',
    keys: { title: '`licence`', shape: OWN_LICENCE },
  }),
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
