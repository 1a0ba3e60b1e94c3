/** Cuts an author's words into numbers, words and marks, with their places. */

export interface Token {
  readonly kind: 'number' | 'power' | 'clock' | 'vulgar' | 'word' | 'mark';
  /** As it stands in the text. */
  readonly text: string;
  /** In lower case, with one form of apostrophe. */
  readonly low: string;
  readonly start: number;
  readonly end: number;
  /** True where no blank stands before it: `71°C`, `20-minute`. */
  readonly glued: boolean;
}

/** Alternatives in the order they are tried; the blanks that group digits are those of ISO 80000-1:2009, 7.3.1, and the plain one. */
const TOKEN = new RegExp(
  [
    String.raw`(?<clock>\d+:\d\d(?::\d\d)?(?![\d:]))`,
    String.raw`(?<power>(?:\d+(?:\.\d+)?)[ \u00a0]?×[ \u00a0]?10(?:\^[-−]?\d+|⁻?[⁰¹²³⁴-⁹]+))`,
    String.raw`(?<number>\d{1,3}(?:[ \u00a0\u2009\u202f]\d{3})+(?:\.\d+)?(?![\d.])|\d+(?:[.,]\d+)*(?:[eE][+\-−]?\d+)?|\.\d+|\p{Nd}+)`,
    '(?<vulgar>[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])',
    String.raw`(?<word>[°º˚℃℉%‰]+\p{L}*|\p{L}+(?:['’]\p{L}+)?)`,
    String.raw`(?<mark>\S)`,
  ].join('|'),
  'gu',
);

/** Hyphens that join words: what they join is read as if a blank stood there. */
const HYPHENS = new Set(['-', '‐', '‑']);

/** The tokens of a text. A hyphen before a letter is left out: `fifty-eight`, `20-minute`; before a digit it stays: `69-72`, `larch-2`. */
export function tokenise(text: string): Token[] {
  const tokens: Token[] = [];
  for (const match of text.matchAll(TOKEN)) {
    const kind: Token['kind'] = KINDS.find((name) => match.groups?.[name] !== undefined) ?? 'mark';
    const start = match.index;
    const token = { kind, text: match[0], low: match[0].toLowerCase().replaceAll('’', "'"), start, end: start + match[0].length };
    const before = tokens.at(-1);
    if (before && kind === 'word' && joins(before) && before.glued && before.end === start) tokens.pop();
    tokens.push({ ...token, glued: before?.end === start });
  }
  return tokens;
}

const KINDS = ['clock', 'power', 'number', 'vulgar', 'word'] as const;

function joins({ text }: Token): boolean {
  return HYPHENS.has(text);
}
