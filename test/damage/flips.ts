/** Bytes that change on the disk behind everybody's back: sizes and times stay as they were. */
import { closeSync, openSync, readSync, statSync, utimesSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { differences, type TestProject, tree } from '../site/project.ts';

const A_ROUND = 10;
const FOLDERS = ['.cache', 'dist'];

/** Flips one bit of one byte of a file that is not empty. */
export function flip(path: string, random: () => number): void {
  const { size, atime, mtime } = statSync(path);
  const at = Math.floor(random() * size);
  const descriptor = openSync(path, 'r+');
  const byte = Buffer.alloc(1);
  readSync(descriptor, byte, 0, 1, at);
  byte[0] = byte[0]! ^ (1 << Math.floor(random() * 8));
  writeSync(descriptor, byte, 0, 1, at);
  closeSync(descriptor);
  utimesSync(path, atime, mtime);
}

/**
 * Flips `count` bytes of a built project, ten files at a time, and builds after each ten. Gives a sentence for each build that failed, printed
 * a stack of calls, or published something other than `cold`.
 */
export function surviveFlips(project: TestProject, cold: Map<string, Buffer>, count: number, random: () => number): string[] {
  const faults: string[] = [];
  for (let flipped = 0; flipped < count; ) {
    const files = FOLDERS.flatMap((folder) =>
      [...tree(join(project.root, folder))].filter(([, bytes]) => bytes.length > 0).map(([name]) => join(folder, name)),
    );
    const chosen = Array.from({ length: Math.min(A_ROUND, count - flipped) }, () => files[Math.floor(random() * files.length)]!);
    for (const file of chosen) flip(join(project.root, file), random);
    flipped += chosen.length;
    const { code, err } = project.run('build');
    const changed = differences(cold, tree(join(project.root, 'dist')));
    const told = [
      ...(code === 0 ? [] : [`ended with ${code}: ${err.slice(0, 400)}`]),
      ...(/^ +at /m.test(err) ? ['printed a stack of calls'] : []),
      ...(changed.length === 0 ? [] : [`published ${changed.join(', ')}`]),
    ];
    if (told.length > 0) faults.push(`The build after flips in ${chosen.join(', ')} ${told.join('; ')}.`);
  }
  return faults;
}
