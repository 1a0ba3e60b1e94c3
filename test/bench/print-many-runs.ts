/** Prints the site of the working folder, already built, with an invented index of as many runs as the first argument says. */
import { readManifest } from '../../src/compute/project/manifest.ts';
import { openStore } from '../../src/compute/store/store.ts';
import { print } from '../../src/print/build.ts';
import { manyRuns } from './many-runs.ts';

const root = process.cwd();
const manifest = readManifest(root, 'site')!;
const blob = openStore(root).keep(JSON.stringify(manyRuns(Number(process.argv[2]))));
await print(root, { ...manifest, pages: manifest.pages.map((page) => (page.kind === 'runs' ? { ...page, blob } : page)) });
