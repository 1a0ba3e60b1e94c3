/** Baseline: Vega-Lite and Vega alone over the same specifications, in one thread. */
import { readFileSync } from 'node:fs';
import { parse, View } from 'vega';
import { compile, type TopLevelSpec } from 'vega-lite';

const specs = JSON.parse(readFileSync(process.argv[2]!, 'utf8')) as TopLevelSpec[];
let characters = 0;
for (const spec of specs) {
  const view = new View(parse(compile(spec).spec), { renderer: 'none' });
  characters += (await view.toSVG()).length;
  view.finalize();
}
console.log(`${specs.length} specifications, ${characters} characters`);
