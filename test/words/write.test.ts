import { describe, expect, test } from 'vitest';
import { write } from '../../src/words/write.ts';
import type { LedgerEntry, Written } from '../../src/words/written.ts';
import { FAST, noteOf, ONE, reportOf, TWO } from './subjects.ts';

function written(text: string): Written {
  return write(noteOf(text), TWO);
}

/** The anchors of a page: number and text, entities undone. */
function anchorsOf({ pieces }: Written): { readonly number: number; readonly text: string }[] {
  const html = pieces.filter((piece) => typeof piece === 'string').join('');
  const anchors = html.matchAll(/<a class="held" id="([\w.-]+)" href="#held:\1" data-n="(\d+)">([^<]*)<\/a>/g);
  return [...anchors].map((match) => ({
    number: Number(match[2]),
    text: (match[3] as string).replaceAll('&#x3C;', '<').replaceAll('&#x26;', '&'),
  }));
}

function at({ line, column }: LedgerEntry): string {
  return `${line}:${column}`;
}

const V = ':value[fast.peak_temperature]';

describe('words/write', () => {
  test('a value prints as a link to what holds it', () => {
    const { pieces, entries, problems } = written(`It reached ${V} at 10:30.`);
    const id = entries[0]?.id;
    expect(id).toMatch(/^fast\.peak_temperature-[a-z0-9]{5}$/);
    expect(pieces).toEqual([
      `<p>It reached <a class="held" id="${id}" href="#held:${id}" data-n="1">71.3\u00a0°C</a> at 10:30.</p>`,
    ]);
    expect(problems).toEqual([]);
    expect(entries).toEqual([
      {
        id,
        file: 'content/notes/note.md',
        line: 1,
        column: 12,
        kind: 'value',
        text: 'fast.peak_temperature',
        expression: 'fast.peak_temperature',
        value: 71.3,
        unit: '°C',
        u: Math.hypot(1, 0.2),
        shown: '71.3\u00a0°C',
        uncertainty: '±\u00a02.0\u00a0K (95\u00a0%)',
        verdict: 'printed',
        held: [{ alias: 'fast', subject: 'larch-fast', address: 'peak_temperature', figure: 'peak_temperature' }],
      },
    ]);
  });

  test('what two figures share cancels in their difference', () => {
    const [entry] = written(':value[fast.peak_temperature - rated.peak_temperature]').entries;
    expect(entry?.u).toBeCloseTo(Math.hypot(0.2, 0.2), 12);
    expect(entry?.held.map(({ alias }) => alias)).toEqual(['fast', 'rated']);
  });

  test('the alias may be left out where a note has one run', () => {
    expect(write(noteOf(':value[peak_temperature] :value[fast.peak_temperature]'), ONE).entries.map(({ shown }) => shown)).toEqual([
      '71.3\u00a0°C',
      '71.3\u00a0°C',
    ]);
  });

  test('times, ratios and foreign directives stay the text that they are, Markdown in them included', () => {
    const { pieces, problems } = written(
      'At 10:30, 1:N, 5:mV, 12:30:45, 8:00, Fig. 3:a, 3:a[*b*](https://example.org).\n\n:::note\n*x*\n:::\n\n::leaf[x]',
    );
    expect(pieces).toEqual([
      '<p>At 10:30, 1:N, 5:mV, 12:30:45, 8:00, Fig. 3:a, 3:a<a href="https://example.org"><em>b</em></a>.</p>\n<p>:::note\n<em>x</em>\n:::</p>\n<p>::leaf[x]</p>',
    ]);
    expect(problems).toEqual([]);
  });

  test('quotes and dashes stay as typed', () => {
    expect(written('"So" -- he\'d say...').pieces).toEqual(['<p>"So" -- he\'d say...</p>']);
  });

  test('positions are right in lists, tables, quotes, after front matter, behind emoji, with CRLF', () => {
    const text = [
      '---',
      'title: "😀"',
      '---',
      '',
      `- 😀 one ${V}`,
      `  - two ${V}`,
      '',
      `> quoted`,
      `> ${V}`,
      '',
      '| a | b |',
      '|---|---|',
      `| 😀 | ${V} |`,
      '',
      `# ${V}`,
      '',
    ];
    const expected = ['5:10', '6:9', '9:3', '13:8', '15:3'];
    for (const end of ['\n', '\r\n']) {
      const { entries, problems } = written(text.join(end));
      expect(problems).toEqual([]);
      expect(entries.map(at)).toEqual(expected);
      for (const { line, column } of entries) expect((text[line - 1] as string).slice(column - 1).startsWith(V)).toBe(true);
    }
  });

  test('a byte-order mark moves nothing', () => {
    expect(written(`\uFEFF---\ntitle: x\n---\n${V}`).entries.map(at)).toEqual(['4:1']);
  });

  test('numbers count in reading order, footnotes last, and every entry shows what its link shows', () => {
    const text = `A[^a] ${V}\n\n[^a]: Note :value[fast.setting.clock]\n\n::table{of="load_power"}\n\n:claim[a < b & more]{is="rated.load_power < fast.load_power"}\n\n## End ${V}`;
    const page = written(text);
    expect(page.problems).toEqual([]);
    const anchors = anchorsOf(page);
    expect(anchors.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6]);
    expect(anchors.map(({ text: shown }) => shown)).toEqual(page.entries.map(({ shown }) => shown));
    expect(page.entries.map(({ kind }) => kind)).toEqual(['value', 'table', 'table', 'claim', 'value', 'value']);
    expect(page.entries.at(-1)?.expression).toBe('fast.setting.clock');
  });

  test('highlights come last, stand in no text, and are located in their own words', () => {
    const place = { file: 'content/notes/note.md', line: 2, column: 5 };
    const text = '---\n  - "fast.laod_power"\n---\n';
    const note = noteOf(text, {
      highlights: [
        { expression: 'fast.load_power', place: { ...place, line: 1 } },
        { expression: 'fast.laod_power', place },
      ],
    });
    const { entries, problems } = write(note, TWO);
    expect(entries.map(({ kind, shown }) => [kind, shown])).toEqual([['highlight', '5.250\u00a0W']]);
    expect(reportOf(problems)).toContain('2:11-21: error [unknown-figure]');
  });

  test('the page is split where plots go, also within other blocks, and joins again', () => {
    const { pieces, plots } = written('a\n\n::plot{kind=trace}\n\n- b\n\n  ::plot{kind=trace title="Two <!-- x"}\n\nc');
    expect(pieces.map((piece) => typeof piece)).toEqual(['string', 'number', 'string', 'number', 'string']);
    expect(pieces.filter((piece) => typeof piece === 'number')).toEqual([0, 1]);
    expect(plots.map(({ id, runs }) => [id, runs.map(({ run }) => run)])).toEqual([
      ['plot-trace-rated-fast', ['larch-rated', 'larch-fast']],
      ['plot-trace-rated-fast-2', ['larch-rated', 'larch-fast']],
    ]);
    expect(pieces.join('|')).toBe('<p>a</p>\n|0|\n<ul>\n<li>\n<p>b</p>\n|1|\n</li>\n</ul>\n<p>c</p>');
  });

  test('a table says what is absent and why, and scrolls', () => {
    const { pieces, entries } = written(
      '::table{runs="fast rated" of="steady_temperature peak_temperature.ssd setting.clock" title="All & more"}',
    );
    expect(pieces).toMatchInlineSnapshot(`
      [
        "<figure class="sheet" id="table-steady-temperature-peak-temperature-ssd-setting-clock"><div class="scroll" tabindex="0" role="region" aria-label="All &#x26; more"><table><caption>All &#x26; more<a class="permalink" href="#table-steady-temperature-peak-temperature-ssd-setting-clock" aria-label="Address of the table: All &#x26; more"></a></caption><thead><tr><td></td><th scope="col">fast</th><th scope="col">rated</th></tr></thead><tbody><tr><th scope="row">steady temperature</th><td class="absent">absent</td><td class="absent">absent</td></tr><tr><th scope="row">peak temperature<span class="detail">ssd</span></th><td class="number"><a class="held" id="fast.peak_temperature.ssd-tf89y" href="#held:fast.peak_temperature.ssd-tf89y" data-n="1">51.3 °C</a></td><td class="number"><a class="held" id="rated.peak_temperature.ssd-at24o" href="#held:rated.peak_temperature.ssd-at24o" data-n="2">41.2 °C</a></td></tr><tr><th scope="row">clock setting</th><td class="number"><a class="held" id="fast.setting.clock-x4bku" href="#held:fast.setting.clock-x4bku" data-n="3">2.4 GHz</a></td><td class="number"><a class="held" id="rated.setting.clock-pjc7c" href="#held:rated.setting.clock-pjc7c" data-n="4">2.4 GHz</a></td></tr></tbody></table></div><ul class="absences"><li>steady temperature, fast: Not steady within 60 min.</li><li>steady temperature, rated: Not steady within 60 min.</li></ul></figure>",
      ]
    `);
    expect(entries.map(({ expression }) => expression)).toEqual([
      'fast.peak_temperature.ssd',
      'rated.peak_temperature.ssd',
      'fast.setting.clock',
      'rated.setting.clock',
    ]);
  });

  test('a figure that one run lacks is absent there, not a problem', () => {
    const bare = { ...FAST, id: 'bare', figures: new Map([...FAST.figures].filter(([key]) => key !== 'peak_temperature.ssd')) };
    const page = write(
      noteOf('::table{of="peak_temperature.ssd"}'),
      new Map([
        ['fast', FAST],
        ['bare', bare],
      ]),
    );
    expect(page.problems).toEqual([]);
    expect(page.pieces.join('')).toContain('bare: this run has no such figure.');
  });

  test('ordinary tables scroll too, and their cells align', () => {
    expect(written('| a | b |\n|---|--:|\n| 1 | 2 |').pieces).toMatchInlineSnapshot(`
      [
        "<div class="scroll" tabindex="0" role="region" aria-label="Table: a, b"><table>
      <thead>
      <tr>
      <th scope="col">a</th>
      <th scope="col" align="right">b</th>
      </tr>
      </thead>
      <tbody>
      <tr>
      <td>1</td>
      <td align="right">2</td>
      </tr>
      </tbody>
      </table></div>",
      ]
    `);
  });

  test('headings get ids of their words, without the numbers that data changes', () => {
    const { pieces } = written(`# Two runs\n\n## Peak of ${V}\n\n## Two runs\n\n## N 1\n\n## !\n\n### Größe 2`);
    const ids = [...pieces.join('').matchAll(/<h(\d) id="([^"]*)">/g)].map(([, depth, id]) => `${depth} ${id}`);
    expect(ids).toEqual(['1 two-runs', '2 peak-of', '2 two-runs-2', '2 n-1', '2 section', '3 größe-2']);
  });

  test('a stated number keeps the words of its author and says on what it rests', () => {
    const page = written('It is :stated[about 160&nbsp;degrees Fahrenheit]{is="fast.peak_temperature"} hot.');
    expect(anchorsOf(page)).toEqual([{ number: 1, text: 'about 160\u00a0degrees Fahrenheit' }]);
    expect(page.entries[0]).toMatchObject({
      kind: 'stated',
      text: 'about 160&nbsp;degrees Fahrenheit',
      expression: 'fast.peak_temperature',
      value: 71.3,
      unit: '°C',
      shown: 'about 160\u00a0degrees Fahrenheit',
      verdict: 'holds',
      rests: 'the data says 71.3\u00a0°C ±\u00a02.0\u00a0K (95\u00a0%); the words allow 157.5\u00a0°F to 162.5\u00a0°F',
    });
    expect(page.entries[0]?.held).toEqual([
      { alias: 'fast', subject: 'larch-fast', address: 'peak_temperature', figure: 'peak_temperature' },
    ]);
  });

  test('a stated number that fails is kept on the page and in the ledger, as an error', () => {
    const page = written(':stated[74 degrees]{is="fast.peak_temperature"}');
    expect(page.problems.map(({ severity, rule }) => [severity, rule])).toEqual([['error', 'stated-differs']]);
    expect(page.entries.map(({ kind, shown, verdict }) => [kind, shown, verdict])).toEqual([['stated', '74 degrees', 'fails']]);
    expect(anchorsOf(page)).toEqual([{ number: 1, text: '74 degrees' }]);
  });

  test('a claim says on what it rests, also where it cannot be told and may be published', () => {
    const page = written(':claim[draw about as much]{is="fast.load_power < 5.25 W" outcome="holds or untold"}');
    expect(page.problems).toEqual([]);
    expect(page.entries[0]).toMatchObject({ verdict: 'cannot be told', shown: 'draw about as much' });
    expect(page.entries[0]?.rests).toMatch(
      /^5\.250\u00a0W against 5\.25\u00a0W, .*: this data cannot tell whether the condition holds$/,
    );
  });

  test('numbers that nothing holds: warnings, errors where the note refuses them, nothing where they are left unheld', () => {
    const text = 'It draws 5 W from a :unheld[5 V] supply.';
    const rules = (options: object, more: object) =>
      write(noteOf(text, more), TWO, options).problems.map(({ severity, rule }) => `${severity} ${rule}`);
    expect(rules({ unheld: true }, {})).toEqual(['warning unheld-number']);
    expect(rules({}, {})).toEqual([]);
    expect(rules({}, { unheld: 'refuse' })).toEqual(['error unheld-number']);
    expect(written(text).pieces).toEqual(['<p>It draws 5 W from a <span>5 V</span> supply.</p>']);
  });

  test('a cue is a section of a script with its time', () => {
    const { pieces, problems } = write(
      noteOf(`:::cue{at="3:15"}\nThe plot.\n\n::plot{kind=trace}\n:::\n\nSaid: ${V}.`, { kind: 'script' }),
      TWO,
    );
    expect(problems).toEqual([]);
    expect(pieces[0]).toBe('<section class="cue" aria-label="On screen at 3:15"><p class="cue-time">3:15</p><p>The plot.</p>');
    expect(pieces[1]).toBe(0);
  });

  test('words that need a log that could not be used say nothing more about it', () => {
    const unusable = { ...FAST, figures: new Map(), unusable: true };
    const page = write(
      noteOf(`${V} :claim[x]{is="fast.load_power < 1 W"} :value[fast.setting.clock]\n\n::table{of=load_power}`),
      new Map([['fast', unusable]]),
    );
    expect(page.problems).toEqual([]);
    expect(page.entries.map(({ shown }) => shown)).toEqual(['2.4\u00a0GHz']);
  });

  test('a directive is found nearly ours also beside addresses that become links, in quotes and in footnotes', () => {
    const { problems } = written(
      'Write a@example.org or www.example.org, :vaule[x].[^1]\n\n> *see* :value [x]\n\n[^1]: a `:vaule[x]` and :vaule[y]',
    );
    expect(problems.map(({ rule, place }) => [rule, place.line, place.column])).toEqual([
      ['unknown-directive', 1, 41],
      ['directive-blank', 3, 9],
      ['unknown-directive', 5, 25],
    ]);
  });

  test('raw HTML is printed as text, comments not at all', () => {
    const { pieces } = written('<script>alert(1)</script>\n\na <b>c</b> <!-- private -->\n\n<!-- private --> said');
    expect(pieces).toEqual(['<p>&#x3C;script>alert(1)&#x3C;/script></p>\n<p>a &#x3C;b>c&#x3C;/b> </p>\n<p>said</p>']);
  });

  test('the same note gives the same bytes', () => {
    const text = `# A\n\n${V}[^1]\n\n[^1]: x\n\n::table{of="load_power peak_temperature"}\n\n::plot{kind=trace}`;
    expect(JSON.stringify(written(text))).toBe(JSON.stringify(written(text)));
  });
});
