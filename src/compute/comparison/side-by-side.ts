/** Setting, conditions and what else a run states, beside those of the other runs. */
import { allLogs } from '../../figures/figures-json.ts';
import { printQuantity } from '../../quantities/print.ts';
import type { Gathered, GatheredRun } from '../models/gathered.ts';
import type { ComparisonModel, ConditionRow } from '../results.ts';
import { ambientOf, isMeasured } from './fairness.ts';

/** Digits of a digest by which two logs are told apart at a glance; the whole one stands with the files. */
const DIGITS = 12;

const NOT_STATED = 'not stated';
const LOG = 'log, SHA-256';
const DATE = 'date';
/** Every run has its own: that they differ tells nothing. */
const OF_ITS_OWN: readonly string[] = [DATE, LOG];

/** What all runs share, and what any two differ in. */
export function sideBySide({ runs, reference }: Gathered): Pick<ComparisonModel, 'shared' | 'apart'> {
  const groups = runs.map(groupsOf);
  const stated = groups.map((each) => new Map(each.flat().map(({ label, text }) => [label, text])));
  const base = stated[runs.findIndex(({ alias }) => alias === reference)]!;
  const labels = [...new Set(groups[0]!.flatMap((_, g) => groups.flatMap((each) => each[g]!.map(({ label }) => label))))];
  const alike = labels.filter((label) => new Set(stated.map((rows) => rows.get(label))).size === 1);
  const text = (rows: ReadonlyMap<string, string>, label: string) => rows.get(label) ?? NOT_STATED;
  return {
    shared: alike.map((label) => ({ label, text: text(base, label) })),
    apart: labels
      .filter((label) => !alike.includes(label))
      .map((label) => ({
        label,
        cells: stated.map((rows) => ({
          text: text(rows, label),
          differs: !OF_ITS_OWN.includes(label) && text(rows, label) !== text(base, label),
        })),
      })),
  };
}

/** Setting first, then what was tested, how, and how it was read. */
function groupsOf(run: GatheredRun): ConditionRow[][] {
  const ambient = ambientOf(run);
  const instruments = run.instruments.map(({ title }) => title).join(', ');
  const places = [...new Set(run.channels.flatMap(({ at }) => (at === '' ? [] : [at])))].join(', ');
  return [
    [...run.setting],
    [
      { label: DATE, text: run.date },
      { label: 'device', text: run.device.title },
      { label: 'specimen', text: run.specimen },
    ],
    [
      ...run.conditions,
      ...(ambient !== null && isMeasured(run)
        ? [{ label: 'ambient, measured under load', text: printQuantity(ambient).text }]
        : []),
    ],
    [
      ...(instruments === '' ? [] : [{ label: 'instruments', text: instruments }]),
      ...(places === '' ? [] : [{ label: 'power measured at', text: places }]),
      { label: LOG, text: logsText(run) },
    ],
  ];
}

/** Beginnings of the digests of its logs. */
function logsText(run: GatheredRun): string {
  const logs = allLogs(run);
  return logs.length === 0 ? 'none' : logs.map(({ sha256 }) => `${sha256.slice(0, DIGITS)}…`).join(', ');
}
