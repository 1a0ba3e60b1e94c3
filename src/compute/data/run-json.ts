/** A run as other programs read it: `runs/<id>/figures.json`. What a comparison says of a run besides its figures stands under `about`. */
import { runFiguresJson } from '../../figures/figures-json.ts';
import type { Register } from '../../register/register.ts';
import { gatherFacts, type ReadRun } from '../comparison/gather.ts';

export function runJson(register: Register, computed: ReadRun): object {
  const { id, setting, conditions } = computed.run;
  const { title, date, device, specimen, instruments, channels, ambient, cautions, log, other_logs, tables } = gatherFacts(
    register,
    id,
    computed,
  );
  const about = { title, date, device, instruments, channels, ambient, cautions };
  return runFiguresJson({
    run: id,
    device: device.id,
    specimen,
    setting,
    conditions,
    about,
    ...(log && { log }),
    ...(other_logs && { other_logs }),
    tables,
    derived: computed.derived,
  });
}
