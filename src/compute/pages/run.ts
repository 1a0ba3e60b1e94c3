/** The model of a run's page. */

import { SUBJECTS } from '../../figures/catalogue/subject.ts';
import { CATALOGUE, figuresOf } from '../../figures/catalogue.ts';
import { RISKS_IN_BRIEF } from '../../figures/cautions/risks.ts';
import { cautions, mergeCautions } from '../../figures/cautions.ts';
import type { Figure } from '../../figures/figure.ts';
import type { HandReading } from '../../figures/hand/hand-reading.ts';
import { counted, listed } from '../../figures/in-words.ts';
import { whereKnown } from '../../intake/report/known.ts';
import type { Run } from '../../register/register.ts';
import { predecessorsOf } from '../../register/sections/retests.ts';
import { nameInWords } from '../../words/expression/in-words.ts';
import { plainCitation } from '../cite/plain.ts';
import { budgetsOf } from '../contents/budgets.ts';
import { conditionRows, durationText, inLine, runLink, shownFigure, stepText } from '../contents/figure-text.ts';
import { instrumentRow } from '../contents/instruments.ts';
import { outcomeSentence } from '../contents/outcome-sentence.ts';
import { type ComputedRun, comparisonPath, pagePlot, type SiteContents } from '../contents/site-contents.ts';
import { failedAtSetting } from '../contents/tried-setting.ts';
import { timeWords } from '../data/time-words.ts';
import { linkedRun } from '../linked-data/run.ts';
import type { Link, RunModel } from '../results.ts';
import type { LogSummary, RunSummary } from '../steps/runs/run-step.ts';
import { comparePath } from './compare.ts';
import { evidenceOf } from './evidence.ts';
import { isInvented, notePath } from './note.ts';
import { runReference } from './references.ts';

/** All that the page of a run prints. */
export function runModel(parts: SiteContents, computed: ComputedRun): RunModel {
  const { run, derived, summary, plots } = computed;
  const device = parts.register.devices.get(run.device)!;
  const path = runLink(run).path;
  const shown = plots.map((drawn) => pagePlot(drawn, path));
  const warned = mergeCautions(cautions(run.context, derived));
  return {
    kind: 'run',
    outcome: [outcomeSentence(derived), ...failedWhenTried(parts, run)].filter((sentence) => sentence !== '').join(' '),
    beware: warned.map(({ id }) => RISKS_IN_BRIEF[id]).join(', '),
    ...evidenceOf(computed, shown),
    id: run.id,
    title: run.title,
    date: run.date,
    marks: { invented: isInvented(parts, run.device), status: parts.published.runs.has(run.id) ? 'published' : 'held back' },
    device: { title: device.title, path: `devices/${device.id}/` },
    specimen: run.specimen,
    setting: conditionRows(run.setting),
    conditions: conditionRows(run.conditions),
    instruments: run.instruments.map((id) => instrumentRow(parts.register, id)),
    cautions: warned,
    body: parts.prose.get(run.file) ?? '',
    groups: parts.memo.of('figures of a page', computed.key, () => figureGroups(computed)),
    budgets: parts.memo.of('budgets of a page', computed.key, () => budgetsOf(inOrder(computed))),
    phases: derived.phases.map(({ name, from, to, inferred }) => ({
      name,
      from: durationText(from),
      to: durationText(to),
      inferred,
    })),
    plots: shown,
    data: { files: parts.data.get(`runs/${run.id}`) ?? [], licence: run.licence ?? null },
    readings: (run.context.readings ?? []).map((reading) => readingRow(parts, reading)),
    logs: summary.logs.map(logRow),
    channels: channelRows(parts, summary),
    setAside: summary.logs.flatMap(({ name, setAside }) => setAside.map(({ line, reason }) => ({ log: name, line, reason }))),
    repairs: summary.logs.flatMap((log) =>
      log.repairs.map(({ repair, rows }) => `${ofLog(log)}${counted(rows, 'row')}: ${repair.reason}`),
    ),
    known: summary.logs.flatMap((log) => (log.known ?? []).filter(isTold).map((each) => `${ofLog(log)}${knownText(each)}`)),
    inferences: [
      ...summary.logs.flatMap((log) => log.inferences.map(({ statement }) => `${ofLog(log)}${statement}`)),
      ...summary.logs.flatMap(({ alignment }) => (alignment ? [alignment.statement] : [])),
      ...derived.inferences.map(({ statement }) => statement),
    ],
    follows: predecessorsOf(run.id, parts.register.runs).flatMap((id) => linkTo(parts, id)),
    followedBy: [...parts.runs.keys()]
      .filter((id) => parts.register.runs.get(id)?.follows === run.id)
      .flatMap((id) => linkTo(parts, id)),
    notes: notesAbout(parts, run),
    comparisons: [...parts.comparisons.values()]
      .filter(({ comparison }) => [...comparison.runs.values()].includes(run.id))
      .map(({ comparison }) => ({ title: comparison.title, path: comparisonPath(comparison.id) })),
    compare: comparePath([run.id]),
    figuresFile: `${path}figures.json`,
    citation: plainCitation(runReference(parts, computed)),
    linked: linkedRun(parts, computed),
  };
}

