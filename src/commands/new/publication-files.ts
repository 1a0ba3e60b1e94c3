/** The files of a new publication besides its runs and notes. */
import { FRONT_MATTER } from '../../register/files/front-matter-shapes.ts';
import { jsonSchemas } from '../../register/json-schemas.ts';
import { exampleFile } from './example-file.ts';

const CONFIG = `import { publication } from 'soakproof';

// The site as a whole. \`site\` is the address that readers use, \`base\` the folder it stands in ('/' or '/reports/').
// The guide lists all options, under “Options of the site”.
export default publication({
  title: 'My bench',
  byline: 'Measurements of small computers',
  // site: 'https://bench.example',
  base: '/',
  // contact: 'me@bench.example',
  // licence: { words: 'CC-BY-4.0', data: 'CC0-1.0' },
  // funding: 'I paid for the devices and the instruments myself',
  // about: 'about.md',
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
# \`npx --no soakproof check --sarif > check.sarif\` prints the same for hosts that show it beside the line.
set -eu
npm ci
npx --no soakproof check
npx --no soakproof build
npx --no soakproof check-site
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

function jsonText(value: object): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
