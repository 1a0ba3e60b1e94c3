/** Prints digests of drawings, for comparison between processes. */
import { createHash } from 'node:crypto';
import { draw } from '../../src/plots/draw.ts';
import { PLOT_KINDS } from '../../src/register/requests.ts';
import { comparison, spent } from './comparisons.ts';
import { request, subject } from './subjects.ts';

const COMPARED = comparison({
  ice: { clock: 1e9, scores: { mix: [3, 0.1, 4], copy: [5, 0.2, 4] }, more: spent(4, 30) },
  ILEX: { clock: 2e9, scores: { mix: [5, 0.1, 4], copy: [5, 0.2, 4] }, more: spent(5, 40) },
});

/** Digest of everything drawn, by kind. */
export async function digests(): Promise<Record<string, string>> {
  const runs = [subject('ice', { rise: 30, gap: [900, 1200] }), subject('ILEX', { rise: 45 })];
  const found: Record<string, string> = {};
  for (const kind of PLOT_KINDS) {
    found[kind] = createHash('sha256')
      .update(JSON.stringify(await draw(request(kind, runs), runs, 'd', [], COMPARED, { png: true })))
      .digest('hex');
  }
  return found;
}

if (process.argv[1] === import.meta.filename) console.log(JSON.stringify(await digests()));
