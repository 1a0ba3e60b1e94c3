/** Puts the author's colours of links into the palette, before it is bundled: a style in the page itself would break the policy. */
import type { Plugin } from 'vite';
import type { SiteSettings } from '../compute/project/site-options.ts';

/** The value of `--link`, which the palette states once for each look. */
const LINK = /--link: #[0-9a-f]{6};/g;

export function accentOf(accent: SiteSettings['accent']): Plugin {
  return {
    name: 'soakproof-accent',
    enforce: 'pre',
    transform: (code, id) => (id.split('?')[0]!.endsWith('/styles/palette.css') ? withAccent(code, accent) : undefined),
  };
}

/** The palette with other colours of links. Throws where it does not state two: the light one first, then the dark one. */
export function withAccent(css: string, { light, dark }: SiteSettings['accent']): string {
  const stated = css.match(LINK) ?? [];
  if (stated.length !== 2) throw new Error(`src/styles/palette.css states --link ${stated.length} times, expected 2`);
  const wanted = [light, dark];
  return css.replace(LINK, (own) => {
    const colour = wanted.shift();
    return colour === undefined ? own : `--link: ${colour.toLowerCase()};`;
  });
}
