/**
 * Which tests have to notice that a file is wrong: its own and those that import it; those of the files that import it; those of its
 * folder that reach it by more steps; and those of its wing, such as the corpus behind the front door of words.
 */
import { existsSync, globSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';

const IMPORT = /(?:from|import)\s*\(?'(\.[^']+)'/g;

export interface Relatives {
  readonly own: string[];
  readonly others: string[];
  readonly folder: string[];
  readonly wing: string[];
}

/** Gives for a file below `root` its own tests, those of its neighbours, of its folder and of its wing; paths as `src/statistics/mean.ts`. */
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
    const reached = [...reaching(file, importers)].filter((test) => isUnit(test) && !own.has(test) && !others.has(test));
    const wing = `${mirror(file).split('/').slice(0, 2).join('/')}/`;
    const isNear = (test: string) => dirname(test) === dirname(mirror(file));
    return {
      own: [...own],
      others: [...others].filter((test) => !own.has(test)),
      folder: reached.filter(isNear),
      wing: reached.filter((test) => test.startsWith(wing) && !isNear(test)),
    };
  };
}

/** Every file that imports a file, by however many steps. */
function reaching(file: string, importers: ReadonlyMap<string, ReadonlySet<string>>): Set<string> {
  const reached = new Set([file]);
  for (const each of reached) for (const importer of importers.get(each) ?? []) reached.add(importer);
  return reached;
}
