/** Where the lines of a part of a long log stand in the file, and what is declared of the file as it holds for the part. */
import type { Problem } from '../problem.ts';
import type { Known, LogDeclaration, Repair } from './log.ts';

export interface PartLines {
  /** Lines of the header and what is above it, with which the part begins; 0 in the first part, where they are its own. */
  readonly head: number;
  /** Line of the file that stands again below these: the last row before the part; 0 in the first part. */
  readonly anchor: number;
  /** Line of the file on which the part's own bytes begin. */
  readonly body: number;
}

/** The line of the part that repeats the last row before it; 0 in the first part. */
export function anchorIn({ head, anchor }: PartLines): number {
  return anchor === 0 ? 0 : head + 1;
}

/** The line of the file for a line of the part. */
export function lineInFile(part: PartLines, line: number): number {
  const repeated = anchorIn(part);
  if (line > repeated) return line - repeated - 1 + part.body;
  return line === repeated ? part.anchor : line;
}

/** Lines of the file as lines of the part; null where the part has none of them. */
function linesInPart(part: PartLines, from: number, to: number): readonly [number, number] | null {
  const repeated = anchorIn(part);
  const within = (line: number) => line - part.body + repeated + 1;
  const ofAnchor = part.anchor > 0 && from <= part.anchor && to >= part.anchor;
  const first = ofAnchor ? repeated : Math.max(within(from), repeated + 1);
  const last = to >= part.body ? within(to) : ofAnchor ? repeated : 0;
  return first <= last ? [first, last] : null;
}

/** A problem with its place in the file. */
export function problemInFile(part: PartLines, problem: Problem, file: string): Problem {
  const { place } = problem;
  if (place.file !== file) return problem;
  const line = lineInFile(part, place.line);
  return { ...problem, place: { ...place, line, ...(place.endLine === undefined ? {} : { endLine: line }) } };
}

export interface PartDeclaration {
  readonly declaration: LogDeclaration;
  /** The author's own entry for each that was moved. */
  readonly repairs: ReadonlyMap<Repair, Repair>;
  readonly known: readonly Known[];
}

/**
 * Repairs and known lines moved to the part, of which `lastLine` is the last line. What is judged of the whole log is left out: phases, channels with few readings, entries without effect.
 */
export function declarationOfPart(part: PartLines, declaration: LogDeclaration, lastLine: number): PartDeclaration {
  const repairs = new Map<Repair, Repair>();
  for (const repair of declaration.repairs) {
    const lines = linesInPart(part, repair.fromLine, repair.toLine);
    if (lines && lines[0] <= lastLine) repairs.set({ ...repair, fromLine: lines[0], toLine: Math.min(lines[1], lastLine) }, repair);
  }
  const known: Known[] = [];
  const moved: Known[] = [];
  for (const entry of declaration.known ?? []) {
    if ('channel' in entry) {
      // Of a part with few readings nothing is told; the whole log is judged at its end.
      moved.push({ ...entry, ofSetup: true });
      known.push(entry);
    }
    if (!('fromLine' in entry)) continue;
    const lines = linesInPart(part, entry.fromLine, entry.toLine);
    if (!lines) continue;
    moved.push({ ...entry, fromLine: lines[0], toLine: lines[1], ofSetup: true });
    known.push(entry);
  }
  const { phaseStarts: _, known: __, ...rest } = declaration;
  return { declaration: { ...rest, repairs: [...repairs.keys()], ...(moved.length > 0 ? { known: moved } : {}) }, repairs, known };
}
