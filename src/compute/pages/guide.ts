/** The models of the user's guide: its Markdown, with links that lead from page to page of the site. */
import { renderProse } from '../../words/prose.ts';
import type { GuideModel } from '../results.ts';

/** The page that lists the others, in their order. */
const FIRST = 'README.md';
/** A page of fewer parts can be seen at once. */
const FEW = 4;
const LINK = /\]\(([\w-]+\.md)(#[\w-]+)?\)/g;

/** Every page with its path below the base, the list first and then in the order of the list. `texts`: Markdown by the names of the files. */
export function guideModels(texts: ReadonlyMap<string, string>): [path: string, model: GuideModel][] {
  const names = pagesInOrder(texts);
  const titles = new Map(names.map((name) => [name, titleOf(texts.get(name)!)]));
  return names.map((name, index) => {
    const next = names[index + 1];
    const text = texts.get(name)!.replace(/^# .*\n+/, '');
    const { html } = renderProse(siteLinks(text, name), { file: `src/guide/${name}`, line: 1 });
    const sections = [...html.matchAll(/<h2 id="([^"]+)">(.*?)<\/h2>/g)].map(([, id, title]) => ({
      id: id!,
      title: withoutTags(title!),
    }));
    return [
      pathOf(name),
      {
        kind: 'guide',
        title: titles.get(name)!,
        html,
        sections: sections.length < FEW ? [] : sections,
        next: next === undefined ? null : { path: pathOf(next), title: titles.get(next)! },
      },
    ];
  });
}

/** Files in the order in which the first page names them. */
function pagesInOrder(texts: ReadonlyMap<string, string>): string[] {
  const named = [...(texts.get(FIRST) ?? '').matchAll(LINK)].map(([, name]) => name!);
  return [...new Set([FIRST, ...named])].filter((name) => texts.has(name));
}

function pathOf(name: string): string {
  return name === FIRST ? 'guide/' : `guide/${name.replace(/\.md$/, '')}/`;
}

function titleOf(text: string): string {
  return /^# (.*)$/m.exec(text)?.[1] ?? '';
}

/** Links from file to file as links from page to page. */
function siteLinks(text: string, from: string): string {
  const up = from === FIRST ? '' : '../';
  return text.replace(
    LINK,
    (_link, name: string, anchor = '') => `](${up}${pathOf(name).slice('guide/'.length) || (up === '' ? './' : '')}${anchor})`,
  );
}

function withoutTags(html: string): string {
  return html.replaceAll(/<[^>]+>/g, '');
}
