/** The `@example` lines of doc comments are cases: `mean([1, 2, 6]) // 3`, `// 1.95…` for digits that go on, `// throws …` for a refusal. */
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const FOLDER = join(import.meta.dirname, '../../src/statistics');
const files = globSync('*.ts', { cwd: FOLDER }).sort();

interface Example {
  readonly expression: string;
  readonly expected: string;
}

/** By the name of the function that the comment belongs to. */
function examplesIn(text: string): Map<string, Example[]> {
  const documented = text.matchAll(/\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\nexport function (\w+)/g);
  return new Map([...documented].map(([, comment, name]) => [name!, examplesOf(comment!)]));
}

function examplesOf(comment: string): Example[] {
  const [, written = ''] = comment.split('@example');
  return [...written.matchAll(/^ \* (.+?) \/\/ (.+)$/gm)].map(([, expression, expected]) => ({
    expression: expression!,
    expected: expected!,
  }));
}

function evaluated(expression: string, functions: Readonly<Record<string, unknown>> = {}): unknown {
  return new Function(...Object.keys(functions), `return (${expression})`)(...Object.values(functions));
}

describe('statistics, the examples of doc comments', async () => {
  for (const file of files) {
    const functions = (await import(join(FOLDER, file))) as Readonly<Record<string, unknown>>;
    const examples = examplesIn(readFileSync(join(FOLDER, file), 'utf8'));

    test(`${file}: every exported function has one`, () => {
      const exported = Object.keys(functions).filter((name) => typeof functions[name] === 'function');
      expect(exported.filter((name) => (examples.get(name) ?? []).length === 0)).toEqual([]);
    });

    test.each([...examples.values()].flat())(`${file}: $expression`, ({ expression, expected }) => {
      const [digits, more] = expected.split('…');
      if (expected.startsWith('throws ')) expect(() => evaluated(expression, functions)).toThrow(expected.slice('throws '.length));
      else if (more !== undefined) expect(String(evaluated(expression, functions)).startsWith(digits!)).toBe(true);
      else expect(evaluated(expression, functions)).toEqual(evaluated(expected));
    });
  }
});
