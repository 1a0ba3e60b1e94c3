/** The model of the index of devices and runs, and the same as JSON for programs and for the picker of comparisons. */

import { isPresent } from '../../figures/figure.ts';
import { idFromWords } from '../../intake/ids.ts';
import { compareText } from '../../problem.ts';
import { printQuantity } from '../../quantities/print.ts';
import { NO_MAKER } from '../../register/files/devices.ts';
import { formerIdsOf } from '../../register/sections/former-addresses.ts';
import { conditionRows, settingText } from '../contents/figure-text.ts';
import type { ComputedRun, SiteContents } from '../contents/site-contents.ts';
import { triedAtSetting } from '../contents/tried-setting.ts';
import type { Choice, IndexedDevice, RunsModel, RunsRow } from '../models/discovery.ts';
import { isInvented, notePath } from '../pages/note.ts';
import type { Link } from '../results.ts';
import { mainFigures } from './main-figures.ts';
import { OUTCOMES, outcomesOf } from './outcome.ts';

/** All that the index prints: every run and every device of the scope, and these comparisons. */
export function runsModel(parts: SiteContents, comparisons: readonly Link[]): RunsModel {
  const runs = newestFirst(parts);
  const figures = mainFigures(runs);
  const devices = devicesOf(parts, runs);
  const clocks = clockChoices(runs);
  const outcomes = runs.map((computed) => outcomesIn(parts, computed));
  const seen = new Set(outcomes.flat().map(({ id }) => id));
  const notes = notesByRun(parts);
  return {
    kind: 'runs',
    invented: devices.some(({ id }) => isInvented(parts, id)),
    columns: figures.map(({ column }) => column),
    rows: runs.map(({ run }, index): RunsRow => {
      const { id, title, device, specimen, date } = run;
      return {
        id,
        title,
        device,
        specimen,
        date,
        setting: conditionRows(run.setting)
          .map(({ label, text }) => together(`${label} ${text}`))
          .join(', '),
        figures: figures.map(({ cells }) => cells[index]!),
        outcomes: outcomes[index]!.map((outcome) => together(outcome.title)),
        notes: notes.get(id) ?? [],
        status: parts.published.runs.has(id) ? 'published' : 'held back',
      };
    }),
    devices,
    comparisons,
    choices: {
      devices: devices.filter((device) => device.runs > 0).map(({ id, title }) => ({ id, title })),
      specimens: named([...new Set(runs.map(({ run }) => run.specimen))].map((alias) => ({ id: alias, title: alias }))),
      makers: named(
        devices
          .filter((device) => device.runs > 0 && device.maker !== NO_MAKER)
          .map(({ maker, makerId }) => ({ id: makerId, title: maker })),
      ),
      clocks: clocks.choices,
      outcomes: OUTCOMES.filter(({ id }) => seen.has(id)).map(({ id, title }) => ({ id, title })),
    },
    clocks: clocks.indices,
  };
}

/** `runs/index.json`, compact: figures as printed, since the unrounded ones stand in each run's `figures.json`. */
export function runsJson(parts: SiteContents, model: RunsModel): object {
  const { columns, devices, rows } = model;
  return {
    format: 1,
    figures: Object.fromEntries(columns.map(({ name, label }) => [name, label])),
    devices: Object.fromEntries(devices.map(({ id, title, maker }) => [id, { title, maker }])),
    runs: rows.map(({ id, title, device, specimen, date, figures, notes }) => ({
      id,
      title,
      device,
      specimen,
      date,
      setting: settingText(parts.runs.get(id)!.run),
      figures: Object.fromEntries(columns.flatMap(({ name }, at) => (figures[at]!.shown ? [[name, figures[at]!.shown]] : []))),
      absent: absentCodes(parts.runs.get(id)!, columns),
      outcomes: outcomesIn(parts, parts.runs.get(id)!).map((outcome) => outcome.id),
      notes: notes.map(({ path }) => path),
      ...formerly(parts.runs.get(id)!),
    })),
  };
}

function outcomesIn(parts: SiteContents, { run, derived }: ComputedRun): Choice[] {
  return outcomesOf({ derived, tried: triedAtSetting(parts, run) });
}

/** Ids that addresses of before may name. */
function formerly({ run }: ComputedRun): { readonly was?: readonly string[] } {
  const was = formerIdsOf(run);
  return was.length > 0 ? { was } : {};
}

/** Of a short phrase, its blanks made no-break ones, so that lists of phrases break between them. */
function together(phrase: string): string {
  return phrase.length > 24 ? phrase : phrase.replaceAll(' ', '\u00a0');
}

function absentCodes({ derived }: ComputedRun, columns: RunsModel['columns']): Record<string, string> {
  return Object.fromEntries(
    columns.flatMap(({ name }) => {
      const figure = derived.figures.get(name);
      return figure === undefined || isPresent(figure) ? [] : [[name, figure.absent]];
    }),
  );
}

function newestFirst(parts: SiteContents): ComputedRun[] {
  return [...parts.runs.values()].sort((a, b) => compareText(b.run.date, a.run.date) || compareText(a.run.id, b.run.id));
}

/** Devices of runs, and those that only attempts speak of, by title. */
function devicesOf(parts: SiteContents, runs: readonly ComputedRun[]): IndexedDevice[] {
  const tried = [...parts.attempts.values()].map(({ attempts }) => attempts.device);
  const ids = new Set([...runs.map(({ run }) => run.device), ...tried]);
  const devices = [...ids].map((id) => {
    const { title, maker } = parts.register.devices.get(id)!;
    return { id, title, maker, makerId: idFromWords(maker), runs: runs.filter(({ run }) => run.device === id).length };
  });
  return devices.sort((a, b) => compareText(a.title, b.title) || compareText(a.id, b.id));
}

/** Each id once, by title. */
function named(choices: readonly Choice[]): Choice[] {
  const once = new Map(choices.filter(({ id }) => id !== '').map((choice) => [choice.id, choice]));
  return [...once.values()].sort((a, b) => compareText(a.title, b.title) || compareText(a.id, b.id));
}

/** The clock settings of the runs as printed, each once, and which of them is each run's. */
function clockChoices(runs: readonly ComputedRun[]): { choices: Choice[]; indices: (number | null)[] } {
  const clocks = runs.map(({ run }) => run.context.setting.clock);
  const known = clocks.filter((clock) => clock !== undefined).sort((a, b) => a.value - b.value);
  const titles = new Map<number, string>();
  for (const clock of known) {
    const { text } = printQuantity(clock);
    // Of 2 GHz and 2.0 GHz, which are one clock, the one with more digits.
    if (text.length > (titles.get(clock.value)?.length ?? 0)) titles.set(clock.value, text);
  }
  const values = [...titles.keys()];
  return {
    choices: [...titles.values()].map((title) => ({ id: title.replace(/\s/g, ''), title })),
    indices: clocks.map((clock) => (clock === undefined ? null : values.indexOf(clock.value))),
  };
}

/** For each run the notes that use it, or, where no note does, the scripts. */
function notesByRun(parts: SiteContents): Map<string, Link[]> {
  const byRun = new Map<string, Link[]>();
  for (const kind of ['note', 'script'] as const) {
    const served = new Set(byRun.keys());
    for (const computed of parts.notes.filter(({ note }) => note.kind === kind)) {
      for (const id of computed.reaches.filter((each) => !served.has(each)))
        byRun.set(id, [...(byRun.get(id) ?? []), { title: computed.note.title, path: notePath(computed) }]);
    }
  }
  return byRun;
}
