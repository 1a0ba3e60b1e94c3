/** Two readings of schema.org that we did not write: all of its types (schema-dts 2.1.0), and schemas of some of them (schemaorg-jsd 0.17.1). */
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { Ajv } from 'ajv';
import ts from 'typescript';

const ROOT = join(import.meta.dirname, '..', '..');
const JSD = join(dirname(createRequire(import.meta.url).resolve('schemaorg-jsd/package.json')));
const CREATIVE_WORK = 'https://chharvey.github.io/schemaorg-jsd/schema/CreativeWork.jsd';

/** The JSON-LD blocks of a page. */
export function structuredData(html: string): Record<string, unknown>[] {
  const blocks = html.matchAll(/<script type="application\/ld\+json">([\s\S]*?)<\/script>/g);
  return [...blocks].map(([, json]) => JSON.parse(json!) as Record<string, unknown>);
}

/**
 * What TypeScript says of a thing held against the types of schema.org: properties that its class does not have, values of another kind.
 * Things are judged together, since reading the types takes seconds.
 */
export function againstTypes(things: readonly object[]): string[] {
  const file = join(ROOT, 'test', 'site', 'judged.ts');
  const lines = things.map((thing, index) => `export const t${index}: WithContext<Dataset | Report> = ${JSON.stringify(thing)};`);
  const source = `import type { Dataset, Report, WithContext } from 'schema-dts';\n${lines.join('\n')}\n`;
  const options: ts.CompilerOptions = {
    strict: true,
    noEmit: true,
    skipLibCheck: true,
    target: ts.ScriptTarget.ESNext,
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    types: [],
  };
  const host = ts.createCompilerHost(options);
  const { getSourceFile, fileExists, readFile } = host;
  host.fileExists = (path) => path === file || fileExists(path);
  host.readFile = (path) => (path === file ? source : readFile(path));
  host.getSourceFile = (path, ...rest) =>
    path === file ? ts.createSourceFile(path, source, ts.ScriptTarget.ESNext) : getSourceFile.call(host, path, ...rest);
  const program = ts.createProgram([file], options, host);
  return ts.getPreEmitDiagnostics(program).map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, '\n'));
}

/** Errors of a thing held against the schema of a CreativeWork, of which datasets and reports are kinds. */
export function againstSchema(): (thing: object) => unknown[] {
  const ajv = new Ajv({ strict: false, allErrors: true, validateFormats: false });
  // Schemas refer to one of JSON-LD itself on a host; offline, any object is JSON-LD.
  ajv.addSchema({ $id: 'https://json-ld.org/schemas/jsonld-schema.json', type: 'object' });
  for (const folder of ['meta', 'schema'])
    for (const name of readdirSync(join(JSD, folder))) ajv.addSchema(JSON.parse(readFileSync(join(JSD, folder, name), 'utf8')));
  const validate = ajv.getSchema(CREATIVE_WORK)!;
  return (thing) => (validate(thing) ? [] : (validate.errors ?? []));
}
