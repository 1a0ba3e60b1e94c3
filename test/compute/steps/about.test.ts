import { describe, expect, it } from 'vitest';
import { settingsOf } from '../../../src/compute/project/site-options.ts';
import { computeAbout } from '../../../src/compute/steps/about.ts';

const CONFIG = "export default publication({\n  title: 'T',\n  about: 'about.md',\n});\n";
const about = (content: Readonly<Record<string, string>>, name = 'about.md') =>
  computeAbout(
    { ...settingsOf({ title: 'T', about: name }), base: '/', address: '' },
    { content: Object.entries(content).map(([path, text]) => ({ path: `content/${path}`, text })), config: CONFIG },
  );

describe('compute/steps/about', () => {
  it('takes the first heading for the title, and leaves the file to nobody else', () => {
    const { page, others, problems } = about({ 'about.md': '# Who we are\n\nTwo of us.\n', 'notes/a.md': '' });
    expect(page).toEqual({ title: 'Who we are', html: '<p>Two of us.</p>' });
    expect([others.map(({ path }) => path), problems]).toEqual([['content/notes/a.md'], []]);
    expect(about({ 'about.md': 'Two of us.' }).page?.title).toBe('About');
  });

  it('takes the title wherever the heading stands, as words alone', () => {
    const { page } = about({ 'about.md': 'Hello.\n\n## Now\n\n# About *us* &amp; `it`\n\nTwo of us.\n' });
    expect(page?.title).toBe('About us & it');
    expect(page?.html).not.toContain('About');
    expect(page?.html).toContain('Hello.');
  });

  it('tells front matter, and prints none of it', () => {
    const { page, problems } = about({ 'about.md': '---\ntitle: About me\n---\n\nOnly me.\n' });
    expect(page).toEqual({ title: 'About', html: '<p>Only me.</p>' });
    expect(problems.map(({ severity, rule, place: { line } }) => [severity, rule, line])).toEqual([
      ['warning', 'about-front-matter', 1],
    ]);
  });

  it('tells what is wrong in it at its own line', () => {
    const { problems } = about({ 'about.md': '# T\n\nIt is :value[fast.load_power].\n' });
    expect(problems.map(({ rule, place: { file, line } }) => `${file}:${line} ${rule}`)).toEqual([
      'content/about.md:3 held-number-in-prose',
    ]);
  });

  it('tells a file that is not there, with the one that may be meant', () => {
    const told = (content: Readonly<Record<string, string>>) =>
      about(content).problems.map(({ rule, place: { line, column }, found, remedy }) => [rule, line, column, found, remedy]);
    expect(told({ 'abuot.md': '' })).toEqual([['missing-about', 3, 3, 'there is no content/about.md', 'did you mean `abuot.md`?']]);
    expect(told({})).toEqual([
      ['missing-about', 3, 3, 'there is no content/about.md', 'write content/about.md, or remove the option'],
    ]);
  });
});
