/** The model of a device's page: its ratings, and what was measured on each specimen. */
import { figuresIn } from '../../figures/catalogue.ts';
import { RISKS_IN_BRIEF } from '../../figures/cautions/risks.ts';
import { attemptCautions, mergeCautions } from '../../figures/cautions.ts';
import { compareText } from '../../problem.ts';
import { printQuantity } from '../../quantities/print.ts';
import type { Device } from '../../register/register.ts';
import { ratingRow, runLink, settingText, shownFigure } from '../contents/figure-text.ts';
import type { ComputedRun, SiteContents } from '../contents/site-contents.ts';
import type { ConditionRow, DeviceModel } from '../results.ts';
import { attemptsModel } from './attempts.ts';
import { deviceLinks, notePath } from './note.ts';
import { timelinesOf } from './timeline.ts';

/** All that the page of a device prints. Specimens stay apart: what holds for one is not said of the device. */
export function deviceModel(parts: SiteContents, device: Device): DeviceModel {
  const runs = [...parts.runs.values()].filter(({ run }) => run.device === device.id);
  const tried = [...parts.attempts.values()].filter(({ attempts }) => attempts.device === device.id);
  const specimens = [...new Set(runs.map(({ run }) => run.specimen))].sort(compareText);
  const warned = mergeCautions(tried.flatMap(({ ladder }) => attemptCautions(ladder, device.ratedClock)));
  return {
    kind: 'device',
    id: device.id,
    title: device.title,
    maker: device.maker,
    marks: { invented: device.invented, status: parts.published.devices.has(device.id) ? 'published' : 'held back' },
    body: parts.prose.get(device.file) ?? '',
    ratings: ratings(device),
    specimens: specimens.map((alias) => {
      const own = runs.filter(({ run }) => run.specimen === alias).sort(byDate);
      return { alias, runs: own.map(runRow), timeline: timelinesOf(own) };
    }),
    attempts: tried.map((computed) => attemptsModel(parts, computed)),
    beware: warned.map(({ id }) => RISKS_IN_BRIEF[id]).join(', '),
    cautions: warned,
    figuresFile: `devices/${device.id}/figures.json`,
    notes: parts.notes
      .filter((computed) => deviceLinks(parts, computed).some(({ path }) => path === `devices/${device.id}/`))
      .map((computed) => ({ title: computed.note.title, path: notePath(computed) })),
  };
}

function ratings(device: Device): ConditionRow[] {
  const limits = Object.entries(device.throttleAt).map(([channel, limit]) =>
    ratingRow(channel === '*' ? 'throttle limit' : `throttle limit, ${channel}`, limit),
  );
  return [
    ...(device.ratedClock === undefined ? [] : [{ label: 'rated clock', text: printQuantity(device.ratedClock).text }]),
    ...limits,
    ...(device.supply === undefined ? [] : [ratingRow('supply', device.supply)]),
    ...(device.power === undefined ? [] : [{ label: 'powered by', text: device.power }]),
  ];
}

function runRow({ run, derived }: ComputedRun): DeviceModel['specimens'][number]['runs'][number] {
  const figures = figuresIn('runs').flatMap((name) => {
    const figure = derived.figures.get(name);
    return figure === undefined ? [] : [shownFigure(name, figure)];
  });
  return { link: runLink(run), date: run.date, setting: settingText(run), figures };
}

function byDate(a: ComputedRun, b: ComputedRun): number {
  return compareText(a.run.date, b.run.date) || compareText(a.run.id, b.run.id);
}
