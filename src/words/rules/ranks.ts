/** Ranks of things that the data can order: "the second fastest", "ranks third", "the fastest of the four". A claim holds them: `… is largest of …`. */
import type { Span } from '../expression/expression-tree.ts';
import { COUNT } from './count-words.ts';

const PLACES = String.raw`second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|last|\d+(?:st|nd|rd|th)`;
/** Words that end like superlatives. */
const OTHERS = 'test|retest|contest|rest|interest|forest|west|guest|request|latest|harvest|chest|nest|quest|earnest|honest|digest';
const SUPERLATIVE = String.raw`(?:(?:most|least)[- ]\p{Ll}+|(?!(?:${OTHERS})\b)\p{Ll}+est|worst)`;
const RANKS = [
  String.raw`\b(?:${PLACES})[- ]${SUPERLATIVE}\b`,
  String.raw`\b${SUPERLATIVE}\s+of\s+(?:all\s+|the\s+|our\s+)*${COUNT}\b`,
  String.raw`\b(?:ranks?|ranked|comes|came|finish(?:es|ed))\s+(?:in\s+)?(?!last\b)(?:${PLACES})(?:\s+place)?\b`,
  String.raw`\bin\s+(?:${PLACES})\s+place\b`,
  String.raw`\b(?:ranks?|ranked|comes?|came)\s+(?:dead\s+last|first|no\.\s*\d+)(?=\s*(?:$|[.,;:!?)]|in\b|of\b|for\b|among\b|by\b|at\b))`,
  String.raw`\b(?:first|${PLACES})\s+of\s+(?:all\s+|the\s+|our\s+)*${COUNT}\b(?=\s*(?:$|[.,;:!?)]))`,
].map((pattern) => new RegExp(pattern, 'giu'));

/** All of them; where two forms meet, the one that begins first. */
export function ranksIn(prose: string): Span[] {
  const all = RANKS.flatMap((pattern) =>
    [...prose.matchAll(pattern)].map((match) => ({ start: match.index, end: match.index + match[0].length })),
  ).sort((a, b) => a.start - b.start || b.end - a.end);
  return all.filter(({ start }, index) => all.slice(0, index).every(({ end }) => end <= start));
}
