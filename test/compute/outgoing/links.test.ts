import { describe, expect, it } from 'vitest';
import { brokenLinks } from '../../../src/compute/outgoing/links.ts';
import { siteOf } from './site.ts';

const SITE = { base: '/reports/', address: 'https://bench.example/reports/' };
const THERE = { 'index.html': '<p id="top">', 'notes/a/index.html': '<h2 id="a-b">', 'notes/a/soak.csv': 'x', 'assets/a.css': '' };
const told = (html: string, more: Record<string, string> = {}) =>
  brokenLinks(siteOf({ ...THERE, 'page/index.html': html, ...more }), SITE).map(
    ({ place: { file, line, column }, found }) => `${file}:${line}:${column} ${found}`,
  );

describe('compute/outgoing/links', () => {
  it('finds nothing wrong with what leads somewhere', () => {
    const links = [
      '/reports/',
      '/reports/notes/a/#a-b',
      '../notes/a/soak.csv',
      '#x',
      '#top',
      'https://elsewhere.example/',
      'mailto:a@b.example',
      'https://bench.example/reports/notes/a/',
    ];
    expect(told(`<p id="x">${links.map((to) => `<a href="${to}">`).join('')}`)).toEqual([]);
  });

  it.each([
    ['/reports/nothing/', 'leads nowhere'],
    ['/reports/notes/a/other.csv', 'leads nowhere'],
    ['https://bench.example/reports/nothing/', 'leads nowhere'],
    ['/reports/notes/a', 'has no slash at its end, which costs the reader a redirect'],
    ['/notes/a/', 'leads out of the folder that the site stands in, /reports/'],
    ['/reports/notes/a/#c', 'names a part that its page does not have'],
    ['http://elsewhere.example/', 'leads to a host without encryption, which browsers warn of'],
    ['https://[', 'is no address'],
  ])('tells %s', (to, fault) => {
    expect(told(`<p>\n<a href="${to}">`)).toEqual([`dist/page/index.html:2:4 \`${to}\` ${fault}`]);
  });

  it('reads pictures in several sizes, styles, feeds, and references of characters', () => {
    expect(told('<img src="a.png" srcset="b.webp 480w, c.webp 960w"><a href="?a=1&amp;b=2">')).toEqual([
      'dist/page/index.html:1:6 `a.png` leads nowhere',
      'dist/page/index.html:1:18 `b.webp` leads nowhere',
      'dist/page/index.html:1:18 `c.webp` leads nowhere',
    ]);
    expect(
      told('', {
        'assets/b.css': '@font-face { src: url("a.woff2"); }',
        'notes.xml': '<id>https://bench.example/reports/none/</id>',
      }),
    ).toEqual([
      'dist/assets/b.css:1:19 `a.woff2` leads nowhere',
      'dist/notes.xml:1:1 `https://bench.example/reports/none/` leads nowhere',
    ]);
  });

  it('only warns of a host without encryption: `check` lets it through', () => {
    const severities = (to: string) =>
      brokenLinks(siteOf({ ...THERE, 'a/index.html': `<a href="${to}">` }), SITE).map(({ severity }) => severity);
    expect(severities('http://elsewhere.example/')).toEqual(['warning']);
    expect(severities('/reports/nothing/')).toEqual(['error']);
  });

  it('takes no link that is shown, said or programmed for one of its own', () => {
    expect(
      told(
        '<pre>&#x3C;a href="nowhere/"></pre><p title="<a href=\'n\'>"><script>"<a href=\'n/\'>"; a<b</script><!-- <a href="n/"> --><a\nhref="m/">',
      ),
    ).toEqual(['dist/page/index.html:2:1 `m/` leads nowhere']);
  });

  it('takes addresses that are not written in UTF-8', () => {
    const odd = ['/caf%E9/', '/reports/caf%E9/', '/reports/#%E9'];
    expect(told(odd.map((to) => `<a href="${to}">`).join(''))).toEqual([
      'dist/page/index.html:1:4 `/caf%E9/` leads out of the folder that the site stands in, /reports/',
      'dist/page/index.html:1:23 `/reports/caf%E9/` leads nowhere',
      'dist/page/index.html:1:50 `/reports/#%E9` names a part that its page does not have',
    ]);
  });

  it('tells a link once a page', () => {
    expect(told('<a href="x/"><a href="x/">')).toHaveLength(1);
  });
});
