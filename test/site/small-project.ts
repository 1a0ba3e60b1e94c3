/**
 * A publication with one page of each kind and as little behind it as that takes: for tests of builds that would show the same on any site.
 * It is made of the demonstration's own files, with shorter texts of the same names.
 */
import { readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** What of each folder of content/ stays. */
const KEPT: Record<string, readonly string[]> = {
  notes: ['a-second-larch.md'],
  scripts: [],
  comparisons: [],
  published: [],
  runs: ['larch-rated.md', 'larch-second.md'],
};

const RUNS = 'runs:\n  first: larch-rated\n  second: larch-second\n';

/** Texts in the place of the demonstration's, by path below content/. */
function texts(copy: string): Record<string, string> {
  return {
    'comparisons/larch-steps.md': `---\ntitle: Two specimens at one setting\n${RUNS}reference: first\n---\n\nOne run each.\n`,
    'notes/a-clock-it-cannot-keep.md': `---
title: One setting, two specimens
date: 2026-03-21
status: published
${RUNS}comparisons:
  steps: larch-steps
attempts:
  ladder: larch-2-no-1
---

The second draws :value[steps.power_delta.second] more, and settles at :value[second.steady_temperature]. Settings were tried up to
:value[ladder.highest_passed_clock]. What was found before is [on record](../../record-copies/${copy}/).
`,
    'scripts/a-clock-it-cannot-keep.md': `---
title: One setting, two specimens, spoken
date: 2026-03-22
status: published
note: a-clock-it-cannot-keep
pace: 145 words per minute
${RUNS}---

## Both of them

:::cue{at="0:00"}
The two devices on their stands.
:::

The second one settles at :value[second.steady_temperature].
`,
  };
}

/** Makes a small project of a copy of what a clone has. */
export function makeSmall(root: string): void {
  const content = join(root, 'content');
  for (const [folder, kept] of Object.entries(KEPT))
    for (const name of readdirSync(join(content, folder))) if (!kept.includes(name)) rmSync(join(content, folder, name));
  const [copy = ''] = readdirSync(join(content, 'record-copies'));
  for (const [path, text] of Object.entries(texts(copy.replace('.json', '')))) writeFileSync(join(content, path), text);
}
