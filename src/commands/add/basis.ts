/** Writes the device and the setup of a project that has none, with what the first run's logs and tables tell. */

import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { scalar } from '../../figures/mapping-lines.ts';
import { NO_MAKER } from '../../register/files/devices.ts';
import { idFromWords } from '../../register/values/names.ts';

export interface Written {
  readonly file: string;
  /** What the author still looks at. */
  readonly look: string;
}

/** A folder below data/ that is named after no device. */
export const NAMELESS = 'logs';

const UNNAMED = 'device';

/** The device that a file's folder below data/ is named after. */
function deviceId(path: string): string {
  const folder = path.includes('/') ? path.slice(0, path.indexOf('/')) : '';
  return folder === NAMELESS ? UNNAMED : idFromWords(folder) || UNNAMED;
}

/** content/devices/<id>.md, where there is no device yet. */
export function writeDevice(root: string, path: string): Written {
  const id = deviceId(path);
  const words = id.replaceAll('-', ' ');
  const title = words.charAt(0).toUpperCase() + words.slice(1);
  const text = [
    '---',
    `title: ${scalar(title)}${id === UNNAMED ? ' # its name' : ''}`,
    `maker: ${NO_MAKER} # who makes it`,
    '# rated_clock: 2.4 GHz',
    '# throttle_at: 85 °C',
    '# power: mains, adapter or battery',
    '---',
    '',
  ].join('\n');
  return write(root, `content/devices/${id}.md`, text, 'title and maker');
}

/** content/setups/<id>.md, where there is none and several runs come at once: what they share is then said once. */
export function writeSetup(root: string, path: string, tables: readonly string[]): Written {
  const id = deviceId(path);
  const text = [
    '---',
    'title: Test bench',
    `device: ${id}`,
    'specimen: no-1 # an alias of its serial number',
    '# conditions:',
    '#   ambient: 22.4 ± 0.5 °C',
    '#   workload: what ran under load',
    ...tables,
    '---',
    '',
  ].join('\n');
  return write(root, `content/setups/${id}-bench.md`, text, 'specimen and conditions');
}

/** content/attempts/<id>.md of a table of settings that were tried. */
export function writeAttempts(root: string, id: string, device: string, specimen: string, lines: readonly string[]): Written {
  const text = [
    '---',
    `title: Settings tried on ${specimen}`,
    `device: ${device}`,
    `specimen: ${specimen}`,
    ...lines,
    '# passed:',
    '#   test: what passing means',
    '#   duration: 60 min',
    '#   ambient: 22.5 ± 1.0 °C',
    '---',
    '',
  ].join('\n');
  return write(root, `content/attempts/${id}.md`, text, 'what passing means');
}

function write(root: string, file: string, text: string, look: string): Written {
  const folder = join(root, file.slice(0, file.lastIndexOf('/')));
  if (!existsSync(folder)) mkdirSync(folder, { recursive: true });
  writeFileSync(join(root, file), text, { flag: 'wx' });
  return { file, look };
}
