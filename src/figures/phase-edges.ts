/** Declared phases held against the loads that the log shows. */
import type { Log } from '../intake/log.ts';
import { findEdges, readBefore } from './change-point.ts';
import type { DeclaredPhase } from './context.ts';

/** A declared phase that does not agree with the log. Times in seconds since the first row. */
export interface EdgeOff {
  readonly phase: DeclaredPhase;
  /** `begins`, `ends`: a load phase off from its load. `holds`: another phase that part of a load lies in. */
  readonly kind: 'begins' | 'ends' | 'holds';
  /** Where the log shows the edge; of `holds`, where the load begins in the phase. */
  readonly seen: number;
  /** Seconds by which the phase is late, negative where early; of `holds`, seconds of load in it. */
  readonly off: number;
  readonly channel: string;
  /** The gap of the log that the edge lies in, where the phase is off even from that. */
  readonly gap?: readonly [from: number, to: number];
}

/** An author writes phases to the second: less than this is no slip, s. */
const ROUNDED = 3;

/** Phases of a load are named so: `load`, `load-2`, `load_high`. */
const OF_LOAD = /^load(?![a-z])/;

/** Whether a phase is one of a load, by its name. */
export function isOfLoad(name: string): boolean {
  return OF_LOAD.test(name);
}

/** Where declared phases and the log disagree by more than both can be told; none where no channel shows a load. */
export function edgesOff(log: Log, declared: readonly DeclaredPhase[]): readonly EdgeOff[] {
  const edges = findEdges(log);
  if (!edges) return [];
  const slack = Math.max(ROUNDED, edges.sharpness);
  const { seconds } = log.time;
  const end = seconds[log.rows - 1]!;
  const edgeAt = (row: number): Edge => {
    const [at, after] = [seconds[Math.min(row, seconds.length - 1)]!, readBefore(log, edges, row)];
    // A step of the log is no gap: what is told is the row that shows the edge.
    return { at, after: at - after > slack ? after : at };
  };
  const loads = edges.loads.map(({ startRow, endRow }): Stretch => {
    const [begins, ends] = [edgeAt(startRow), edgeAt(endRow)];
    return { from: begins.at, to: ends.at, begins, ends };
  });
  const told = new Set<Stretch>();
  const off = declared.flatMap((phase): EdgeOff[] => {
    const to = Math.min(phase.to, end);
    if (!isOfLoad(phase.name)) return [];
    const own = mostShared(loads, phase.from, to);
    if (!own) return [];
    const all: EdgeOff[] = [
      { phase, kind: 'begins', ...offFrom(phase.from, own.begins), channel: edges.channel },
      { phase, kind: 'ends', ...offFrom(to, own.ends), channel: edges.channel },
    ];
    const found = all.filter((each) => Math.abs(each.off) > slack && !isCut(each, loads, declared, log));
    if (found.length > 0) told.add(own);
    return found;
  });
  const holds = declared.flatMap((phase): EdgeOff[] => {
    if (isOfLoad(phase.name)) return [];
    return loads.flatMap((load): EdgeOff[] => {
      const [start, stop] = [Math.max(load.begins.at, phase.from), Math.min(load.ends.after, phase.to)];
      if (stop - start <= slack || told.has(load)) return [];
      return [{ phase, kind: 'holds', seen: start, off: stop - start, channel: edges.channel }];
    });
  });
  return [...off, ...holds];
}

/** An edge lies after one instant and at another at the latest: far apart where it lies in a gap of the log. */
interface Edge {
  readonly after: number;
  readonly at: number;
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly begins: Edge;
  readonly ends: Edge;
}

/** How far a declared edge is off: nothing between the two instants. */
function offFrom(declared: number, { after, at }: Edge): Pick<EdgeOff, 'seen' | 'off' | 'gap'> {
  const seen = declared < after ? after : at;
  const gap = after < at ? { gap: [after, at] as const } : {};
  return { seen, off: declared > after && declared < at ? 0 : declared - seen, ...gap };
}

/** The load that most of a stretch lies in; null where it meets none. */
function mostShared(loads: readonly Stretch[], from: number, to: number): Stretch | null {
  const shared = ({ from: a, to: b }: Stretch) => Math.min(to, b) - Math.max(from, a);
  const best = loads.reduce<Stretch | null>((most, load) => (most && shared(most) >= shared(load) ? most : load), null);
  return best && shared(best) > 0 ? best : null;
}

/** An edge that need not agree: one load cut into several phases on purpose, several loads in one phase, or a load that goes on past the log. */
function isCut({ phase, kind, seen }: EdgeOff, loads: readonly Stretch[], declared: readonly DeclaredPhase[], log: Log): boolean {
  const others = declared.filter((each) => each !== phase && OF_LOAD.test(each.name));
  const own = kind === 'begins' ? phase.from : phase.to;
  if (others.some((each) => (kind === 'begins' ? each.to : each.from) === own)) return true;
  if (kind === 'ends' && seen >= log.time.seconds[log.rows - 1]!) return phase.to >= seen;
  return loads.filter(({ from, to }) => from < phase.to && to > phase.from).length > 1;
}