/** What a soak at a setting that did not hold cannot say itself: "Where settings were tried on this specimen, this one came out as “restarted”." */
function failedWhenTried(parts: SiteContents, run: Run): string[] {
  const failed = failedAtSetting(parts, run);
  return failed.length === 0
    ? []
    : [`Where settings were tried on this specimen, this one came out as ${listed(failed.map((outcome) => `“${outcome}”`))}.`];
}

/** "line 323: a gap of 48 s. The device restarted." */
function knownText(known: NonNullable<LogSummary['known']>[number]): string {
  const { found, reason } = known;
  return `${whereKnown(known)}${found.length === 0 ? '' : `: ${found.join('; ')}`}. ${reason}`;
}

/** Figures in the catalogue's order. */
function inOrder({ derived }: ComputedRun): [string, Figure][] {
  const all = [...derived.figures];
  return CATALOGUE.flatMap(({ name }) => all.filter(([, figure]) => figure.name === name));
}

/** Figures by subject, in the catalogue's order. */
function figureGroups({ derived }: ComputedRun): RunModel['groups'] {
  const groups = SUBJECTS.map((subject) => {
    const figures = figuresOf(subject).flatMap((name) =>
      [...derived.figures].filter(([, figure]) => figure.name === name).map(([address, figure]) => shownFigure(address, figure)),
    );
    return { subject, figures: inLine(figures) };
  });
  return groups.filter(({ figures }) => figures.length > 0);
}

/** "log meter, " where a run has several. */
function ofLog({ name }: Pick<LogSummary, 'name'>): string {
  return name === '' ? '' : `log ${name.replaceAll('_', ' ')}: `;
}

/** What a setup knows of all its runs is told where it was found. */
function isTold({ ofSetup, found }: NonNullable<LogSummary['known']>[number]): boolean {
  return !ofSetup || found.length > 0;
}

function readingRow(parts: SiteContents, reading: HandReading): RunModel['readings'][number] {
  const { quantity, shows, name, text, times, phase, at = '', instrument } = reading;
  const what = [name === undefined ? '' : nameInWords(name), quantity.replaceAll('_', ' ')]
    .filter((word) => word !== '')
    .join(', ');
  return {
    what: shows === 'level' ? what : `${what} (${shows})`,
    value: text,
    times,
    phase: phase ?? 'whole run',
    at,
    instrument: instrument === undefined ? '' : (parts.register.instruments.get(instrument)?.title ?? instrument),
  };
}

function logRow(summary: LogSummary): RunModel['logs'][number] {
  const { name, file, rows, span, time, encoding, alignment, before } = summary;
  return {
    name: name.replaceAll('_', ' '),
    file: `data/${file}`,
    placed: alignment?.statement ?? '',
    left: before === 0 ? '' : `${before === 1 ? 'one row' : `${before} rows`} before the first log’s first row`,
    rows,
    span: durationText(span),
    step: time.step === null ? '' : stepText(time.step),
    time: `${timeWords(time.format)}, column “${time.column}”`,
    encoding,
  };
}

function channelRows(parts: SiteContents, summary: RunSummary): RunModel['channels'] {
  return summary.channels.map(({ name, quantity, column, unit, originalUnit, at, instrument, missing, log }) => ({
    name: nameInWords(name),
    log: log === undefined ? '' : summary.logs[log]!.name.replaceAll('_', ' '),
    quantity: quantity.replaceAll('_', ' '),
    column,
    unit: originalUnit === unit ? unit : `${originalUnit} → ${unit}`,
    at: at ?? '',
    instrument: instrument === undefined ? '' : (parts.register.instruments.get(instrument)?.title ?? instrument),
    missing,
  }));
}

/** A run of this site, with its day; nothing for one that has no page here. */
function linkTo({ runs }: SiteContents, id: string): Link[] {
  const found = runs.get(id)?.run;
  return found ? [{ title: `${found.title} (${found.date})`, path: runLink(found).path }] : [];
}

function notesAbout(parts: SiteContents, run: Run): Link[] {
  return parts.notes
    .filter(({ reaches }) => reaches.includes(run.id))
    .map((computed) => ({ title: computed.note.title, path: notePath(computed) }));
}
