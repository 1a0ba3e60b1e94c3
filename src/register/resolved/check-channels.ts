/** Checks of a run's channels after inheritance: complete, possible, with an instrument of the run, told apart from its phases. */
import { INFERRED_NAMES } from '../../figures/phases.ts';
import { MEASURED_AT, type QuantityKind } from '../../intake/log.ts';
import { checkStep } from '../values/channel-step.ts';
import { meant, oneOf } from '../values/names.ts';
import type { Inherited, StatedChannel } from '../values/stated-value.ts';
import type { Report } from '../yaml/report.ts';

const ELECTRICAL: readonly QuantityKind[] = ['current', 'voltage', 'power', 'energy'];
/** Quantities that differ by where they are measured. */
const PLACED: readonly QuantityKind[] = ['current', 'voltage', 'power'];
/** Quantities whose figures need an instrument's accuracy. */
const READ: readonly QuantityKind[] = ['temperature', ...PLACED];

/** Reports what is wrong with the channels. Problems of a setup's channel stand in the setup, once for all its runs. */
export function checkChannels(inherited: Inherited, report: Report): void {
  for (const channel of inherited.channels.values()) {
    tellIncomplete(channel, report);
    tellMismatch(channel, report);
    checkStep(channel, report);
    tellUnlisted(channel, inherited, report);
    tellClash(channel, inherited, report);
    tellNoPlace(channel, report);
  }
  tellNoInstrument([...inherited.channels.values()], report);
}

/** Figures of different places are kept apart; without a place nothing can be. */
function tellNoPlace({ name, quantity, at, place }: StatedChannel, report: Report): void {
  if (at || !quantity || !PLACED.includes(quantity.value)) return;
  report.warning('place-unstated', place, `channel \`${name}\` is ${quantity.value} and does not say where it is measured`, {
    expected: `\`at\`, one of ${MEASURED_AT.join(', ')}`,
    remedy: 'write for instance `at: board input`',
  });
}

/** Told once a run, and only where other channels have an instrument: a project that names none is left alone. */
function tellNoInstrument(channels: readonly StatedChannel[], report: Report): void {
  if (!channels.some(({ instrument }) => instrument)) return;
  const without = channels.filter(
    ({ quantity, column, instrument }) => !instrument && column && quantity && READ.includes(quantity.value),
  );
  if (without.length === 0) return;
  const names = without.map(({ name }) => `\`${name}\``).join(', ');
  const found = `${without.length === 1 ? 'channel' : 'channels'} ${names}: no instrument: figures are repeatability only`;
  report.warning('no-instrument', without[0]!.place, found, {
    remedy: 'name the `instrument` that reads it, and state its accuracy in content/instruments/',
  });
}

/** A run that calls a channel of its setup another quantity has probably met a name that was taken. */
export function tellOverridden(
  run: ReadonlyMap<string, StatedChannel>,
  setup: ReadonlyMap<string, StatedChannel>,
  report: Report,
): void {
  for (const { name, quantity } of run.values()) {
    const before = setup.get(name)?.quantity;
    if (!quantity || !before || quantity.value === before.value) continue;
    report.warning(
      'quantity-overridden',
      quantity.place,
      `channel \`${name}\` is ${quantity.value}; in the setup it is ${before.value}`,
      {
        remedy: 'give the column a channel name of its own, unless the setup is wrong for this run',
      },
    );
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

/** A place of measurement belongs to electrical quantities, bits to a throttle flag, what it shows to a clock. */
function tellMismatch({ name, quantity, at, bits, sticky, shows }: StatedChannel, report: Report): void {
  if (at && quantity && !ELECTRICAL.includes(quantity.value)) {
    report.error('channel-mismatch', at.place, `channel \`${name}\` is ${quantity.value} and states \`at\``, {
      expected: `\`at\` with ${oneOf(ELECTRICAL)} only`,
      remedy: 'remove this line',
    });
  }
  for (const [key, stated] of [['bits', bits] as const, ['sticky', sticky] as const]) {
    if (!stated || !quantity || quantity.value === 'throttle_flag') continue;
    report.error('channel-mismatch', stated.place, `channel \`${name}\` is ${quantity.value} and states \`${key}\``, {
      expected: `\`${key}\` with \`throttle_flag\` only`,
      remedy: 'remove them',
    });
  }
  if (shows && quantity && quantity.value !== 'clock') {
    report.error('channel-mismatch', shows.place, `channel \`${name}\` is ${quantity.value} and states \`shows\``, {
      expected: '`shows` with `clock` only',
      remedy: 'remove this line',
    });
  }
  for (const bit of Object.keys(sticky?.value ?? {}).filter((each) => Object.hasOwn(bits?.value ?? {}, each))) {
    report.error('bad-bits', sticky!.place, `channel \`${name}\` has the bit ${bit} in \`bits\` and in \`sticky\``, {
      expected: 'under `bits` what a bit says of now, under `sticky` what it says of all the time since the boot',
      remedy: `take ${bit} out of one of them`,
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
  const names = phases.value === 'auto' ? INFERRED_NAMES : phases.value.map((phase) => phase.name);
  if (!names.includes(channel.name)) return;
  report.error('name-clash', channel.place, `channel \`${channel.name}\` has the name of a phase`, {
    expected: 'different names, because addresses end in either',
    remedy: 'rename one of the two',
  });
}
