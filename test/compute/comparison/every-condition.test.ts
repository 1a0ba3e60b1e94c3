import { describe, expect, test } from 'vitest';
import { fairnessOf } from '../../../src/compute/comparison/fairness.ts';
import { conditionRows } from '../../../src/compute/contents/figure-text.ts';
import { derive } from '../../../src/figures/derive.ts';
import { CONDITION_NAMES, CONDITIONS, type ConditionName, conditionLabel } from '../../../src/register/values/condition-kinds.ts';
import { every, logOf, presentAt } from '../../figures/build.ts';
import { FAST, RATED, reading, SETUP } from '../../register/base.ts';
import { comparison, run } from './gathered.ts';

/** Of each condition a value that is not its example; one that is left out does not compile. */
const OTHER: Readonly<Record<ConditionName, string>> = {
  ambient: '26.4 ± 0.5 °C',
  supply: '4.8 V',
  cooling: 'heat sink and fan',
  firmware: '1.9',
  system: 'image 5 of 2026-04',
  workload: 'all cores, copying 2.0',
  orientation: 'upright',
  enclosure: 'closed case',
  airflow: '3 m/s',
  peripherals: 'nothing',
  microphone_distance: '1 m in front',
  background_sound: '30.5 ± 0.5 dB(A)',
};

/** The units know no angle, which so stays words. */
const QUANTITIES: readonly ConditionName[] = ['ambient', 'supply', 'airflow', 'background_sound'];

/** Both runs of the base, each with a value of its own for one condition. */
function stating(name: ConditionName, rated: string, fast: string) {
  const state = (file: string, value: string) => [file, 'setting:', `conditions:\n  ${name}: ${value}\nsetting:`] as const;
  const { register, problems } = reading(
    [SETUP, '  ambient: 22.4 ± 0.5 °C\n  workload: all cores, integer mix 3.1\n', '  peripherals: as usual\n'],
    state(RATED, rated),
    state(FAST, fast),
  );
  return { problems, runs: ['larch-rated', 'larch-fast'].map((id) => register.runs.get(id)!) };
}

describe('every condition, from front matter on', () => {
  test.each(CONDITION_NAMES)('%s: its example is read, and so is its quantity', (name) => {
    const { problems, runs } = stating(name, CONDITIONS[name].example, OTHER[name]);
    expect(problems.filter(({ place }) => place.file === RATED || place.file === FAST)).toEqual([]);
    const isQuantity = QUANTITIES.includes(name);
    const condition = runs[0]!.conditions.find((each) => each.name === name);
    expect(condition?.text).toBe(CONDITIONS[name].example);
    expect(condition?.quantity !== undefined).toBe(isQuantity);
    expect(runs[0]!.facts.has(name)).toBe(isQuantity);
  });

  test.each(CONDITION_NAMES.filter((name) => name !== 'ambient'))('%s: two values are a sentence of fairness', (name) => {
    const { runs } = stating(name, CONDITIONS[name].example, OTHER[name]);
    const [rated, fast] = runs.map(({ conditions }) =>
      conditionRows(conditions).filter(({ label }) => label === conditionLabel(name)),
    );
    const { warnings } = fairnessOf(comparison(run('rated', { rows: rated! }), run('fast', { rows: fast! })));
    expect(warnings.filter((sentence) => sentence.endsWith(CONDITIONS[name].effect))).toHaveLength(1);
  });

  test('a background sound takes the room off the sound level', () => {
    const stated = 'background_sound: 24.5 ± 0.5 dB(A)\n  microphone_distance: 0.5 m in front\n  ambient';
    const { register, problems } = reading([SETUP, 'ambient', stated]);
    expect(problems).toEqual([]);
    const log = logOf(every(1, 3900), { mic: { quantity: 'sound_level', values: (t) => 34.5 + (t % 2) * 1e-6 } });
    const { figures } = derive(log, register.runs.get('larch-fast')!.context);
    // 34.5 − 24.5 = 10 dB above the room: −10 lg(1 − 0.1) = 0.4576 dB are taken off.
    expect(presentAt(figures, 'device_sound_level').quantity.value).toBeCloseTo(34.5 - 0.4576, 3);
  });
});
