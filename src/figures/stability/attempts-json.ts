/** What `devices/<id>/figures.json` says of a device's attempts: whose they are, and each specimen's figures apart. */
import { figuresJson } from '../figures-json.ts';
import type { Ladder } from './ladder.ts';
import { stabilityFigures } from './stability.ts';

export interface NamedLadder {
  /** Id of the attempts. */
  readonly id: string;
  readonly ladder: Ladder;
  readonly sha256: string;
}

/** `attempts`: the tables; `specimens`: the figures of each, because what holds for one is not said of the device. */
export function attemptsHead(published: readonly NamedLadder[]): object {
  const ladders = published.map(({ ladder }) => ladder);
  const specimens = [...new Set(ladders.map(({ specimen }) => specimen))];
  const attempts = published.map(({ id, ladder: { specimen, file, attempts }, sha256 }) => {
    return { id, specimen, file, sha256, rows: attempts.length };
  });
  const apart = specimens.map((specimen) => {
    const own = stabilityFigures(ladders.filter((ladder) => ladder.specimen === specimen));
    const { figures } = figuresJson({}, own) as { figures: object };
    return [specimen, { figures }];
  });
  return { attempts, specimens: Object.fromEntries(apart) };
}
