/** What a plot of stability says in words and in tables. */

import { listed } from '../../figures/in-words.ts';
import { clockQuantity, OUTCOMES, offsetWords } from '../../figures/stability/ladder.ts';
import { basisOf, type Setting } from '../../figures/stability/settings.ts';
import { printQuantity } from '../../quantities/print.ts';
import { csv } from '../drawing/csv.ts';
import type { Drawn } from '../drawing/drawn.ts';
import type { Stability } from './plan.ts';

/** "2.4 GHz". */
function clockText(setting: Setting): string {
  return printQuantity(clockQuantity(setting)).text;
}

/** "60 mV", with a minus sign below zero. */
export function offsetText(volts: number): string {
  return offsetWords(volts).replace(' ', '\u00a0');
}

export function stabilityTitle({ subject }: Stability): string {
  return `Settings tried on specimen ${subject.ladder.specimen}, and what came of each`;
}

/** Every setting, by what came of it, the best first. */
export function stabilityAlt({ settings }: Stability): string {
  const told = OUTCOMES.toReversed().flatMap((outcome) => {
    const here = settings.filter((setting) => setting.outcome === outcome);
    if (here.length === 0) return [];
    return [
      `${outcome.charAt(0).toUpperCase()}${outcome.slice(1)}: ${listed(here.map((setting) => `${clockText(setting)} at ${offsetText(setting.offset)}`))}`,
    ];
  });
  return `Signs for settings, clock over voltage offset. ${told.join('. ')}.`;
}

/** What the signs and the shading mean. */
export function stabilityMethod({ settings, brackets }: Stability): string {
  const between = brackets.some(({ passed, failed }) => passed !== null && failed !== null);
  const joined = brackets.filter(({ passed }) => passed !== null).length > 1;
  const repeated = settings.some(({ tried }) => tried.length > 1);
  return [
    'Each sign is one setting; filled is passed, an outline is not.',
    ...(repeated ? ['A setting that was tried more than once has its worst outcome.'] : []),
    ...(between
      ? ['The boundary lies in the shaded stretches, between the highest clock that passed and the lowest above it that did not.']
      : []),
    ...(joined ? ['The broken line joins the highest clocks that passed; it is no measurement.'] : []),
    'One specimen: another may differ.',
  ].join(' ');
}

/** One row a setting; Hz and V. */
export function stabilityCsv({ settings }: Stability): string {
  const rows = settings.map(({ offset, clock, outcome, tried }) => [offset, clock, outcome, tried.length, notesOf(tried)]);
  return csv([['voltage_offset_V', 'clock_Hz', 'outcome', 'attempts', 'note'], ...rows]);
}

export function stabilityTable({ settings, subject }: Stability): Drawn['table'] {
  const rows = settings.map((setting) => [
    offsetText(setting.offset),
    clockText(setting),
    setting.outcome,
    triedText(setting),
    notesOf(setting.tried),
  ]);
  return {
    caption: `Settings tried on specimen ${subject.ladder.specimen}`,
    head: ['Voltage offset', 'Clock', 'Outcome', 'Tried', 'Note'],
    rows,
  };
}

/** How often, and for how long where it passed. */
function triedText(setting: Setting): string {
  if (setting.outcome === 'passed') return basisOf(setting);
  return setting.tried.length === 1 ? 'once' : `${setting.tried.length} times`;
}

function notesOf(tried: Setting['tried']): string {
  return tried
    .map(({ note }) => note)
    .filter((note) => note !== '')
    .join('; ');
}
