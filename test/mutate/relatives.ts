/** Which tests have to notice that a file is wrong: its own, those that import it, and those of the files that import it. */
import { existsSync, globSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';

const IMPORT = /(?:from|import)\s*\(?'(\.[^']+)'/g;

/** Gives for a file below `root` its own tests, and those of its neighbours; paths as `src/statistics/mean.ts`. */
export function openRelatives(root: string): (file: string) => { readonly own: string[]; readonly others: string[] } {
  const files = globSync('{src,test}/**/*.ts', { cwd: root });
  const importers = new Map<string, Set<string>>();
  for (const file of files) {
    for (const [, target] of readFileSync(join(root, file), 'utf8').matchAll(IMPORT)) {
      const imported = normalize(join(dirname(file), target!));
      importers.set(imported, (importers.get(imported) ?? new Set()).add(file));
    }
  }
  const isUnit = (file: string) => file.endsWith('.test.ts') && !file.endsWith('.stage.test.ts') && !file.startsWith('test/site/');
  const mirror = (file: string) => file.replace(/^src\//, 'test/').replace(/\.ts$/, '.test.ts');
  const of = (file: string) =>
    [mirror(file), ...(importers.get(file) ?? [])].filter((test) => isUnit(test) && existsSync(join(root, test)));
  return (file) => {
    const own = new Set(of(file));
    const others = new Set([...(importers.get(file) ?? [])].filter((importer) => importer.startsWith('src/')).flatMap(of));
    return { own: [...own], others: [...others].filter((test) => !own.has(test)) };
  };
}
