/** The figures of attempts: the highest clock that passed, over all and at each voltage offset, and where it ends. */
import { printQuantity } from '../../quantities/print.ts';
import { absent } from '../absent.ts';
import type { Figure, FigureMap, From } from '../figure.ts';
import { clockQuantity, type Ladder, offsetName, offsetWords } from './ladder.ts';
import { basisOf, hasPassed, type Setting, settingsOf } from './settings.ts';

const PASSED = 'highest_passed_clock';
const FAILED = 'lowest_failed_clock';

/**
 * `highest_passed_clock`, and with it `highest_passed_clock.<offset>` and `lowest_failed_clock.<offset>` at each voltage offset, the
 * two sides of the boundary. Ladders of several specimens together: a setting passes where it did on each that tried it.
 */
export function stabilityFigures(ladders: readonly Ladder[]): FigureMap {
  const settings = settingsOf(ladders);
  const figures = new Map<string, Figure>([[PASSED, highestPassed(settings, ladders, 'no setting that was tried')]]);
  for (const offset of new Set(settings.map((setting) => setting.offset))) {
    const here = settings.filter((setting) => setting.offset === offset);
    const name = offsetName(offset);
    figures.set(`${PASSED}.${name}`, highestPassed(here, ladders, `no clock that was tried at ${offsetWords(offset)}`));
    figures.set(`${FAILED}.${name}`, lowestFailed(here, ladders));
  }
  return figures;
}

function highestPassed(settings: readonly Setting[], ladders: readonly Ladder[], nothing: string): Figure {
  if (settings.length === 0) return absent(PASSED, { absent: 'no-readings', why: 'No row of the attempts could be used.' });
  const passed = settings.filter(hasPassed);
  const highest = passed.reduce<Setting | null>((high, each) => (high === null || each.clock > high.clock ? each : high), null);
  if (highest === null) {
    const lowest = Math.min(...settings.map(({ clock }) => clock));
    const bound = { relation: '<', value: lowest, unit: 'Hz' } as const;
    return absent(PASSED, { absent: 'none-passed', why: `Of the attempts, ${nothing} passed.`, bound, of: offsetOf(settings) });
  }
  const undefinedPass = highest.tried.some(({ passing }) => passing === null);
  if (undefinedPass) {
    const why = 'The attempts do not say what passing means: which test, how long and at which ambient.';
    return absent(PASSED, { absent: 'no-condition', why, of: offsetOf([highest]) });
  }
  return {
    name: PASSED,
    quantity: clockQuantity(highest),
    from: fromOf(ladders, highest),
    of: {
      voltage_offset: offsetName(highest.offset),
      basis: basisOf(highest),
      ...meaningOf(highest),
      ...brokenBelow(settings, highest),
    },
  };
}

/** Test and ambient of a setting's attempts; several where they differ. */
function meaningOf({ tried }: Setting) {
  const passings = tried.flatMap(({ passing }) => passing ?? []);
  return {
    test: [...new Set(passings.map(({ test }) => test))].join('; '),
    ambient: [...new Set(passings.map(({ ambient }) => ambient))].join('; '),
  };
}

/** Clocks at the same offset below a passed one that did not pass: then the boundary is no simple line. */
function brokenBelow(settings: readonly Setting[], highest: Setting) {
  const broken = settings.filter((each) => each.offset === highest.offset && each.clock < highest.clock && !hasPassed(each));
  return broken.length === 0 ? {} : { failed_below: broken.map((each) => `${clockOf(each)}: ${each.outcome}`).join('; ') };
}

function lowestFailed(settings: readonly Setting[], ladders: readonly Ladder[]): Figure {
  const highest = Math.max(Number.NEGATIVE_INFINITY, ...settings.filter(hasPassed).map(({ clock }) => clock));
  const above = settings.filter(({ clock }) => clock > highest);
  const lowest = above[0];
  if (!lowest) {
    const bound = { relation: '>', value: highest, unit: 'Hz' } as const;
    const why = `Nothing was tried at ${offsetWords(settings[0]!.offset)} above the highest clock that passed.`;
    return absent(FAILED, { absent: 'none-failed', why, bound, of: offsetOf(settings) });
  }
  return {
    name: FAILED,
    quantity: clockQuantity(lowest),
    from: fromOf(ladders, lowest),
    of: { voltage_offset: offsetName(lowest.offset), outcome: lowest.outcome, attempts: lowest.tried.length },
  };
}

function clockOf(setting: Setting): string {
  return printQuantity(clockQuantity(setting)).text;
}

function offsetOf(settings: readonly Setting[]) {
  const offsets = new Set(settings.map(({ offset }) => offset));
  return offsets.size === 1 ? { voltage_offset: offsetName(settings[0]!.offset) } : {};
}

/** Columns and lines; with several tables their columns alone. */
function fromOf(ladders: readonly Ladder[], { tried }: Setting): From {
  const lines = tried.map(({ line }) => line);
  const columns = ladders[0]?.columns ?? [];
  if (ladders.length > 1) return { columns, rows: null, file: ladders.map(({ file }) => file).join(', ') };
  return { columns, rows: [Math.min(...lines), Math.max(...lines)], ...(ladders[0] ? { file: ladders[0].file } : {}) };
}
