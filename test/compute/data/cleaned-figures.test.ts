import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { openStore } from '../../../src/compute/store/store.ts';
import { correctedLog } from '../../../src/figures/corrected.ts';
import { derive } from '../../../src/figures/derive.ts';
import { isPresent } from '../../../src/figures/figure.ts';
import { cleanedNames } from '../../../src/intake/cleaned.ts';
import type { Log } from '../../../src/intake/log.ts';
import { read } from '../../../src/intake/read.ts';
import { computeDemoRun, demoRegister } from './demo.ts';

const root = mkdtempSync(join(tmpdir(), 'soakproof-cleaned-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

const runs = [...demoRegister().runs.values()];

/** Tables beside the log are left out on both sides: they are not what is cleaned. */
test.each(runs.map((run) => [run.id, run] as const))(
  'compute/data: %s has, from its cleaned readings, bit by bit the figures of its log',
  (_, run) => {
    const store = openStore(root);
    const { result, task } = computeDemoRun(store, run);
    const original = derive(store.get(result.log!) as Log, run.context);
    const { channels } = result.summary!;
    const declaration = {
      ...task.logs[0]!.declaration,
      repairs: [],
      time: { column: cleanedNames(channels).time, format: 'elapsed' as const, unit: 's' },
      channels: channels.map(({ name, quantity, unit }, index) => {
        const { unit: _declared, ...rest } = run.channels[index]!;
        return { ...rest, column: name, unitReason: 'canonical', ...(quantity === 'throttle_flag' ? {} : { unit }) };
      }),
    };
    const reread = read(store.bytes(result.data![0]!.cleaned!.sha256)!, declaration, 'data/clean.csv').log!;
    // How finely readings are told apart stands in the description, field by field, since a plain number may not show it.
    const told = { ...reread, channels: reread.channels.map((channel, index) => ({ ...channel, step: channels[index]!.step })) };
    const again = derive(correctedLog(told, run.context), run.context);
    expect([...again.figures.keys()]).toEqual([...original.figures.keys()]);
    let present = 0;
    for (const [address, figure] of original.figures) {
      const other = again.figures.get(address)!;
      if (!isPresent(figure)) {
        expect(isPresent(other) ? 'present' : other.absent, address).toBe(figure.absent);
        continue;
      }
      present++;
      expect(isPresent(other) && { quantity: other.quantity, interval: other.interval }, address).toEqual({
        quantity: figure.quantity,
        interval: figure.interval,
      });
    }
    expect(present).toBeGreaterThan(4);
  },
);
