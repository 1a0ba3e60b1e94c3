/**
 * Narrows Markdown's directive syntax to our own names, in the tokenizer: `10:30`, `1:N` or a foreign `:::note` are then
 * read as if directives did not exist, with the emphasis and links in them. What looks nearly ours is found by
 * `rules/nearly-ours.ts`, which reads the source.
 */
import type { Code, Construct, Extension, State } from 'micromark-util-types';
import type { Processor } from 'unified';
import { DIRECTIVES, type DirectiveForm } from './directive-names.ts';

const COLON = 58;
const LEFT_BRACKET = 91;
const LEFT_BRACE = 123;

/** A unified plugin; it stands after remark-directive, whose syntax it wraps. */
export function ownDirectivesOnly(this: Processor): undefined {
  const extensions = (this.data().micromarkExtensions ?? []) as Extension[];
  const at = extensions.length - 1;
  const directives = extensions[at];
  const flow = directives?.flow?.[COLON];
  const text = directives?.text?.[COLON];
  if (!Array.isArray(flow) || !text || Array.isArray(text)) throw new Error('remark-directive must stand before ownDirectivesOnly');
  const [container, leaf] = flow as [Construct, Construct];
  extensions[at] = {
    text: { [COLON]: narrowed(text, 'text', 1) },
    flow: { [COLON]: [narrowed(container, 'container', 3), narrowed(leaf, 'leaf', 2)] },
  };
}

function narrowed(construct: Construct, form: DirectiveForm, colons: number): Construct {
  return {
    ...construct,
    tokenize(effects, ok, nok) {
      const inner = construct.tokenize.call(this, effects, ok, nok);
      return effects.check({ partial: true, tokenize: (probe, yes, no) => nameCheck(probe, yes, no, form, colons) }, inner, nok);
    },
  };
}

/** Succeeds on enough colons, one of our names of this form, and what must follow it. */
function nameCheck(
  effects: Parameters<Construct['tokenize']>[0],
  ok: State,
  nok: State,
  form: DirectiveForm,
  colons: number,
): State {
  let count = 0;
  let name = '';
  return function start(code: Code): State | undefined {
    effects.enter('data');
    return colon(code);
  };
  function colon(code: Code): State | undefined {
    if (code !== COLON) return count === colons || (form === 'container' && count > colons) ? letter(code) : no(code);
    count += 1;
    effects.consume(code);
    return colon;
  }
  function letter(code: Code): State | undefined {
    if (code === null || code < 97 || code > 122 || name.length > 12) return end(code);
    name += String.fromCharCode(code);
    effects.consume(code);
    return letter;
  }
  function end(code: Code): State | undefined {
    effects.exit('data');
    return isOurs(code) ? ok(code) : nok(code);
  }
  function no(code: Code): State | undefined {
    effects.exit('data');
    return nok(code);
  }
  function isOurs(code: Code): boolean {
    if (DIRECTIVES.get(name)?.form !== form) return false;
    const opens = code === LEFT_BRACKET || code === LEFT_BRACE;
    return opens || (form !== 'text' && (code === null || code < 0 || code === 32));
  }
}
