/** A table of attempts becomes a file of its own. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { writeAttempts } from './basis.ts';
import type { Looked } from './look-at.ts';
import type { Output } from './output.ts';
import { readProject } from './project.ts';
import { idOf } from './run-names.ts';
import { tableLines } from './table-lines.ts';

/** Whether the file is in the project now, or its lines were printed to be put there. */
export function addAttempts(root: string, { path, file, found }: Looked, output: Output): boolean {
  const project = readProject(root);
  const device = project.devices[0];
  const specimen = project.specimens[0] ?? 'no-1';
  const lines = tableLines(path, found!, undefined);
  if (device === undefined || project.devices.length > 1) {
    output.out(`${file} is a table of attempts: name it in content/attempts/<id>.md with these lines\n${lines.join('\n')}\n`);
    return true;
  }
  const id = idOf(path);
  if (existsSync(join(root, 'content', 'attempts', `${id}.md`))) {
    output.err(`${file} is not added: content/attempts/${id}.md is there already and is not overwritten\n`);
    return false;
  }
  const written = writeAttempts(root, id, device, specimen, lines);
  output.out(`${file}: a table of attempts\n  wrote ${written.file}; look at ${written.look}\n`);
  return true;
}
