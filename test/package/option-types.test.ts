import { mkdtempSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { expect, inject, test } from 'vitest';
import { optionTypes } from './emit.ts';

const OPTIONS = [
  "{ title: 'T', navigation: ['notes', { label: 'Parts', to: 'https://parts.example' }], accent: { dark: '#93c7e6' } }",
  "{ title: 'T', bylin: 'B' }",
  "{ title: 'T', navigation: ['nots'] }",
];

/** What an editor says of configurations that import the packed types, in one program since it takes a second to begin. */
function said(all: readonly string[]): string[] {
  const folder = mkdtempSync(join(inject('scratch'), 'types-'));
  writeFileSync(join(folder, 'soakproof.d.mts'), optionTypes());
  const files = all.map((options, at) => {
    const file = join(folder, `config-${at}.mts`);
    writeFileSync(file, `import { publication } from './soakproof.mjs';\nexport default publication(${options});\n`);
    return file;
  });
  const program = ts.createProgram(files, {
    ...{ strict: true, noEmit: true, module: ts.ModuleKind.NodeNext, lib: ['lib.es5.d.ts'], types: [], skipLibCheck: true },
  });
  return files.map((file) =>
    ts
      .getPreEmitDiagnostics(program, program.getSourceFile(file))
      .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '))
      .join(' '),
  );
}

test('package: editors know every option, what it takes, and what is none', () => {
  const [right, unknown, wrong] = said(OPTIONS);
  expect(right).toBe('');
  expect(unknown).toContain("'bylin' does not exist in type 'SiteOptions'");
  expect(wrong).toContain('nots');
});
