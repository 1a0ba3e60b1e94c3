import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { report } from '../../src/print/report.ts';
import { withStyles } from '../../src/print/visible.ts';
import { error } from '../../src/problem.ts';

let root: string;
beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-visible-'));
  mkdirSync(join(root, 'content'));
});
afterAll(() => rmSync(root, { recursive: true }));

describe('print/visible', () => {
  it('lets colours and bold through, and nothing else that acts on a terminal', () => {
    expect(withStyles('\u001b[1m»7\u001b[2J1«\u001b[22m \u001b[31;1m!')).toBe('\u001b[1m»7⟨U+001B⟩[2J1«\u001b[22m \u001b[31;1m!');
  });

  it('guards the terminal whoever writes to it', () => {
    const code = `import './src/commands/plain-failures.ts'; console.log('\u001b]0;title\u0007 \u001b[32mgreen\u001b[39m'); console.error('7\u202e5'); throw new Error('\u001b[2J')`;
    const { stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', code], { encoding: 'utf8' });
    expect(stdout).toBe('⟨U+001B⟩]0;title⟨U+0007⟩ \u001b[32mgreen\u001b[39m\n');
    expect(stderr).toMatch(/^7⟨U\+202E⟩5\nSoakproof itself failed: ⟨U\+001B⟩\[2J/);
  });

  it('keeps the mark of a report under its words', () => {
    writeFileSync(join(root, 'content', 'a.csv'), 'one\n\u001b[31m,7\u202e5\n');
    const place = { file: 'content/a.csv', line: 2, column: 7, endLine: 2, endColumn: 10 };
    const [head, line, mark] = report(root, [error('a', place, 'the cell is `7\u202e5`\nb: error: c')]).split('\n');
    expect(head).toBe('content/a.csv:2:7: error: the cell is `7⟨U+202E⟩5` ⏎ b: error: c [a]');
    expect(line).toBe('> 2 | ⟨U+001B⟩[31m,7⟨U+202E⟩5');
    expect(mark).toBe(`    | ${' '.repeat('⟨U+001B⟩[31m,'.length)}${'^'.repeat('7⟨U+202E⟩5'.length)}`);
  });
});

describe('print/report, of links', () => {
  it('opens nothing outside the project, and no pipe or device', () => {
    writeFileSync(join(root, 'secret'), 'secret words\n');
    symlinkSync(join(root, 'secret'), join(root, 'content', 'link.md'));
    symlinkSync('/dev/zero', join(root, 'content', 'endless.md'));
    expect(spawnSync('mkfifo', [join(root, 'pipe')]).status).toBe(0);
    symlinkSync(join(root, 'pipe'), join(root, 'content', 'pipe.md'));
    const problems = ['link', 'endless', 'pipe'].map((name) =>
      error('link-outside', { file: `content/${name}.md`, line: 1, column: 1 }, 'this link leads outside'),
    );
    expect(report(root, problems)).toBe(
      `${problems.map(({ place }) => `${place.file}:1:1: error: this link leads outside [link-outside]`).join('\n\n')}\n\n3 errors, 0 warnings\n`,
    );
  });
});
