/** The one door to unified: Markdown of notes, scripts and free text → mdast → hast → HTML. */
import type { Root as HastRoot } from 'hast';
import type { Root } from 'mdast';
import rehypeStringify from 'rehype-stringify';
import remarkDirective from 'remark-directive';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { ownDirectivesOnly } from './own-directives.ts';
import { layOutPictures } from './picture-nodes.ts';

// One tilde is "about" in a tester's prose (`~5 W`), so only two of them strike through. No plugin touches quotes or dashes.
const base = unified()
  .use(remarkParse)
  .use(remarkGfm, { singleTilde: false })
  .use(remarkDirective)
  .use(ownDirectivesOnly)
  .use(remarkRehype, { clobberPrefix: 'note-', footnoteLabelProperties: {} })
  .use(rehypeStringify)
  .freeze();

const withFrontMatter = base().use(remarkFrontmatter).freeze();

/** Markdown to a tree with positions. `whole` files may start with front matter, which becomes a node that prints nothing. Pictures are laid out. */
export function parseMarkdown(source: string, whole: boolean): Root {
  const tree = (whole ? withFrontMatter : base).parse(source);
  layOutPictures(tree, source, (text) => base.parse(text));
  return tree;
}

/** The tree of the page; nodes that carry `data.hName` become that element. */
export function toHast(tree: Root): HastRoot {
  return base.runSync(tree);
}

/** HTML of a tree. Attribute values and text are escaped; no raw HTML passes. */
export function toHtml(tree: HastRoot): string {
  return base.stringify(tree);
}
