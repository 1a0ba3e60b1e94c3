/** Text of files made fit for a terminal: what would act on it, or turn the order of letters round, is shown by its name. */

/** Control characters but tab and line feed; line and paragraph separators; Unicode's Bidi_Control (UAX 9). */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const HIDDEN = /[\u0000-\u0008\u000B-\u001F\u007F-\u009F\u2028\u2029]|\p{Bidi_Control}/gu;

/** ESC becomes ⟨U+001B⟩, and so on. */
export function visible(text: string): string {
  return text.replace(HIDDEN, (character) => {
    return `⟨U+${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}⟩`;
  });
}

/** Writes to a stream of the terminal. */
export function writer(stream: NodeJS.WritableStream): (text: string) => void {
  return (text) => {
    stream.write(visible(text));
  };
}
