/** Files and YAML. */
import { BASE, FAST, NOTE, RATED, SETUP } from '../base.ts';
import type { Case } from './case.ts';

export const FRONT_MATTER: readonly Case[] = [
  {
    rule: 'no-front-matter',
    bad: [[FAST, '---\ntitle', 'title']],
    report: [
      'content/runs/larch-fast.md:1:1: error: no-front-matter: the file does not begin with a line `---` | expected front matter | begin the file with a line `---`, the keys below it, and another line `---`',
    ],
    ok: [[FAST, '---\ntitle', '---  \r\ntitle']],
  },
  {
    rule: 'no-front-matter',
    bad: [[RATED, 'soak.csv\n---\n', 'soak.csv\n']],
    report: [
      'content/runs/larch-rated.md:1:1: error: no-front-matter: the front matter that begins here is never closed | expected a second line `---`',
    ],
    ok: [[RATED, 'soak.csv\n---\n', 'soak.csv\n---']],
  },
  {
    rule: 'no-front-matter',
    bad: [[RATED, '', '\n---\ntitle: x\n---\n']],
    report: [
      'content/runs/larch-rated.md:1:1: error: no-front-matter: something stands before the first `---` | expected front matter | begin the file with a line `---`, the keys below it, and another line `---`',
    ],
    ok: [[RATED, '---\ntitle', '\uFEFF---\ntitle']],
  },
  {
    rule: 'no-front-matter',
    bad: [[RATED, '', '']],
    report: [
      'content/runs/larch-rated.md:1:1: error: no-front-matter: the file is empty | expected front matter | begin the file with a line `---`, the keys below it, and another line `---`',
    ],
    ok: [],
  },
  {
    rule: 'not-text',
    bad: [[FAST, 'second run', 'second r\uFFFDn']],
    report: [
      'content/runs/larch-fast.md:10:13: error: not-text: a character here is not valid UTF-8 | expected UTF-8 text | save the file as UTF-8',
    ],
    ok: [[FAST, 'second run', 'second ✓ 𝛥 run']],
  },
  {
    rule: 'not-text',
    bad: [[FAST, 'second run', 'second\u0000run']],
    report: [
      'content/runs/larch-fast.md:10:11: error: not-text: a control character (U+0000) stands here | expected UTF-8 text | save the file as UTF-8',
    ],
    ok: [[FAST, 'second run', 'second\trun']],
  },
  {
    rule: 'hidden-character',
    bad: [[FAST, 'second run', 'second \u202enur\nit drew 7\u200b1 W']],
    report: [
      'content/runs/larch-fast.md:10:12: error: hidden-character: a character that turns the order of text round (U+202E) | expected characters that a reader can see | remove it',
      'content/runs/larch-fast.md:11:10: error: hidden-character: a character that has no width, next to a digit (U+200B) | expected characters that a reader can see | remove it',
    ],
    ok: [[FAST, 'second run', 'second\u00a0run 🏳️‍🌈 1️⃣, نمی‌خواهم']],
  },
  {
    rule: 'hidden-character',
    bad: [[FAST, 'title: Fast setting', 'title: "Fast \\u202esetting"']],
    report: [
      'content/runs/larch-fast.md:2:8: error: hidden-character: a character that turns the order of text round (U+202E) | expected characters that a reader can see | remove it',
    ],
    ok: [[FAST, 'title: Fast setting', 'title: "Fast \\u00b0setting"']],
  },
  {
    rule: 'line-ends',
    bad: [[FAST, '', '---\rtitle: Fast\r---\r']],
    report: [
      'content/runs/larch-fast.md:1:4: error: line-ends: there is a carriage return without a line feed | expected lines that end with LF or CR LF | save the file with LF line ends',
    ],
    ok: [[FAST, '', BASE[FAST]!.replaceAll('\n', '\r\n')]],
  },
  {
    rule: 'yaml-syntax',
    bad: [[FAST, 'title: Fast setting', 'title: Fast: setting']],
    report: ['content/runs/larch-fast.md:2:8: error: yaml-syntax: there is a second `: ` on this line | put the value in quotes'],
    ok: [[FAST, 'title: Fast setting', 'title: "Fast: setting"']],
  },
  {
    rule: 'yaml-syntax',
    bad: [[FAST, '  clock: 2.6 GHz\n', '  clock: 2.6 GHz\n    note: x\n']],
    report: [
      'content/runs/larch-fast.md:6:10: error: yaml-syntax: a deeper line follows a value | check the indentation of the line below',
    ],
    ok: [[FAST, '  clock: 2.6 GHz\n', '  clock: 2.6 GHz\n\n  # nothing else\n']],
  },
  {
    rule: 'yaml-syntax',
    bad: [[FAST, 'setting:\n', '...\nsetting:\n']],
    report: [
      'content/runs/larch-fast.md:5:1: error: yaml-syntax: `...` would end the front matter before its last line | remove this line',
    ],
    ok: [[FAST, 'Fast setting', 'Fast ...']],
  },
  {
    rule: 'yaml-syntax',
    bad: [[FAST, '', '---\n---\n']],
    report: [
      'content/runs/larch-fast.md:1:1: error: yaml-syntax: the front matter is empty | expected lines such as `title: My text`, with a blank after the colon',
    ],
    ok: [],
  },
  {
    rule: 'yaml-syntax',
    bad: [[FAST, '', '---\ntitle:x\n---\n']],
    report: [
      'content/runs/larch-fast.md:2:1: error: yaml-syntax: the front matter is not a list of keys | expected lines such as `title: My text`, with a blank after the colon',
    ],
    ok: [],
  },
  {
    rule: 'yaml-syntax',
    bad: [[FAST, '', '---\n- title\n---\n']],
    report: [
      'content/runs/larch-fast.md:2:1: error: yaml-syntax: the front matter is not a list of keys | expected lines such as `title: My text`, with a blank after the colon',
    ],
    ok: [],
  },
  {
    rule: 'yaml-syntax',
    bad: [[FAST, 'title: Fast', '? [title]\n: Fast']],
    report: [
      'content/runs/larch-fast.md:1:1: error: missing-key: a run needs the key `title` | write for instance `title: Fast setting, hour soak`',
      'content/runs/larch-fast.md:2:3: error: yaml-syntax: this key is not a plain word | expected a key such as `title`',
    ],
    ok: [],
  },
  {
    rule: 'yaml-syntax',
    bad: [[FAST, 'title: Fast', 'title: "Fast']],
    report: [
      'content/runs/larch-fast.md:2:8: error: yaml-syntax: this quote is never closed, or on another line | close it on its line; a quote within the value is written twice in single quotes',
    ],
    ok: [],
  },
  {
    rule: 'yaml-syntax',
    bad: [[FAST, 'title: Fast', 'title: @Fast']],
    report: [
      'content/runs/larch-fast.md:2:8: error: yaml-syntax: a value cannot begin with this character | put the value in quotes',
    ],
    ok: [[FAST, 'title: Fast setting', "title: '@Fast'"]],
  },
  {
    rule: 'yaml-form',
    bad: [
      [
        SETUP,
        'conditions:\n  ambient: 22.4 ± 0.5 °C\n  workload: all cores, integer mix 3.1',
        'conditions: { ambient: 22.4 ± 0.5 °C, workload }',
      ],
    ],
    report: [
      'content/setups/open-bench.md:5:13: error: yaml-form: this mapping is written in braces | write each key on a line of its own, indented below; if the braces belong to the text, put it in quotes',
    ],
    ok: [[SETUP, 'all cores, integer mix 3.1', '"{ mix: 3.1 }"']],
  },
  {
    rule: 'yaml-form',
    bad: [[FAST, '2.6 GHz', '&fast 2.6 GHz']],
    report: [
      'content/runs/larch-fast.md:6:16: error: yaml-form: `&fast` names a value for reuse | take the mark out; if it belongs to the text, put the text in quotes',
    ],
    ok: [[FAST, 'Fast setting', '"&fast"']],
  },
  {
    rule: 'yaml-form',
    bad: [[FAST, '2.6 GHz', '*rated']],
    report: [
      'content/runs/larch-fast.md:6:10: error: yaml-form: `*rated` refers to another place of the file | write the value out; what runs share belongs in a setup',
    ],
    ok: [[FAST, 'Fast setting', 'Fast *']],
  },
  {
    rule: 'yaml-form',
    bad: [[FAST, '2.6 GHz', '!clock 2.6 GHz']],
    report: [
      'content/runs/larch-fast.md:6:17: error: yaml-form: a mark beginning with `!` stands before this value | take the mark out; if it belongs to the text, put the text in quotes',
    ],
    ok: [[FAST, 'Fast setting', 'Fast!']],
  },
  {
    rule: 'yaml-form',
    bad: [[FAST, 'Fast setting', `\n${Array.from({ length: 12 }, (_, depth) => `${' '.repeat(depth + 1)}a:`).join('\n')} 1`]],
    report: [
      'content/runs/larch-fast.md:3:2: error: wrong-kind: `title` is a mapping | expected a single value | write for instance `title: Fast setting, hour soak`',
      'content/runs/larch-fast.md:11:10: error: yaml-form: this is nested deeper than any key needs | check the indentation',
    ],
    ok: [],
  },
  {
    rule: 'tab-indent',
    bad: [[FAST, '  clock', '\tclock']],
    report: ['content/runs/larch-fast.md:6:1: error: tab-indent: a tab stands where a line is indented | indent with blanks'],
    ok: [[FAST, 'clock: 2.6', 'clock:\t2.6']],
  },
  {
    rule: 'duplicate-key',
    bad: [[FAST, '  clock: 2.6 GHz\n', '  clock: 2.6 GHz\n  clock: 2.7 GHz\n']],
    report: [
      'content/runs/larch-fast.md:7:3: error: duplicate-key: `clock` stands twice | keep one of the two; the other one is on line 6',
    ],
    ok: [],
  },
  {
    rule: 'empty-value',
    bad: [[FAST, 'clock: 2.6 GHz', 'clock:']],
    report: [
      'content/runs/larch-fast.md:6:3: error: empty-value: `clock` has no value | write for instance `clock: 2.6 GHz`, or remove the key',
    ],
    ok: [],
  },
  {
    rule: 'empty-value',
    bad: [[FAST, 'Fast setting', '~']],
    report: [
      'content/runs/larch-fast.md:2:1: error: empty-value: `title` has no value | write for instance `title: Fast setting, hour soak`, or remove the key',
    ],
    ok: [[FAST, 'Fast setting', '"~"']],
  },
  {
    rule: 'empty-value',
    bad: [[FAST, 'Fast setting', '""']],
    report: [
      'content/runs/larch-fast.md:2:1: error: empty-value: `title` has no value | write for instance `title: Fast setting, hour soak`, or remove the key',
    ],
    ok: [[FAST, 'Fast setting', 'no']],
  },
  {
    rule: 'empty-value',
    bad: [[SETUP, '[inline-meter, on-die]', '[]']],
    report: [
      'content/setups/open-bench.md:8:1: error: empty-value: `instruments` has no value | write for instance `instruments: [inline-meter, on-die]`, or remove the key',
    ],
    ok: [[SETUP, '[inline-meter, on-die]', '\n  - inline-meter\n  - on-die']],
  },
  {
    rule: 'empty-value',
    bad: [[SETUP, '[inline-meter, on-die]', '\n  - inline-meter\n  -\n  - on-die']],
    report: [
      'content/setups/open-bench.md:9:3: error: empty-value: an item of `instruments` is empty | give it a value or remove its line',
    ],
    ok: [],
  },
  {
    rule: 'value-over-lines',
    bad: [[NOTE, 'Bought at retail.', 'Bought\n  at retail.']],
    report: [
      'content/notes/overclocking-larch.md:13:13: error: value-over-lines: this value is broken over lines | put it on one line, or write `|` after the colon and the text indented below; check the indentation if a key was meant',
    ],
    ok: [[NOTE, 'Bought at retail.', '|\n  Bought\n  at retail.']],
  },
  {
    rule: 'more-than-a-line',
    bad: [[NOTE, 'A faster Larch', '|\n  A faster\n  Larch']],
    report: [
      'content/notes/overclocking-larch.md:2:8: error: more-than-a-line: `title` has more than one line | expected one line',
    ],
    ok: [[NOTE, 'A faster Larch', '>\n  A faster\n  Larch']],
  },
  {
    rule: 'lost-in-comment',
    bad: [[FAST, 'Fast setting', 'Setting #2']],
    report: [
      'content/runs/larch-fast.md:2:16: warning: lost-in-comment: `#2` is taken as a comment, not as part of the value | put the value in quotes, or a blank after `#` if it is a comment',
    ],
    ok: [[FAST, 'Fast setting', '"Setting #2" # the fast one']],
  },
  {
    rule: 'yaml-syntax',
    bad: [[SETUP, '[inline-meter, on-die]', '[inline-meter, on-die']],
    report: [
      'content/setups/open-bench.md:9:1: error: yaml-syntax: a list in brackets is not closed on its line | close it with `]`',
    ],
    ok: [],
  },
  {
    rule: 'yaml-syntax',
    bad: [[FAST, 'title: Fast setting', 'Fast setting']],
    report: [
      'content/runs/larch-fast.md:2:1: error: yaml-syntax: this line has no colon, or the line below is indented too far | expected a key, a colon, a blank and a value',
    ],
    ok: [],
  },
  {
    rule: 'yaml-syntax',
    bad: [[FAST, 'Fast setting', "'the tester's'"]],
    report: [
      'content/runs/larch-fast.md:2:20: error: yaml-syntax: this does not fit here | expected a line such as `title: My text` | check indentation, quotes and brackets',
    ],
    ok: [[FAST, 'Fast setting', "'the tester''s'"]],
  },
  {
    rule: 'yaml-syntax',
    bad: [[FAST, 'Fast setting', '"C:\\data"']],
    report: [
      'content/runs/larch-fast.md:2:11: error: yaml-syntax: a backslash in double quotes begins no known sign | use single quotes, or write `\\\\`',
    ],
    ok: [[FAST, 'Fast setting', "'C:\\data'"]],
  },
];
