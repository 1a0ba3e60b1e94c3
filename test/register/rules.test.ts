import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { RULES } from '../../src/register/rules.ts';
import { report } from './base.ts';
import { CORRECTED } from './cases/corrected.ts';
import { FORMER } from './cases/former.ts';
import { FRONT_MATTER } from './cases/front-matter.ts';
import { KEYS } from './cases/keys.ts';
import { KNOWN } from './cases/known.ts';
import { MEASURED } from './cases/measured.ts';
import { REFERENCES } from './cases/references.ts';
import { SCRIPTS } from './cases/scripts.ts';
import { SHARED_DATA } from './cases/shared-data.ts';
import { SOAK } from './cases/soak.ts';

const CASES = [
  ...CORRECTED,
  ...FORMER,
  ...FRONT_MATTER,
  ...KEYS,
  ...KNOWN,
  ...REFERENCES,
  ...MEASURED,
  ...SCRIPTS,
  ...SHARED_DATA,
  ...SOAK,
];

/** Requests are read from notes' directives, not from files of the register: see requests.test.ts. */
const BY_REQUESTS = ['request-alias', 'request-attribute', 'request-kind'];

describe('register/rules', () => {
  it('finds nothing wrong with the base', () => {
    expect(report()).toEqual([]);
  });

  it.each(CASES.map((each, index) => [index, each.rule, each] as const))('%i %s', (_, rule, each) => {
    expect(report(...each.bad)).toEqual(each.report);
    expect(each.report.some((line) => line.includes(`: ${rule}: `))).toBe(true);
    expect(report(...each.ok)).toEqual([]);
  });

  it('has a case for every rule', () => {
    const covered = new Set<string>([...CASES.map(({ rule }) => rule), ...BY_REQUESTS]);
    expect([...covered].sort()).toEqual(Object.keys(RULES).sort());
  });

  it('names each rule in kebab-case, with one line of meaning', () => {
    for (const [rule, meaning] of Object.entries(RULES)) {
      expect(rule).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(meaning).toMatch(/^[a-z][^\n]{15,}[^.\n]$/);
    }
  });

  it('holds every rule that requests use', () => {
    const source = readFileSync(new URL('../../src/register/requests.ts', import.meta.url), 'utf8');
    const used = [...source.matchAll(/error\(\s*'([a-z-]+)'/g)].map((match) => match[1]!);
    expect(used.length).toBeGreaterThan(3);
    expect(used.filter((rule) => !Object.hasOwn(RULES, rule))).toEqual([]);
  });
});
