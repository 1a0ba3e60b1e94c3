/** Warnings on what is well formed and yet hardly meant. */
import type { Place } from '../../problem.ts';
import { compareText } from '../../problem.ts';
import { PRIMARY } from '../files/devices.ts';
import type { Device, Run } from '../register.ts';
import { meant } from '../values/names.ts';
import type { Report } from '../yaml/report.ts';

/** Two runs on one log: a run's file was probably copied and its log not changed. */
export function tellSameLogs(runs: Iterable<Run>, report: Report): void {
  const seen = new Map<string, string>();
  for (const [id, log] of [...runs].flatMap(({ id, logs }) => logs.map(({ declaration }) => [id, declaration] as const))) {
    // Rows of two devices in one log make two runs.
    const rows = JSON.stringify([log.file, log.rows?.column, log.rows?.value]);
    const other = seen.get(rows);
    if (other === undefined) seen.set(rows, id);
    else {
      report.warning('same-log', log.place, `run \`${other}\` reads the same log, \`${log.file}\``, {
        remedy: 'name another log if this file was copied from that run',
      });
    }
  }
}

/** A limit of a channel that none of the device's runs has: probably misspelt. Devices without runs are left alone. */
export function tellUnusedLimits(devices: Iterable<Device>, runs: Iterable<Run>, report: Report): void {
  const all = [...runs];
  for (const device of devices) {
    const channels = all.filter((run) => run.device === device.id).flatMap((run) => run.channels);
    if (channels.length === 0) continue;
    const temperatures = [...new Set(channels.filter(({ quantity }) => quantity === 'temperature').map(({ name }) => name))].sort(
      compareText,
    );
    for (const channel of Object.keys(device.throttleAt)) {
      if (channel !== PRIMARY && !temperatures.includes(channel))
        tellUnused(channel, device.placeOf(`throttle_at.${channel}`), temperatures, report);
    }
  }
}

function tellUnused(channel: string, place: Place, temperatures: readonly string[], report: Report): void {
  report.warning('throttle-channel', place, `no run of this device has a temperature channel \`${channel}\``, {
    remedy: meant(channel, temperatures).remedy ?? 'check the name',
  });
}
