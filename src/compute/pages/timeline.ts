/** One specimen over dates and firmware: its runs that are alike in all else. */
import type { FigureName } from '../../figures/catalogue.ts';
import { alone, type ComparedRun } from '../../figures/comparison/compared.ts';
import { settled } from '../../figures/comparison/settings.ts';
import { differencesTo } from '../../figures/comparison/side-by-side.ts';

import type { Figure, FigureMap } from '../../figures/figure.ts';
import { groupsOf } from '../../figures/repeats/groups.ts';
import { likenessOf } from '../../register/resolved/likeness.ts';
import { BROUGHT } from '../../register/values/condition-kinds.ts';
import { conditionRows, runLink, settingText, shownFigure } from '../contents/figure-text.ts';
import type { ComputedRun } from '../contents/site-contents.ts';
import type { ShownFigure, TimelineModel } from '../results.ts';

/** What time and firmware may change, with the difference against the first run. */
const COLUMNS: readonly FigureName[] = ['temperature_rise', 'mean_clock', 'load_power'];

/** What the day brings; the firmware is what a timeline is read for. */
const APART: readonly string[] = [...BROUGHT, 'firmware'];

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
  const [first, ...later] = runs as readonly [ComputedRun, ...ComputedRun[]];
  const { reference, others } = settled({
    id: first.run.id,
    reference: alone(comparedRun(first)),
    others: later.map((computed) => alone(comparedRun(computed))),
  });
  const differences = differencesTo(reference, others);
  const rows = runs.map((computed, index) => rowOf(computed, index === 0 ? undefined : differences.get(others[index - 1]!)));
  return {
    setting: settingText(first.run),
    conditions: conditionRows(first.run.conditions.filter(({ name }) => !APART.includes(name))),
    columns: rows[0]!.cells.map(({ figure: { name, label } }) => ({ name, label })),
    rows,
  };
}

function firmwareOf({ run }: ComputedRun): string {
  return run.conditions.find(({ name }) => name === 'firmware')?.text ?? '';
}

function rowOf(computed: ComputedRun, differences: ReadonlyMap<string, Figure> | undefined): Row {
  const { run, derived } = computed;
  return {
    link: runLink(run),
    date: run.date,
    firmware: firmwareOf(computed),
    cells: COLUMNS.map((name) => ({
      figure: shownFigure(name, figureAt(derived.figures, name)),
      difference: shownDifference(name, differences?.get(name)),
    })),
  };
}

function comparedRun({ run, derived }: ComputedRun): ComparedRun {
  return { alias: run.title, run: run.id, device: run.device, specimen: run.specimen, figures: derived.figures };
}

/** The run's page tells why a figure is absent: a difference of it has nothing to add. The column says of what it is; a power's place stays. */
function shownDifference(name: FigureName, figure: Figure | undefined): ShownFigure | null {
  if (figure === undefined) return null;
  const { channel: _channel, ...of } = figure.of ?? {};
  return shownFigure(name, { ...figure, name, of });
}

/** Every run has each of these figures, present or absent; a log without the channel has it absent. */
function figureAt(figures: FigureMap, name: FigureName): Figure {
  return figures.get(name) ?? { name, absent: 'no-channel', why: 'The log has no channel for it.' };
}
