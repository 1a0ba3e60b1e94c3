/** Where a command spends its time: V8's sampled profiles of all its threads, added up by the room of the code, or the package, that was at work. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What V8 writes with `--cpu-prof` (the format of Chrome DevTools). */
interface Profile {
  readonly nodes: readonly {
    readonly id: number;
    readonly callFrame: { readonly functionName: string; readonly url: string };
    readonly children?: readonly number[];
  }[];
  readonly samples: readonly number[];
  /** µs before each sample. */
  readonly timeDeltas: readonly number[];
}

export interface Spent {
  readonly part: string;
  /** Of all that was sampled, but for idle threads. */
  readonly share: number;
}

/** The parts of all profiles of a folder, the dearest first. A package that a room has called counts for the room, as far as the stack shows it. */
export function spentBy(folder: string): Spent[] {
  const total = new Map<string, number>();
  for (const name of readdirSync(folder)) {
    const { nodes, samples, timeDeltas } = JSON.parse(readFileSync(join(folder, name), 'utf8')) as Profile;
    const parts = partsOf(nodes);
    for (const [at, sample] of samples.entries()) {
      const part = parts.get(sample)!;
      total.set(part, (total.get(part) ?? 0) + timeDeltas[at]! / 1e6);
    }
  }
  total.delete('(idle)');
  const all = [...total.values()].reduce((sum, seconds) => sum + seconds, 0);
  return [...total].map(([part, seconds]) => ({ part, share: seconds / all })).sort((a, b) => b.share - a.share);
}

/** Parents stand before their children. */
function partsOf(nodes: Profile['nodes']): ReadonlyMap<number, string> {
  const rooms = new Map<number, string | undefined>();
  const parts = new Map<number, string>();
  for (const { id, callFrame, children = [] } of nodes) {
    const room = roomOf(callFrame.url) ?? rooms.get(id);
    for (const child of children) rooms.set(child, room);
    const { url, functionName } = callFrame;
    // V8 hangs what is of no function, such as its garbage collector, below the root, and puts its name in brackets.
    parts.set(id, room ?? packageOf(url) ?? (functionName.startsWith('(') ? functionName : 'Node'));
  }
  return parts;
}

/** `src/words`, `src/compute/archive`, `src/compute/steps/plots`. */
function roomOf(url: string): string | undefined {
  return /\/(src\/(?:compute\/(?:steps\/)?)?[a-z-]+)\/[^/]/.exec(url)?.[1];
}

function packageOf(url: string): string | undefined {
  if (url.startsWith('node:')) return 'Node';
  return /.*\/node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(url)?.[1];
}
