/** Devices of which the site has a run or attempts: a page each; their figures and the downloads of their plots beside it. */
import type { Device } from '../../../register/register.ts';
import { attemptsOf, deviceJson } from '../../contents/device-figures.ts';
import type { SiteContents } from '../../contents/site-contents.ts';
import { deviceModel } from '../../pages/device.ts';
import { plotFiles } from '../../steps/plots/plot-files.ts';
import { jsonText } from '../../store/json-text.ts';
import type { Page, PageKind } from '../page-kind.ts';

export const DEVICES: PageKind = {
  folder: 'devices',
  pages: ({ parts }) => devicesOf(parts).map((device): Page => [`devices/${device.id}/`, deviceModel(parts, device)]),
  files: ({ store, parts }) =>
    devicesOf(parts).flatMap(({ id }) => {
      const path = `devices/${id}/`;
      const blob = store.keep(jsonText(deviceJson(parts, id)));
      const figures = { path: `${path}figures.json`, blob, data: 'figures' };
      const drawn = attemptsOf(parts, id).map(({ plot }) => plot);
      return [figures, ...plotFiles(path, drawn)];
    }),
};

function devicesOf(parts: SiteContents): Device[] {
  const tried = [...parts.attempts.values()].map(({ attempts }) => attempts.device);
  const ids = new Set([...[...parts.runs.values()].map(({ run }) => run.device), ...tried]);
  return [...parts.register.devices.values()].filter(({ id }) => ids.has(id));
}
