/** Phases: named stretches of a log, `from .. to` in elapsed time. */
import type { DeclaredPhase } from '../../figures/context.ts';
import { isParseFailure } from '../../quantities/parse.ts';
import { type NameRule, namedEntries, textIn } from '../values/mapping.ts';
import { idFromWords, isPhaseName } from '../values/names.ts';
import { isBareNumber, tryQuantity } from '../values/quantity-value.ts';
import { tellEmpty } from '../values/shape.ts';
import type { Stated } from '../values/stated-value.ts';
import { cut } from '../values/values.ts';
import type { MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

const EXPECTED = 'from and to since the first row, such as `5 .. 65 min`, or `5 min ..` to the end of the log';
const PHASE_NAMES: NameRule = {
  rule: 'bad-name',
  what: 'a phase',
  fits: isPhaseName,
  expected: 'lower-case letters and digits, in words joined by hyphens or underscores, beginning with a letter',
  better: idFromWords,
};

/** `auto`, or the declared phases in the author's order. Seconds; half open; the end may be Infinity. */
export function readPhases(
  node: TextNode | MapNode | undefined,
  report: Report,
): Stated<'auto' | readonly DeclaredPhase[]> | undefined {
  if (!node) return undefined;
  if (node.kind === 'text') {
    if (node.text === 'auto') return { value: 'auto', place: node.place };
    report.error('unknown-word', node.place, `\`phases\` is \`${cut(node.text)}\``, {
      expected: '`auto`, or a mapping such as `load: 5 .. 65 min`',
    });
    return undefined;
  }
  if (node.entries.size === 0) tellEmpty('phases', node.place, report);
  const phases: DeclaredPhase[] = [];
  for (const entry of namedEntries(node, PHASE_NAMES, report)) {
    const value = textIn(entry, report);
    const range = value && rangeOf(entry.key, value, report);
    if (range) phases.push({ name: entry.key, ...range, place: entry.keyPlace });
  }
  tellOverlaps(phases, report);
  return { value: phases, place: node.place };
}

function rangeOf(name: string, node: TextNode, report: Report): { from: number; to: number } | undefined {
  const refuse = (found: string): undefined => {
    report.error('bad-phase', node.place, `phase \`${name}\` is \`${cut(node.text)}\`${found}`, { expected: EXPECTED });
    return undefined;
  };
  const ends = /^([^.…–].*?)\s*\.\.(?!\.)\s*(.*)$/s.exec(node.text);
  if (!ends) return refuse('');
  const [left, right] = [ends[1]!, ends[2]!];
  const to = right === '' ? Number.POSITIVE_INFINITY : secondsOf(right);
  const unit = right.replace(/^[\d.,\s]+/, '');
  const from = secondsOf(isBareNumber(left) && unit !== '' ? `${left} ${unit}` : left);
  if (typeof to === 'string') return refuse(`: ${to}`);
  if (typeof from === 'string') return refuse(`: ${from}`);
  if (from < 0) return refuse(', which begins before the first row');
  if (to < from) return refuse(', which ends before it begins');
  if (to === from) return refuse(', which is empty');
  return { from, to };
}

/** Seconds, or what is wrong with an end. */
function secondsOf(text: string): number | string {
  if (/^0+$/.test(text)) return 0;
  if (isBareNumber(text)) return `\`${cut(text)}\` has no unit`;
  const read = tryQuantity(text);
  if (isParseFailure(read)) return read.failure;
  if (read.unit !== 's') return `\`${cut(text)}\` is not a time`;
  return (read.parts ?? []).length > 0 ? `\`${cut(text)}\` has an uncertainty` : read.value;
}

function tellOverlaps(phases: readonly DeclaredPhase[], report: Report): void {
  const inTime = [...phases].sort((a, b) => a.from - b.from || a.to - b.to);
  let latest = inTime[0];
  for (const phase of inTime.slice(1)) {
    if (latest && phase.from < latest.to) {
      const later = phases.indexOf(phase) > phases.indexOf(latest) ? phase : latest;
      const other = later === phase ? latest : phase;
      report.error('phases-overlap', later.place, `phase \`${later.name}\` overlaps \`${other.name}\``, {
        expected: 'stretches that share no time; one may begin where another ends',
        remedy: `\`${other.name}\` stands on line ${other.place.line}`,
      });
    }
    if (!latest || phase.to > latest.to) latest = phase;
  }
}
