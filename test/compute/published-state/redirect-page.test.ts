import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { redirectPage } from '../../../src/compute/published-state/redirect-page.ts';

describe('compute/published-state/redirect-page', () => {
  it('leads on by refresh, link and canonical address, without scripting', () => {
    const html = redirectPage('notes/old/', 'notes/new/', 'Larch & "Co"');
    expect(html).toContain('<meta http-equiv="refresh" content="0; url=../../notes/new/">');
    expect(html).toContain('<link rel="canonical" href="../../notes/new/">');
    expect(html).toContain('<a href="../../notes/new/">Larch &amp; &quot;Co&quot;</a>');
  });

  it('has one script, which its policy names by digest (Content Security Policy Level 3, hash sources), and allows nothing else', () => {
    const html = redirectPage('notes/old/', 'notes/new/', 'A');
    const [script, ...more] = [...html.matchAll(/<script[^>]*>(.*?)<\/script>/gs)];
    expect(more).toEqual([]);
    const own = createHash('sha256').update(script![1]!).digest('base64');
    expect(html).toContain(`content="default-src 'none'; script-src 'sha256-${own}'"`);
  });

  it('is relative to where it stands, so that any base will do', () => {
    for (const from of ['notes/old/', 'notes/x/plots/trace.svg/']) {
      const [, address = ''] = /url=([^"]+)"/.exec(redirectPage(from, 'notes/new/', '')) ?? [];
      expect(new URL(address, `https://a.example/base/${from}`).href).toBe('https://a.example/base/notes/new/');
    }
  });
});
