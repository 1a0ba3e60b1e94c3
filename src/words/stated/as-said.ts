/** A wording put as people say it: "three quarters of the power", not "three quarters times the power". */

const FEW = 'one|two|three|four|five|six|seven|eight|nine';
const PART = '(?:third|quarter|fifth|eighth|tenth)s?';
/** A part below one with a name of its own, but for the half: "a third", "three quarters". */
const FRACTION = String.raw`(?<!and )\b(?:an?|${FEW}) ${PART}`;
const MIXED = String.raw`\b(?:${FEW}|ten|\w+teen|\w+ty) and an? (?:half|${PART})`;
const THE = '(?:the|its|their|that|those)';

const FORMS: readonly (readonly [form: RegExp, said: string])[] = [
  [/(?<![\d.,])1 (setting|specimen|run|repeat|test|benchmark|attempt)s\b/g, '1 $1'],
  [new RegExp(String.raw`\bhalf times (?=${THE}\b|as\b)`, 'g'), 'half '],
  [new RegExp(String.raw`(${FRACTION}) times (?=${THE}\b)`, 'g'), '$1 of '],
  [new RegExp(String.raw`(${FRACTION}) times (?=as\b)`, 'g'), '$1 '],
  [new RegExp(String.raw`(${FRACTION}) (?=${THE}\b)`, 'g'), '$1 of '],
  [new RegExp(String.raw`(${MIXED}) of (?=${THE}\b)`, 'g'), '$1 times '],
  [new RegExp(String.raw`(${MIXED}) (?=${THE}\b)`, 'g'), '$1 times '],
  [new RegExp(String.raw`(${MIXED}|\b\d+(?:\.\d+)?) (?=as \w+)(?!.*\bagain\b)`, 'g'), '$1 times '],
];

/** What nobody says: "one times as fast", "half times" with nothing behind it, "zero point nine of the clock", "more than 0.9 times", "one point zero settings". */
const NEVER = new RegExp(
  String.raw`\bpoint zero(?: zero)* (?:setting|specimen|run|repeat|test|benchmark|attempt)s?\b|\b(?:than|over|above|under|below|least|most|up to) (?:0\.\d+|zero point \w+) times\b|\b(?:one|zero) times\b|(?:(?<!and an? )\bhalf|${FRACTION}) times\b|\bpoint \w+ of ${THE}\b|\b(?:one|two) of ${THE}\b`,
);

/** The wording as it is said; undefined where nobody would say it. */
export function asSaid(wording: string): string | undefined {
  const said = FORMS.reduce((text, [form, by]) => text.replace(form, by), wording);
  return NEVER.test(said) ? undefined : said;
}
