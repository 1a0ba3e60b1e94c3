/** Words that viewers read while they see something else: large, low in the picture. */
import { balanced, INNER_WIDTH } from './format.ts';
import { drawing, text } from './lines-of-text.ts';

const SIZE = 34;
const LINE = 42;

/** The body of a picture `height` px high, with its words at the lower edge. */
export function captionStrip(words: string, height: number): string {
  const lines = balanced(words, SIZE, INNER_WIDTH);
  const top = Math.max(0, height - lines.length * LINE);
  return drawing(
    INNER_WIDTH,
    Math.max(height, lines.length * LINE),
    lines.map((line, i) => text(line, 0, top + (i + 0.75) * LINE, { size: SIZE, weight: 600, fill: 'var(--plot-ink)' })),
  );
}
