/** A file of content/ to fill in: every key that it may have, with what it says, made from the shape that reads it. */
import { lineOf } from '../../register/values/key-line.ts';
import { type KeyFacts, keysOf } from '../../register/values/shape.ts';

/** What must be there stands ready to be changed; what may be left out is a comment. */
export function exampleFile(folder: string, shape: { readonly entries: object }): string {
  const facts = keysOf(shape);
  const parts = [...facts.filter(({ required }) => required), ...facts.filter(({ required }) => !required)].map(partOf);
  return [
    '---',
    `# The same keys for programs, as a JSON Schema: examples/schemas/${folder}.json`,
    `# Copy this file to content/${folder}/, under a name in lower case such as my-${folder.replace(/s$/, '')}.md, and change it there.`,
    '# A line that begins with # says nothing until you take the # away.',
    '',
    ...parts,
    '---',
    '',
    'What you write here stands on its page.',
    '',
  ].join('\n');
}

function partOf(fact: KeyFacts): string {
  const line = lineOf(fact) ?? `${fact.key}: …`;
  const shown = fact.required ? line : line.replace(/^/gm, '# ');
  return `# ${fact.key}: ${fact.about.replaceAll('\n', ' ')}\n${shown}\n`;
}
