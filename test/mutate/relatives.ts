/**
 * Which tests have to notice that a file is wrong: its own and those that import it; those of the files that import it; and those of its
 * folder that reach it by more steps, such as the corpus behind a front door.
 */
import { existsSync, globSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';

const IMPORT = /(?:from|import)\s*\(?'(\.[^']+)'/g;

export interface Relatives {
  readonly own: string[];
  readonly others: string[];
  readonly folder: string[];
}

/** Gives for a file below `root` its own tests, those of its neighbours and of its folder; paths as `src/statistics/mean.ts`. */
export function openRelatives(root: string): (file: string) => Relatives {
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
    const folder = [...reaching(file, importers)].filter((test) => isUnit(test) && dirname(test) === dirname(mirror(file)));
    return {
      own: [...own],
      others: [...others].filter((test) => !own.has(test)),
      folder: folder.filter((test) => !own.has(test) && !others.has(test)),
    };
  };
}

/** Every file that imports a file, by however many steps. */
function reaching(file: string, importers: ReadonlyMap<string, ReadonlySet<string>>): Set<string> {
  const reached = new Set([file]);
  for (const each of reached) for (const importer of importers.get(each) ?? []) reached.add(importer);
  return reached;
}
