import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CONDITION_NAMES, CONDITIONS, type ConditionKind, conditionLabel } from '../../../src/register/values/condition-kinds.ts';
import { exampleOf } from '../../../src/register/values/examples.ts';

describe('register/values/condition-kinds', () => {
  test('a condition that leaves out what a difference in it may do does not compile', () => {
    const { effect: _effect, ...without } = CONDITIONS.cooling;
    // @ts-expect-error its effect is left out
    const kind: ConditionKind = without;
    expect(kind.reading).toBe('words');
  });

  test.each(CONDITION_NAMES.map((name) => [name, CONDITIONS[name]] as const))('%s has an example and a sentence', (name, kind) => {
    expect(kind.effect).toMatch(/^[A-Z].*\.$/);
    expect(exampleOf(name)).toBe(`${name}: ${kind.example}`);
  });

  test('the guide names every condition in this order', () => {
    const listed = /^Conditions are (.*?);/ms.exec(readFileSync('src/guide/files.md', 'utf8'))![1]!;
    expect([...listed.matchAll(/`(\w+)`/g)].map(([, name]) => name)).toEqual(CONDITION_NAMES);
    const compared = /a condition \((.*?)\)/s.exec(readFileSync('src/guide/comparisons.md', 'utf8'))![1]!;
    expect(compared.split(/,\s+/).map((label) => label.replace(/\s+/, ' '))).toEqual(CONDITION_NAMES.map(conditionLabel));
  });
});
