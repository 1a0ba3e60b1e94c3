/** The model of a comparison's page: from what was gathered alone, so that a record copy prints by the same function. */

import { riskInBrief } from '../../figures/cautions/risks.ts';
import { settled } from '../../figures/comparison/settings.ts';
import { allLogs } from '../../figures/figures-json.ts';
import { pagePlot } from '../contents/site-contents.ts';
import type { Gathered, GatheredRun } from '../models/gathered.ts';
import { comparedSettings, figuresOf, firstRuns } from '../models/gathered-figures.ts';
import type { ComparedTable, ComparisonModel, CopyRow, Link, Marks, ShownCaution } from '../results.ts';
import type { PlotResult } from '../steps/plots/plot-task.ts';
import { comparedTable, overallFigures, ownTable, type ReadComparison, testTables } from './compared-tables.ts';
import { fairnessOf } from './fairness.ts';
import { findingsOf } from './findings.ts';
import { quotedRows } from './quoted-rows.ts';
import { sideBySide } from './side-by-side.ts';

/** What a page adds to what was gathered: where it stands, and what of the site it may lead to. */
export interface ComparisonContext {
  /** Below the base, with its slash. */
  readonly path: string;
  /** HTML of the author's own words; '' where there are none. */
  readonly body: string;
  readonly status: Marks['status'];
  readonly notes: readonly Link[];
  readonly copies: readonly CopyRow[];
  /** Whether the site has a page at that path. */
  readonly has: (path: string) => boolean;
}

/** What `drawCompared` gives. */
export interface ComparisonPlots {
  readonly plots: readonly PlotResult[];
  readonly undrawn: readonly string[];
}

/** All that the page of a comparison prints. */
export function comparisonModel(gathered: Gathered, drawn: ComparisonPlots, context: ComparisonContext): ComparisonModel {
  const { id, title, reference, runs } = gathered;
  const read = readComparison(gathered);
  const [compared, byTest, own] = [comparedTable(read), testTables(read), ownTable(read)];
  const warned = mergedCautions(runs);
  return {
    kind: 'comparison',
    id,
    title,
    marks: { invented: runs.some(({ device }) => device.invented), status: context.status },
    reference,
    runs: runs.map((run) => ({
      alias: run.alias,
      title: run.title,
      path: context.has(`runs/${run.run}/`) ? `runs/${run.run}/` : '',
      date: run.date,
      setting: settingText(run),
    })),
    devices: devicesOf(runs, context),
    body: context.body,
    findings: findingsOf(read, new Map(runs.map((run) => [run.alias, settingText(run)]))),
    beware: warned.flatMap(({ risk }) => riskInBrief(risk) ?? []).join(', '),
    cautions: warned,
    fairness: fairnessOf(gathered),
    ...sideBySide(gathered),
    compared,
    overall: overallFigures(read),
    byTest,
    own,
    quoted: quotedRows(gathered, read),
    inferred: inferredIn([compared, ...byTest, own]),
    plots: drawn.plots.map((plot) => pagePlot(plot, context.path)),
    undrawn: drawn.undrawn,
    files: runs.flatMap(({ alias, tables, ...run }) => [
      ...allLogs(run).map(({ file, sha256, rows }) => ({ alias, file, sha256, rows })),
      ...tables.map((each) => ({ alias, ...each })),
    ]),
    figuresFile: `${context.path}figures.json`,
    notes: context.notes,
    copies: context.copies,
  };
}

function settingText({ setting }: GatheredRun): string {
  return setting.map(({ label, text }) => `${label} ${text}`).join(', ');
}

function readComparison(gathered: Gathered): ReadComparison {
  const compared = comparedSettings(gathered);
  const { reference, others } = settled(compared);
  const byAlias = new Map([reference, ...others].map((setting) => [setting.alias, setting]));
  const runs = firstRuns(gathered).map(({ alias }) => byAlias.get(alias)!);
  return { figures: figuresOf(gathered), runs, reference };
}

function inferredIn(tables: readonly ComparedTable[]): string[] {
  const cells = tables.flatMap(({ rows }) => rows.flatMap((row) => row.cells));
  return [...new Set(cells.flatMap(({ figure, against }) => [...(figure?.inferred ?? []), ...(against?.inferred ?? [])]))];
}

function devicesOf(runs: readonly GatheredRun[], { has }: ComparisonContext): Link[] {
  const devices = new Map(runs.map(({ device }) => [device.id, device.title]));
  return [...devices].map(([id, title]) => ({ title, path: has(`devices/${id}/`) ? `devices/${id}/` : '' }));
}

/** Each risk once, with what was done in which runs. */
function mergedCautions(runs: readonly GatheredRun[]): ShownCaution[] {
  const byRisk = new Map<string, Map<string, string[]>>();
  for (const { alias, cautions } of runs) {
    for (const { done, risk } of cautions) {
      const all = byRisk.get(risk) ?? new Map<string, string[]>();
      byRisk.set(risk, all);
      for (const sentence of done) all.set(sentence, [...(all.get(sentence) ?? []), alias]);
    }
  }
  return [...byRisk].map(([risk, all]) => ({
    done: [...all].map(([sentence, aliases]) => sentence.replace(/\.$/, ` (${aliases.join(', ')}).`)),
    risk,
  }));
}
