/** Problems of the moment: told, but never stored as a result, since the same files may be fine the next time. */
import { error, type Place, type Problem } from '../../problem.ts';
import { isDamage, systemFault } from './damage.ts';

/** A file changed between its digest and its reading. */
const CHANGED_WHILE_READ = 'changed-while-read';

/** A fault of our own code, which may have been one of the disk. */
const FAULT = 'fault';

/** Of a file that is being written while it is read. */
export function changed(file: string, place: Place): Problem {
  const remedy = 'let the logger finish, then run the command again';
  return error(CHANGED_WHILE_READ, place, `${file} changed while it was read`, { remedy });
}

/**
 * Of what our own code could not do: `what` is the beginning of a sentence, `report` what to send along. Throws again what is no fault of
 * our code: damage of the cache, and what the system says of the disk.
 */
export function fault(place: Place, what: string, thrown: unknown, report = ''): Problem {
  if (isDamage(thrown) || systemFault(thrown) !== undefined) throw thrown;
  const found = `${what}: ${thrown instanceof Error ? thrown.message : String(thrown)}`;
  const remedy = `this is a fault of the program, not of your files: please report it${report}`;
  return error(FAULT, place, found, { remedy });
}

/** Whether a problem may go away by itself. */
export function isMomentary({ rule }: Problem): boolean {
  return rule === CHANGED_WHILE_READ || rule === FAULT;
}
