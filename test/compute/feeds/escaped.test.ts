import { describe, expect, it } from 'vitest';
import { validateXML } from 'xmllint-wasm';
import { escaped } from '../../../src/compute/feeds/escaped.ts';

const TEXT = `<a href="x">&amp; 'b'</a> ]]>`;

describe('compute/feeds/escaped', () => {
  it('names the five characters of XML, an ampersand of the text too', () => {
    expect(escaped(TEXT)).toBe('&lt;a href=&quot;x&quot;&gt;&amp;amp; &apos;b&apos;&lt;/a&gt; ]]&gt;');
  });

  it('is well formed inside of an element and of an attribute, by libxml2', async () => {
    const wellFormed = async (xml: string) =>
      (await validateXML({ xml: [{ fileName: 'a.xml', contents: xml }], normalization: 'c14n' })).valid;
    expect(await wellFormed(`<a b="${escaped(TEXT)}" c='${escaped(TEXT)}'>${escaped(TEXT)}</a>`)).toBe(true);
    expect(await wellFormed(`<a>${TEXT}</a>`), 'unescaped').toBe(false);
  });
});
