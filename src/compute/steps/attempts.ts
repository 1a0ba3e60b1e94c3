/** Every table of attempts: bytes → ladder → figures. Small enough to be made anew each time. */
import type { FigureMap } from '../../figures/figure.ts';
import type { Ladder } from '../../figures/stability/ladder.ts';
import { readAttempts } from '../../figures/stability/read-attempts.ts';
import { stabilityFigures } from '../../figures/stability/stability.ts';
import { type TableLayout, tableLayout } from '../../figures/table-layout.ts';
import { inOneMessage } from '../../figures/table-problems.ts';
import type { Problem } from '../../problem.ts';
import type { Attempts, Register } from '../../register/register.ts';
import { readData } from '../project/read-data.ts';
import { digest, digestOf } from '../store/digest.ts';
import type { Store } from '../store/store.ts';

export interface AttemptsOutcome {
  readonly attempts: Attempts;
  /** Equal keys mean equal figures. */
  readonly key: string;
  /** '' where the table cannot be read. */
  readonly sha256: string;
  readonly bytes: number;
  /** How the table is written; null where it cannot be read. Its bytes are then in the store. */
  readonly form: TableLayout | null;
  /** Null where the table cannot be read: `problems` then says why. */
  readonly ladder: Ladder | null;
  readonly figures: FigureMap;
  readonly problems: readonly Problem[];
}

interface Options {
  /** Takes the table's bytes in, where they may go out. */
  readonly store?: Store;
  readonly root: string;
  readonly code: string;
  readonly register: Register;
}

/** By id, in the register's order. */
export function computeAttempts({ store, root, code, register }: Options): ReadonlyMap<string, AttemptsOutcome> {
  return new Map([...register.attempts.values()].map((attempts) => [attempts.id, outcomeOf(store, root, code, attempts)]));
}

function outcomeOf(store: Store | undefined, root: string, code: string, attempts: Attempts): AttemptsOutcome {
  const file = `data/${attempts.table}`;
  const bytes = readData(root, attempts.table, 'table', attempts.placeOf('table'));
  if (!(bytes instanceof Uint8Array))
    return { attempts, key: '', sha256: '', bytes: 0, form: null, ladder: null, figures: new Map(), problems: [bytes] };
  const sha256 = store?.keep(bytes) ?? digest(bytes);
  const key = digestOf(['attempts', code, sha256, attempts.specimen, attempts.passed, attempts.mapping]);
  const { ladder, problems } = readAttempts(bytes, file, attempts.specimen, attempts.passed, attempts.mapping);
  const told = inOneMessage(problems, { bytes, file, kind: 'attempts', mapping: attempts.mapping });
  const form = tableLayout(bytes, file, 'attempts', attempts.mapping);
  return { attempts, key, sha256, bytes: bytes.length, form, ladder, figures: stabilityFigures([ladder]), problems: told };
}
