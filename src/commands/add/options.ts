/** What an author decides before files are added. */

/** How files are put into runs: as proposed, each log its own run, all in one. */
export type Choice = 'proposed' | 'apart' | 'together';

export interface AddOptions {
  readonly choice?: Choice;
  /** Day of the test, where no log states it. */
  readonly date?: string;
  /** Asks how the files belong together; undefined where nobody can answer. `null` ends without writing. */
  readonly ask?: (question: string) => Choice | null;
  /** Hears of each run that is written and leaves nothing to be written. */
  readonly ready?: (run: string) => void;
}
