/** Repairs: which lines of a log are dropped or shifted in time, each with a reason; and what is known of other lines. */
import type { Known, Repair } from '../../intake/log.ts';
import type { Place } from '../../problem.ts';
import { keyPlace, mapsOf } from '../values/mapping.ts';
import { TIME } from '../values/quantity-kinds.ts';
import { quantityOf, statedQuantity } from '../values/quantity-value.ts';
import { optional, readShape, required, shape, text, textOrList } from '../values/shape.ts';
import { cut, lineOf, textsOf } from '../values/values.ts';
import type { ListNode, MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

export const REPAIR = shape({
  drop: optional(text, 'lines that are left out', { form: 'lines', example: '323' }),
  shift_time: optional(text, 'lines whose time is shifted', { form: 'lines', example: '400 .. 460' }),
  by: optional(text, 'how far they are shifted', { quantity: TIME, example: '3600 s' }),
  log: optional(text, 'the log that has these lines, where there are several', {
    form: 'name',
    otherwise: 'the first log',
    example: 'meter',
  }),
  reason: required(text, 'why, for readers', { form: 'words' }),
});

/** The repairs of a run, in the author's order. Line numbers are those of the file, 1-based, both ends included. */
export function readRepairs(list: ListNode | undefined, place: Place, report: Report): Repair[] {
  return mapsOf(list, 'repairs', place, report).flatMap((node) => {
    const repair = report.whole(() => repairOf(node, report));
    return repair ? [repair] : [];
  });
}

function repairOf(node: MapNode, report: Report): Repair | undefined {
  const fields = readShape(REPAIR, node, 'a repair', node.place, report);
  const reason = lineOf(fields.reason, 'reason', report) ?? '';
  const place = node.place;
  const of = fields.log ? { log: fields.log.text } : {};
  if (!fields.drop === !fields.shift_time) {
    const found = fields.drop
      ? 'a repair cannot both drop and shift the same lines'
      : 'a repair says neither `drop` nor `shift_time`';
    report.error('bad-repair', place, found, { expected: 'one of `drop` and `shift_time`, with the lines of the log' });
    return undefined;
  }
  if (fields.drop) {
    if (fields.by) report.error('bad-repair', fields.by.place, '`by` goes with `shift_time` only', { remedy: 'remove this line' });
    const lines = linesOf(fields.drop, 'drop', report);
    return lines && { kind: 'drop', ...lines, reason, place, ...of };
  }
  const lines = linesOf(fields.shift_time!, 'shift_time', report);
  const bySeconds = shiftOf(fields.by, place, report);
  return lines && bySeconds !== undefined ? { kind: 'shift_time', ...lines, bySeconds, reason, place, ...of } : undefined;
}

export const KNOWN = shape({
  lines: optional(text, 'lines of the log', { form: 'lines' }),
  log: optional(text, 'the log that has these lines, where there are several', {
    form: 'name',
    otherwise: 'the first log',
    example: 'meter',
  }),
  channel: optional(text, 'a channel with few readings', { form: 'name', example: 'ssd' }),
  channels: optional(textOrList, 'several channels with few readings', { form: 'name', example: '[ssd, room]' }),
  phase: optional(text, 'a phase whose edges the log shows elsewhere', { means: 'the name of a phase', example: 'load' }),
  reason: required(text, 'why, for readers', { form: 'words' }),
});

/** Lines, channels and phases of which the author says why something is not as it should be, in his order; a setup's are of all its runs. */
export function readKnown(items: ListNode | undefined, of: 'run' | 'setup', place: Place, report: Report): Known[] {
  const ofSetup = of === 'setup' ? { ofSetup: true as const } : {};
  return mapsOf(items, 'known', place, report).flatMap((node) => {
    const known = report.whole((): Known[] | undefined => {
      const fields = readShape(KNOWN, node, 'an entry of `known`', node.place, report);
      const reason = lineOf(fields.reason, 'reason', report) ?? '';
      const { lines: at, channel, channels, phase } = fields;
      const said = [at, channel, channels, phase].filter((each) => each !== undefined).length;
      if (said !== 1) {
        const found =
          said > 1
            ? 'an entry of `known` says more than one of `lines`, `channel` and `phase`'
            : 'an entry of `known` says none of `lines`, `channel` and `phase`';
        const expected = 'the lines of the log, the channel that has few readings, or the phase that the log shows elsewhere';
        report.error('bad-known', node.place, found, { expected });
        return undefined;
      }
      const named = channel ? [channel] : (textsOf(channels, 'channels', keyPlace(node, 'channels'), report) ?? []);
      if (channel || channels) return named.map((each) => ({ channel: each.text, reason, place: each.place, ...ofSetup }));
      if (phase) return [{ phase: phase.text, reason, place: phase.place, ...ofSetup }];
      if (of === 'setup') {
        report.error('bad-known', at!.place, '`known` of a setup names `lines`', {
          expected: 'the channels or the phase that it is about: lines are of one log',
          remedy: 'say it in the run whose log has these lines',
        });
        return undefined;
      }
      const lines = linesOf(at!, 'lines', report);
      return lines && [{ ...lines, reason, place: node.place, ...(fields.log ? { log: fields.log.text } : {}) }];
    });
    return known ?? [];
  });
}

function linesOf(node: TextNode, key: string, report: Report): { fromLine: number; toLine: number } | undefined {
  const parts = /^([1-9]\d{0,8})(?:\s*\.\.\s*([1-9]\d{0,8}))?$/.exec(node.text);
  const fromLine = Number(parts?.[1]);
  const toLine = Number(parts?.[2] ?? parts?.[1]);
  if (parts && toLine >= fromLine) return { fromLine, toLine };
  report.error('bad-repair', node.place, `\`${key}\` is \`${cut(node.text)}\``, {
    expected: 'lines of the log, numbered from 1: one such as `12`, or first and last such as `12..15`',
  });
  return undefined;
}

function shiftOf(node: TextNode | undefined, place: Place, report: Report): number | undefined {
  if (!node) {
    report.error('missing-key', place, 'a repair that shifts time needs the key `by`', {
      remedy: 'write for instance `by: 3600 s`',
    });
    return undefined;
  }
  const stated = statedQuantity(node, 'by', TIME, report);
  const seconds = stated && quantityOf(stated, 'check', '').value;
  if (seconds !== 0) return seconds;
  report.error('bad-repair', node.place, 'a shift by nothing is no repair', { remedy: 'state the shift, or remove the repair' });
  return undefined;
}
