/** The page about the publication: one Markdown file of its author, named in astro.config.mjs. */
import { error, type Problem, warning } from '../../problem.ts';
import type { ContentFile } from '../../register/register.ts';
import { nearest } from '../../register/values/names.ts';
import { renderProse } from '../../words/prose.ts';
import { titled } from '../../words/titled.ts';
import type { Project } from '../project/read-project.ts';
import { placeOf, type SiteFacts } from '../project/site-facts.ts';

export interface About {
  /** Null where the author names no file, or one that is not there. */
  readonly page: { readonly title: string; readonly html: string } | null;
  /** Files of content/ but for this one. */
  readonly others: readonly ContentFile[];
  readonly problems: readonly Problem[];
}

/** Reads the file and renders it. Its title is its first heading of the first level, or “About”. */
export function computeAbout({ about }: SiteFacts, { content, config }: Pick<Project, 'content' | 'config'>): About {
  if (about === '') return { page: null, others: content, problems: [] };
  const file = content.find(({ path }) => path === `content/${about}`);
  if (file === undefined) {
    const loose = content.map(({ path }) => path.slice('content/'.length)).filter((path) => !path.includes('/'));
    const meant = nearest(about, loose);
    const remedy = meant === undefined ? `write content/${about}, or remove the option` : `did you mean \`${meant}\`?`;
    return {
      page: null,
      others: content,
      problems: [error('missing-about', placeOf(config, ['about']), `there is no content/${about}`, { remedy })],
    };
  }
  const { title, body, hadFrontMatter } = titled(file.text);
  const { html, problems } = renderProse(body, { file: file.path, line: 1 });
  return {
    page: { title: title || 'About', html },
    others: content.filter((each) => each !== file),
    problems: [...(hadFrontMatter ? [frontMatter(file.path)] : []), ...problems],
  };
}

function frontMatter(file: string): Problem {
  return warning('about-front-matter', { file, line: 1, column: 1 }, 'front matter, which this page does not print', {
    expected: 'its title as the first heading, `# About me`',
    remedy: 'write the title so, and remove the lines from `---` to `---`',
  });
}
