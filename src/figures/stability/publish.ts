/** The figures of a device's attempts as other programs read them: `devices/<id>/figures.json`. */
import { publishMap } from '../publish.ts';
import type { Ladder } from './ladder.ts';
import { stabilityFigures } from './stability.ts';

export interface PublishedLadder {
  /** Id of the attempts. */
  readonly id: string;
  readonly ladder: Ladder;
  readonly sha256: string;
}

/** `figures` are of all specimens together, `specimens` has each apart: what holds for one is not said of the device. */
export function publishStability(device: string, published: readonly PublishedLadder[]): object {
  const ladders = published.map(({ ladder }) => ladder);
  const specimens = [...new Set(ladders.map(({ specimen }) => specimen))];
  const attempts = published.map(({ id, ladder: { specimen, file, attempts }, sha256 }) => {
    return { id, specimen, file, sha256, rows: attempts.length };
  });
  const apart = specimens.map((specimen) => {
    const own = stabilityFigures(ladders.filter((ladder) => ladder.specimen === specimen));
    const { figures } = publishMap({}, own) as { figures: object };
    return [specimen, { figures }];
  });
  return publishMap({ device, attempts, specimens: Object.fromEntries(apart) }, stabilityFigures(ladders));
}
