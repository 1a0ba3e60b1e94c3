/** One specimen over dates and firmware: its runs that are alike in all else. */
import type { ComparedRun } from '../../figures/comparison/compared.ts';
import { clockDelta, powerDelta, riseDelta } from '../../figures/comparison/differences.ts';
import type { Pair } from '../../figures/comparison/relative.ts';
import { type Figure, isPresent } from '../../figures/figure.ts';
import { groupsOf } from '../../figures/repeats/groups.ts';
import { likenessOf } from '../../register/likeness.ts';
import type { ShownFigure, TimelineModel } from '../results.ts';
import type { ComputedRun } from './parts.ts';
import { conditionRows, runLink, settingText, shownFigure } from './shown.ts';

/** What time and firmware may change, with the difference against the first run. */
const COLUMNS: readonly { readonly name: string; readonly difference: (pair: Pair) => Figure }[] = [
  { name: 'temperature_rise', difference: riseDelta },
  { name: 'mean_clock', difference: clockDelta },
  { name: 'load_power', difference: powerDelta },
];

/** The day brings the ambient; the firmware is what a timeline is read for. */
const APART = ['ambient', 'firmware'];

type Row = TimelineModel['rows'][number];

/** A timeline of each two or more runs of one specimen that differ in date, firmware and ambient alone, by their first date. */
export function timelinesOf(runs: readonly ComputedRun[]): TimelineModel[] {
  const byId = new Map(runs.map((computed) => [computed.run.id, computed]));
  const alike = groupsOf(
    runs.map(({ run, derived }) => {
      const { id, specimen, date } = run;
      return { run: id, specimen, date, likeness: likenessOf(run, APART), figures: derived.figures };
    }),
  );
  return alike.filter((group) => group.runs.length > 1).map((group) => timelineOf(group.runs.map(({ run }) => byId.get(run)!)));
}

function timelineOf(runs: readonly ComputedRun[]): TimelineModel {
  const first = runs[0]!;
  const rows = runs.map((computed) => rowOf(computed, first));
  return {
    setting: settingText(first.run),
    conditions: conditionRows(first.run.conditions.filter(({ name }) => !APART.includes(name))),
    columns: rows[0]!.cells.map(({ figure: { name, label } }) => ({ name, label })),
    rows,
  };
}

function rowOf(computed: ComputedRun, first: ComputedRun): Row {
  const { run, derived } = computed;
  const pair: Pair = { run: comparedRun(computed), reference: comparedRun(first), tests: [] };
  return {
    link: runLink(run),
    date: run.date,
    firmware: run.conditions.find(({ name }) => name === 'firmware')?.text ?? '',
    cells: COLUMNS.map(({ name, difference }) => ({
      figure: shownFigure(name, figureAt(derived.figures, name)),
      difference: computed === first ? null : shownDifference(pair, name, difference),
    })),
  };
}

function comparedRun({ run, derived }: ComputedRun): ComparedRun {
  return { alias: run.title, run: run.id, device: run.device, specimen: run.specimen, figures: derived.figures };
}

/** The run's page tells why a figure is absent: a difference of it has nothing to add. The column says of what it is; a power's place stays. */
function shownDifference(pair: Pair, name: string, difference: (pair: Pair) => Figure): ShownFigure | null {
  const both = [pair.run, pair.reference].every(({ figures }) => isPresent(figureAt(figures, name)));
  if (!both) return null;
  const figure = difference(pair);
  const { channel: _channel, ...of } = figure.of ?? {};
  return shownFigure(name, { ...figure, of });
}

/** Every run has each of these figures, present or absent; a log without the channel has it absent. */
function figureAt(figures: ReadonlyMap<string, Figure>, name: string): Figure {
  return figures.get(name) ?? { name, absent: 'no-channel', why: 'The log has no channel for it.' };
}
