/** Spells numbers by the rules that the Unicode CLDR publishes (UTS #35, part 3, "Rule-Based Number Formatting"): the outside check of our words. */
import { createRequire } from 'node:module';

type Rule = readonly [base: string, body: string];

const RULES = createRequire(import.meta.url)('cldr-rbnf/rbnf/en.json').rbnf.rbnf.SpelloutRules as Record<string, Rule[]>;

/** A whole number in words by a rule set: `%spellout-cardinal` (without "and"), `%spellout-cardinal-verbose` (with "and" and commas). */
export function spellOut(value: number, set: string): string {
  const rules = (RULES[set] ?? []).filter(([base]) => /^\d/.test(base));
  const rule = rules.findLast(([base]) => Number(base.split('/')[0]) <= value);
  if (!rule) throw new Error(`no rule of ${set} for ${value}`);
  const [base = 0, radix = 10] = rule[0].split('/').map(Number);
  const divisor = radix ** Math.floor(Math.log(base) / Math.log(radix) + 1e-9) || 1;
  const rest = value % divisor;
  return rule[1]
    .replace(/;$/, '')
    .replace(/^'/, '')
    .replace(/\[(.*?)\]/, rest === 0 ? '' : '$1')
    .replace(/=(%+[a-z-]+)=/, (_, name: string) => spellOut(value, name))
    .replace(/←(%+[a-z-]+)?←/, (_, name = set) => spellOut(Math.floor(value / divisor), name))
    .replace(/→(%+[a-z-]+)?→/, (_, name = set) => spellOut(rest, name));
}
