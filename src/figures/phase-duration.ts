/** How long each phase lasted. */
import { absent, noPhase } from './absent.ts';
import type { Measured } from './average.ts';
import type { Phase } from './figure.ts';
import { present } from './present.ts';
import { type Entry, phaseOf, type Soak } from './soak.ts';
import { quantityOf, samplingPart } from './sources.ts';

const NAME = 'phase_duration';

/** s: `phase_duration` of the load, `phase_duration.<phase>` of the others. */
export function phaseDurations(soak: Soak): Entry[] {
  const load = phaseOf(soak, 'load');
  const others = soak.phases.filter((phase) => phase !== load);
  return [
    load ? [NAME, lasted(soak, load, NAME)] : [NAME, absent(NAME, noPhase(soak, 'load'))],
    ...others.map((phase): Entry => [`${NAME}.${phase.name}`, lasted(soak, phase, `${NAME}.${phase.name}`)]),
  ];
}

/** Of the run's first log where there are several; null where it has no row in the phase. */
function linesOf({ log: { lines, joined } }: Soak, { fromRow, toRow }: Phase): readonly [number, number] | null {
  if (!joined) return [lines[fromRow]!, lines[toRow - 1]!];
  const own = [...lines.subarray(fromRow, toRow)].filter((_, i) => joined.ofRow[fromRow + i] === 0);
  return own.length === 0 ? null : [own[0]!, own.at(-1)!];
}

/** A phase outside the log has no rows, and lasted for nothing that was logged. */
function lasted(soak: Soak, phase: Phase, address: string) {
  const { log, context } = soak;
  if (phase.toRow <= phase.fromRow) {
    return absent(NAME, { absent: 'no-readings', why: `The log has no rows in the ${phase.name} phase.` });
  }
  const step = log.time.step ?? 0;
  const inner = Number(phase.fromRow > 0) + Number(phase.toRow < log.rows);
  const bend = (phase.sharpness ?? 0) * Math.sqrt(inner / 3);
  const edge = samplingPart(context, address, Math.hypot(step / Math.sqrt(6), bend), null);
  const measured: Measured = {
    quantity: quantityOf(phase.to - phase.from, 's', [edge], { stated: true, step: 0 }),
    from: { columns: [log.time.column], rows: linesOf(soak, phase) },
    of: { phase: phase.name, edges: phase.inferred ? 'inferred from the log' : 'as declared' },
  };
  return present(NAME, soak, measured);
}
