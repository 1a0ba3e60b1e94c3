import { describe, expect, test } from 'vitest';
import { STATED } from '../../../src/compute/comparison/compared-conditions.ts';
import { fairnessOf } from '../../../src/compute/comparison/fairness.ts';
import { comparison, type RunSketch, run } from './gathered.ts';

const ONE_SETTING = 'The setting differs in clock; as far as the runs state their conditions, nothing else does.';

/** Of a run that is as the reference but for clock and what is given. */
function judge(fast: RunSketch, rated: RunSketch = {}) {
  return fairnessOf(comparison(run('rated', rated), run('fast', fast)));
}

describe('compute/comparison/fairness', () => {
  test('one setting and nothing else: no warning', () => {
    expect(judge({})).toMatchObject({ lead: ONE_SETTING, warnings: [] });
  });

  test('nothing at all: then that is said', () => {
    expect(judge({ setting: { clock: '2.0 GHz' } })).toMatchObject({
      lead: 'The setting is the same in all runs, and so are all conditions that they state: what differs is how far such runs lie apart.',
      warnings: [],
    });
  });

  test('another firmware is named with its runs, and with what it may do', () => {
    expect(judge({ conditions: { firmware: '1.9' } })).toMatchObject({
      lead: 'The setting differs in clock, and the runs also differ in firmware. A fair comparison changes one thing.',
      warnings: [
        'Firmware: 1.8 in rated; 1.9 in fast. Firmware sets clocks, voltages, limits and fans by its own rules: a difference may be its doing.',
      ],
    });
  });

  test('a firmware compared on purpose, all else alike, is a fair comparison', () => {
    const { lead, warnings } = judge({ setting: { clock: '2.0 GHz' }, conditions: { firmware: '1.9' } });
    expect(lead).toBe('The setting is the same in all runs; they differ in firmware.');
    expect(warnings).toHaveLength(1);
  });

  test('what one run states and another does not is told, and the one that states it comes first', () => {
    const { warnings } = fairnessOf(
      comparison(
        run('rated', { conditions: { cooling: null } }),
        run('fast', { conditions: { cooling: 'fan' } }),
        run('slow', { conditions: { cooling: null } }),
      ),
    );
    expect(warnings[0]).toMatch(/^Cooling: fan in fast; not stated for rated and slow\. /);
  });

  test.each(STATED.map(({ label }) => label))('%s that differs is warned of', (label) => {
    const found = judge({ conditions: { [label]: 'one' } }, { conditions: { [label]: 'another' } }).warnings;
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(new RegExp(`^${label}: another in rated; one in fast\\. [A-Z].*\\.$`, 'i'));
  });

  test('measured conditions that no interval tells apart are one; others are told', () => {
    const told = (label: string, one: string, other: string) =>
      judge({ conditions: { [label]: one } }, { conditions: { [label]: other } }).warnings.length;
    expect(told('airflow', '45 %', '45.0 %')).toBe(0);
    expect(told('background sound', '24.5 ± 0.5 dB(A)', '24.9 ± 0.5 dB(A)')).toBe(0);
    expect(told('background sound', '24.5 ± 0.5 dB(A)', '26.5 ± 0.5 dB(A)')).toBe(1);
    expect(told('background sound', '24.5 dB(A)', '24.9 dB(A)')).toBe(1);
    expect(told('supply', '5.1 V at board input', '5.10 V at board input')).toBe(0);
    expect(told('supply', '5.1 V at board input', '5.1 V at wall')).toBe(1);
    expect(told('airflow', '1.5 m/s', '45 %')).toBe(1);
    expect(told('airflow', '1.5 m/s', 'still air')).toBe(1);
    expect(told('firmware', '1.1', '1.10')).toBe(1);
  });

  test('what no run states cannot be told', () => {
    const none = { conditions: { firmware: null, workload: null } };
    expect(judge(none, none).warnings).toEqual(['No run states its firmware and workload: whether they differ cannot be told.']);
  });

  test('a supply that was logged need not be stated; beside a stated one it is told', () => {
    const logged = { channels: [{ name: 'input', quantity: 'voltage', at: 'board input', instrument: '' }] };
    expect(judge(logged, logged).warnings).toEqual([]);
    expect(judge({ conditions: { supply: '12 V' } }, logged).warnings[0]).toMatch(/^Supply: logged in rated; 12 V in fast\. /);
  });

  test('another specimen, another device', () => {
    expect(judge({ specimen: 'no-2' }).warnings[0]).toMatch(/^Specimen: no-1 in rated; no-2 in fast\. Two pieces of one device/);
    const device = { id: 'alder', title: 'Alder', maker: 'Invented Works', invented: true };
    const { lead, warnings } = judge({ device, specimen: 'no-2' });
    expect(lead).toContain('also differ in device.');
    expect(warnings[0]).toMatch(/^Device: Larch 2 in rated; Alder in fast\. /);
  });

  test('ambients by the rule that is printed: measured, stated, missing', () => {
    expect(judge({ ambient: [22.9, 0.1] }).warnings).toEqual([]);
    expect(judge({ ambient: [24.5, 0.5, 'stated'] }).warnings[0]).toMatch(
      /^Ambient: 22\.00\u00a0°C \(measured\) in rated; 24\.5\u00a0°C \(stated\) in fast\. Temperatures follow the ambient/,
    );
    expect(judge({ ambient: null }).warnings[0]).toMatch(/^Ambient: 22\.00\u00a0°C \(measured\) in rated; not stated for fast\. /);
    expect(judge({ ambient: null }, { ambient: null }).warnings).toEqual([]);
    expect(judge({}).rule).toContain('2 K apart');
  });

  test('a load that lasted otherwise, by more than 5 %', () => {
    expect(judge({ loadEnd: 3750 }).warnings).toEqual([]);
    expect(judge({ loadEnd: 1500 }).warnings[0]).toMatch(/^Length of the load: 60 min in rated; 20 min in fast\. /);
    expect(judge({ loadEnd: null }).warnings[0]).toMatch(/^Length of the load: 60 min in rated; not stated for fast\. /);
  });

  test('another instrument of one quantity, another place of measurement; what one run did not log at all is no difference', () => {
    const instruments = [
      { id: 'probe', title: 'Probe', accuracy: '± 1 K' },
      { id: 'meter', title: 'Meter', accuracy: '± 1 %' },
    ];
    const channel = (quantity: string, instrument: string, at = '') => ({ name: quantity, quantity, at, instrument });
    const rated = { instruments, channels: [channel('temperature', 'probe'), channel('power', 'meter', 'board input')] };
    const warnings = (channels: RunSketch['channels']) => judge({ instruments, channels: channels! }, rated).warnings;
    expect(warnings([channel('temperature', 'probe')])).toEqual([]);
    expect(warnings([channel('temperature', 'probe'), channel('power', 'meter', 'wall')])).toEqual([
      'Place where the power was measured: board input in rated; wall in fast. Losses lie between the two places: such figures are not subtracted from one another.',
    ]);
    expect(warnings([channel('temperature', 'meter'), channel('power', '', 'board input')])).toEqual([
      'Instrument of the temperature: Probe in rated; Meter in fast. The errors of two instruments do not cancel in a difference.',
      'Instrument of the power: Meter in rated; not stated for fast. The errors of two instruments do not cancel in a difference.',
    ]);
  });

  test('another instrument of a channel beside the primary, and one of the same title', () => {
    const instruments = [
      { id: 'probe', title: 'Probe', accuracy: '± 1 K' },
      { id: 'probe-2', title: 'Probe', accuracy: '± 1 K' },
    ];
    const temperatures = (board: string) => [
      { name: 'soc', quantity: 'temperature', at: '', instrument: 'probe' },
      { name: 'board', quantity: 'temperature', at: '', instrument: board },
    ];
    const rated = { instruments, channels: temperatures('probe') };
    expect(judge({ instruments, channels: temperatures('probe') }, rated).warnings).toEqual([]);
    expect(judge({ instruments, channels: temperatures('probe-2') }, rated).warnings).toEqual([
      'Instrument of the temperature (board): Probe (probe) in rated; Probe (probe-2) in fast. The errors of two instruments do not cancel in a difference.',
    ]);
  });

  test("the author's words are set off where they would run into the sentence", () => {
    expect(judge({ conditions: { cooling: 'finned lid, no fan' } }, { conditions: { cooling: 'fan' } }).warnings[0]).toMatch(
      /^Cooling: fan in rated; “finned lid, no fan” in fast\. /,
    );
  });

  test('two settings changed in one step cannot be told apart; runs that changed one alone are not named', () => {
    const { lead, warnings } = fairnessOf(
      comparison(
        run('rated', { setting: { clock: '2.0 GHz', 'voltage offset': '0 mV' } }),
        run('brisk', { setting: { clock: '2.2 GHz', 'voltage offset': '0 mV' } }),
        run('quick', { setting: { clock: '2.4 GHz', 'voltage offset': '60 mV' } }),
        run('fast', { setting: { clock: '2.6 GHz', 'voltage offset': '80 mV' } }),
      ),
    );
    expect(lead).toBe(
      'The setting differs in clock and voltage offset; as far as the runs state their conditions, nothing else does.',
    );
    expect(warnings).toEqual([
      'quick and fast differ from rated in clock and voltage offset at once: what each of them does cannot be told from these runs.',
    ]);
  });

  test('one run among several: the sentence agrees', () => {
    const { warnings } = judge({ setting: { clock: '2.6 GHz', fan: 'on' } });
    expect(warnings).toEqual([
      'fast differs from rated in clock and fan at once: what each of them does cannot be told from these runs.',
    ]);
  });
});
