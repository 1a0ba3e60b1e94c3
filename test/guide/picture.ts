/** `npm run picture`: the picture of a page that README.md shows, from the site as it was last built. */
import { existsSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { commandLine } from '../../src/commands/command-line.ts';
import { startBrowser } from '../site/browser.ts';
import { serve } from '../site/server.ts';

commandLine({
  name: 'picture',
  does: 'Takes the picture of a note that README.md shows, from the site in dist/. Run `npm run build` first.',
  exits: { 0: 'the picture is made', 1: 'there is no site in dist/' },
  example: 'npm run picture',
});

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const DIST = join(ROOT, 'dist');
const TO = join(ROOT, 'src/guide/note.png');
const NOTE = 'notes/a-clock-it-cannot-keep/';

if (!existsSync(join(DIST, NOTE))) {
  console.error('There is no site in dist/ yet: `npm run build` makes it.');
  process.exit(1);
}
const served = await serve(DIST);
const browser = await startBrowser();
const page = await browser.newPage({ viewport: { width: 1000, height: 960 }, colorScheme: 'light' });
await page.goto(served.address + NOTE, { waitUntil: 'networkidle' });
await page.screenshot({ path: TO });
await browser.close();
await served.close();
console.log(`${relative(ROOT, TO)}: ${Math.round(statSync(TO).size / 1024)} kB`);
