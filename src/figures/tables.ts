/** What a run has beside its log: tables that were read before figures are derived. */
import type { Scores } from './scores/score-table.ts';
import type { Surface } from './surface/surface-table.ts';

export interface RunTables {
  readonly scores?: Scores;
  readonly surface?: Surface;
}
