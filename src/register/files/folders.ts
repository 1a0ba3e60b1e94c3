/** Which files of content/ are read, as what, and under which id. */
import { compareText } from '../../problem.ts';
import type { ContentFile } from '../register.ts';
import { ID_RULE, idFromWords, isId, meant, oneOf } from '../values/names.ts';
import { cut } from '../values/values.ts';
import { startOf } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

const FOLDERS = ['devices', 'instruments', 'setups', 'runs', 'attempts', 'comparisons', 'quoted', 'notes', 'scripts'] as const;
export type Folder = (typeof FOLDERS)[number];

/** Folders that commands write. */
const WRITTEN_BY_COMMANDS = ['published', 'record-copies', 'archives'];

export interface Placed {
  readonly folder: Folder;
  readonly id: string;
  /** Undefined where the file cannot be used: references to its id are then not reported too. */
  readonly file: ContentFile | undefined;
}

/** Sorts files into folders, by path, so that their order of arrival has no effect. Problems: what cannot be placed, and ids that collide. */
export function placeFiles(files: readonly ContentFile[], report: Report): Placed[] {
  const sorted = [...files].sort((a, b) => compareText(a.path, b.path));
  const seen = new Map<string, string>();
  return sorted.flatMap((file) => {
    const placed = placeFile(file, report);
    if (!placed) return [];
    const key = `${placed.folder}/${placed.id.toLowerCase()}`;
    const other = seen.get(key);
    if (other !== undefined) {
      report.error('id-collides', startOf(file.path), `this file has the same id as ${other}`, { remedy: 'rename one of the two' });
      return [{ ...placed, file: undefined }];
    }
    seen.set(key, file.path);
    if (isId(placed.id)) return [placed];
    tellId(placed.id, file, report);
    return [placed.id, idFromWords(placed.id)].map((id) => ({ ...placed, id, file: undefined }));
  });
}

/** Steps of a path below content/; hidden files and what commands write are none of ours. */
function placeFile(file: ContentFile, report: Report): Placed | undefined {
  const steps = file.path.split('/').slice(1);
  const [folder = '', ...rest] = steps;
  const name = steps.at(-1) ?? '';
  if (name.startsWith('.') || WRITTEN_BY_COMMANDS.includes(folder)) return undefined;
  if (!name.endsWith('.md')) {
    report.warning('unread-file', startOf(file.path), `\`${cut(name)}\` is not read`, {
      expected: 'files that end in `.md`',
      remedy: 'rename it, or move it out of content/',
    });
    return undefined;
  }
  const known = FOLDERS.find((each) => each === folder);
  if (known && rest.length === 1) return { folder: known, id: name.slice(0, -'.md'.length), file };
  const found = known
    ? `this file is in a folder inside content/${known}/`
    : rest.length === 0
      ? 'this file is in no folder of content/'
      : `there is no content/${cut(folder)}/`;
  report.error('unknown-folder', startOf(file.path), found, {
    expected: known ? `content/${known}/<id>.md` : `a file directly in one of ${oneOf(FOLDERS)}`,
    ...(known || rest.length === 0 ? {} : meant(folder, FOLDERS)),
  });
  return undefined;
}

function tellId(id: string, file: ContentFile, report: Report): void {
  const better = idFromWords(id);
  report.error('bad-id', startOf(file.path), `the name of this file, \`${cut(id)}\`, is not an id`, {
    expected: ID_RULE,
    ...(isId(better) ? { remedy: `rename it to \`${better}.md\`` } : {}),
  });
}
