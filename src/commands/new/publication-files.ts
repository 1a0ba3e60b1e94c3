/** The files of a new publication besides its runs and notes. */
import { FRONT_MATTER } from '../../register/files/front-matter-shapes.ts';
import { jsonSchemas } from '../../register/json-schemas.ts';
import { exampleFile } from './example-file.ts';

export interface NewPackage {
  /** The folder's name, as a package may be called. */
  readonly name: string;
  /** Names of the tool's commands. */
  readonly commands: readonly string[];
  /** Where npm finds the tool: a version, or a file. */
  readonly tool: string;
  /** Which packages may run a script of their own when they are installed. */
  readonly allowScripts: Readonly<Record<string, boolean>>;
}

const CONFIG = `import { publication } from 'soakproof';

// The site as a whole. \`site\` is the address that readers use, \`base\` the folder it stands in ('/' or '/reports/').
export default publication({
  title: 'My bench',
  byline: 'Measurements of small computers',
  // site: 'https://bench.example',
  base: '/',
});
`;

const IGNORED = 'node_modules/\ndist/\nstills/\n.cache/\n.astro/\n';

const ATTRIBUTES = `# Digests are of the bytes as they are: no other line ends on another system.
data/** -text
content/published/*.json -text
content/record-copies/*.json -text
`;

/** Hosts of repositories differ in how a recipe is named; what it runs is this. */
const RECIPE = `#!/usr/bin/env sh
# What a host of repositories runs for every change. It needs Node 20 or newer and npm.
# \`npm run --silent check -- --sarif > check.sarif\` prints the same for hosts that show it beside the line.
set -eu
npm ci
npm run check
npm run build
`;

/** By path: the text of each file. A folder that starts empty has a file that only keeps it. */
export function publicationFiles(): ReadonlyMap<string, string> {
  const folders = Object.entries(FRONT_MATTER);
  const schemas = Object.entries(jsonSchemas());
  return new Map([
    ['astro.config.mjs', CONFIG],
    ['.gitignore', IGNORED],
    ['.gitattributes', ATTRIBUTES],
    ['.ci/check', RECIPE],
    ['data/.gitkeep', ''],
    ...folders.map(([folder]) => [`content/${folder}/.gitkeep`, ''] as const),
    ...folders.map(([folder, shape]) => [`examples/${folder}.md`, exampleFile(folder, shape)] as const),
    ...schemas.map(([folder, schema]) => [`examples/schemas/${folder}.json`, jsonText(schema)] as const),
  ]);
}

/** What stands in a package.json already stays as it is; what is missing is added. Throws where the text is no JSON object. */
export function packageText(before: string | undefined, { name, commands, tool, allowScripts }: NewPackage): string {
  const ours = {
    name,
    private: true,
    type: 'module',
    scripts: Object.fromEntries(commands.map((command) => [command, `soakproof ${command}`])),
    dependencies: { soakproof: tool },
    allowScripts,
  };
  if (before === undefined) return jsonText(ours);
  const theirs = JSON.parse(before) as Partial<typeof ours>;
  return jsonText({
    ...ours,
    ...theirs,
    scripts: { ...ours.scripts, ...theirs.scripts },
    dependencies: { ...ours.dependencies, ...theirs.dependencies },
    allowScripts: { ...ours.allowScripts, ...theirs.allowScripts },
  });
}

function jsonText(value: object): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
