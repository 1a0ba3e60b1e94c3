import { expect, test } from 'vitest';
import { dataFiles, readProject } from '../../../src/compute/project/read-project.ts';
import { plainFile, plainText } from '../../../src/register/portable/plain-values.ts';
import { BY_KEY, WHOLE, wholeRun } from '../../../src/register/portable/whole-run.ts';
import { readRegister } from '../../../src/register/read.ts';
import { SHARED_KEYS } from '../../../src/register/sections/shared-keys.ts';
import { DEMONSTRATION } from '../../demonstration-folder.ts';

const file = (lines: string) => plainFile({ path: 'content/runs/x.md', text: `---\n${lines}---\n\nWords.\n` });

test('register/travel/whole-run: a run takes from its setup what it does not state, and nothing that it takes away', () => {
  const setup = file(`title: Bench
device: larch-2
conditions:
  ambient: 22 °C
  cooling: fan
channels:
  soc:
    quantity: temperature
    instrument: on-die
  spare:
    quantity: temperature
    column: PRIVATE
phases:
  load: 0 .. 5 min
log:
  time:
    zone: UTC
  share: cleaned only
`);
  const run = file(`title: Run
setup: bench
conditions:
  ambient: 23 °C
channels:
  soc:
    column: "T: [°C]"
  spare: none
phases: auto
log: a.csv
`);
  expect(plainText(wholeRun(run, setup))).toBe(`---
title: Run
conditions:
  ambient: 23 °C
  cooling: fan
channels:
  soc:
    quantity: temperature
    instrument: on-die
    column: "T: [°C]"
phases: auto
log:
  file: a.csv
  time:
    zone: UTC
  share: cleaned only
device: larch-2
---

Words.
`);
});

test('register/travel/whole-run: a run that says how its log goes out takes nothing of that from its setup', () => {
  const run = file('title: Run\nlog:\n  file: a.csv\n  elsewhere: https://files.example/a.csv\n');
  const log = wholeRun(run, file('title: Bench\nlog:\n  share: cleaned only\n')).keys.get('log');
  expect(log).toEqual(
    new Map([
      ['file', 'a.csv'],
      ['elsewhere', 'https://files.example/a.csv'],
    ]),
  );
});

test('register/travel/whole-run: written anew without their setups, the runs of the demonstration are the same runs', () => {
  // What lies in content/ itself is a page of the site, and no file of the register.
  const content = readProject(DEMONSTRATION).content.filter(({ path }) => path.split('/').length > 2);
  const texts = new Map(content.map((each) => [each.path, each]));
  const data = dataFiles(DEMONSTRATION);
  const { register } = readRegister(content, data);
  const written = content.map((each) => {
    if (!each.path.startsWith('content/runs/')) return each;
    const setup = register.runs.get(each.path.slice('content/runs/'.length, -'.md'.length))?.setup;
    const shared = setup === undefined ? undefined : plainFile(texts.get(`content/setups/${setup}.md`)!);
    return { path: each.path, text: plainText(wholeRun(plainFile(each), shared)) };
  });
  const again = readRegister(written, data);
  expect(again.problems).toEqual([]);
  expect(again.register.runs.size).toBeGreaterThan(6);
  for (const run of again.register.runs.values()) {
    const { setup: _none, ...facts } = plainOf(register.runs.get(run.id)!);
    expect(plainOf(run), run.id).toEqual(facts);
  }
});

test('register/travel/whole-run: every key that a setup and a run share is taken from the setup', () => {
  expect([...WHOLE, ...BY_KEY, 'channels', 'known'].toSorted()).toEqual(Object.keys(SHARED_KEYS).toSorted());
});

/** Without places, which the other file has elsewhere. Conditions come in another order, which no figure looks at. */
function plainOf(run: object): Record<string, unknown> {
  const { placeOf: _place, factPlaces: _places, body: _body, bodyLine: _line, ...rest } = run as Record<string, unknown>;
  const text = JSON.stringify(rest, (key, value) =>
    key === 'place' ? undefined : value instanceof Map ? [...value].sort() : value,
  );
  return JSON.parse(text) as Record<string, unknown>;
}
