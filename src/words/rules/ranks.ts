/** Ranks of things that the data can order: "the second fastest", "third-hottest". A claim holds them: `… is largest of …`. */
import type { Span } from '../expression/expression-tree.ts';

const PLACES = String.raw`second|third|fourth|fifth|sixth|\d+(?:nd|rd|th)`;
const SUPERLATIVES =
  'fastest|slowest|quickest|hottest|warmest|coolest|coldest|highest|lowest|loudest|quietest|largest|smallest|greatest|best|worst|steadiest';
const RANK = new RegExp(String.raw`\b(?:${PLACES})[- ](?:${SUPERLATIVES})\b`, 'gi');

export function ranksIn(prose: string): Span[] {
  return [...prose.matchAll(RANK)].map((match) => ({ start: match.index, end: match.index + match[0].length }));
}
