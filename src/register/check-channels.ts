/** Checks of a run's channels after inheritance: complete, possible, with an instrument of the run, told apart from its phases. */
import type { QuantityKind } from '../intake/log.ts';
import type { Inherited } from './inherit.ts';
import { meant, oneOf } from './names.ts';
import type { Report } from './report.ts';
import type { StatedChannel } from './stated.ts';

const ELECTRICAL: readonly QuantityKind[] = ['current', 'voltage', 'power', 'energy'];
/** Names that detection gives to phases. */
const DETECTED = ['idle', 'load', 'cool-down'];

/** Reports what is wrong with the channels. Problems of a setup's channel stand in the setup, once for all its runs. */
export function checkChannels(inherited: Inherited, report: Report): void {
  for (const channel of inherited.channels.values()) {
    tellIncomplete(channel, report);
    tellMismatch(channel, report);
    tellUnlisted(channel, inherited, report);
    tellClash(channel, inherited, report);
  }
}

function tellIncomplete(channel: StatedChannel, report: Report): void {
  for (const key of ['quantity', 'column'] as const) {
    if (channel[key]) continue;
    const example = key === 'quantity' ? 'quantity: temperature' : 'column: Temp';
    report.error('channel-incomplete', channel.place, `channel \`${channel.name}\` has no \`${key}\``, {
      expected: '`quantity` and `column`, in the run or in its setup',
      remedy: `write for instance \`${example}\``,
    });
  }
}

/** A place of measurement belongs to electrical quantities, bits to a throttle flag. */
function tellMismatch({ name, quantity, at, bits }: StatedChannel, report: Report): void {
  if (at && quantity && !ELECTRICAL.includes(quantity.value)) {
    report.error('channel-mismatch', at.place, `channel \`${name}\` is ${quantity.value} and states \`at\``, {
      expected: `\`at\` with ${oneOf(ELECTRICAL)} only`,
      remedy: 'remove this line',
    });
  }
  if (bits && quantity && quantity.value !== 'throttle_flag') {
    report.error('channel-mismatch', bits.place, `channel \`${name}\` is ${quantity.value} and states \`bits\``, {
      expected: '`bits` with `throttle_flag` only',
      remedy: 'remove them',
    });
  }
}

function tellUnlisted({ name, instrument }: StatedChannel, { instruments }: Inherited, report: Report): void {
  if (!instrument) return;
  const listed = (instruments?.value ?? []).map((reference) => reference.value);
  if (listed.includes(instrument.value)) return;
  const near = meant(instrument.value, listed);
  report.error(
    'instrument-not-listed',
    instrument.place,
    `channel \`${name}\` is read by \`${instrument.value}\`, which is not in the run's list of instruments`,
    {
      expected: listed.length > 0 ? oneOf(listed) : 'a list `instruments` in the run or in its setup',
      remedy: near.remedy ?? `add \`${instrument.value}\` to \`instruments\``,
    },
  );
}

function tellClash(channel: StatedChannel, { phases }: Inherited, report: Report): void {
  if (!phases) return;
  const names = phases.value === 'auto' ? DETECTED : phases.value.map((phase) => phase.name);
  if (!names.includes(channel.name)) return;
  report.error('name-clash', channel.place, `channel \`${channel.name}\` has the name of a phase`, {
    expected: 'different names, because addresses end in either',
    remedy: 'rename one of the two',
  });
}
