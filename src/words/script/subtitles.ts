/** Reads the subtitles of a finished video, WebVTT or SubRip; the one door to the parser. */
// The package is CommonJS, and Node sees only its default export.
import webvtt from 'webvtt-parser';

export interface Subtitle {
  /** Seconds. */
  readonly from: number;
  readonly to: number;
  /** Without tags. */
  readonly text: string;
}

export interface Subtitles {
  readonly cues: readonly Subtitle[];
  /** What is wrong with the file, by line of the file. */
  readonly faults: readonly { readonly line: number; readonly message: string }[];
}

/** Reads a file's text; `SubRip` where it does not begin with the signature of WebVTT (W3C WebVTT, section 4.1). */
export function readSubtitles(text: string): Subtitles {
  const plain = text.replace(/^\uFEFF/, '');
  const isWebVtt = /^WEBVTT(?:[ \t\r\n]|$)/.test(plain);
  const shift = isWebVtt ? 0 : HEAD.split('\n').length - 1;
  const { cues, errors } = new webvtt.WebVTTParser().parse(isWebVtt ? plain : HEAD + fromSubRip(plain), 'metadata');
  return {
    cues: cues.map(({ startTime, endTime, text: words }) => ({ from: startTime, to: endTime, text: withoutTags(words) })),
    faults: errors.map(({ line, message }) => ({ line: Math.max(1, line - shift), message })),
  };
}

const HEAD = 'WEBVTT\n\n';

/** SubRip differs in the sign before the milliseconds, in hours of one digit, and in positions behind the times (common practice, no source). */
function fromSubRip(text: string): string {
  const time = String.raw`(\d+):(\d\d):(\d\d)[,.](\d{3})`;
  const timing = new RegExp(`^[ \\t]*${time}[ \\t]*-->[ \\t]*${time}.*$`, 'gm');
  return text.replace(timing, (_, ...parts: string[]) => {
    const [h1 = '', m1, s1, f1, h2 = '', m2, s2, f2] = parts;
    return `${h1.padStart(2, '0')}:${m1}:${s1}.${f1} --> ${h2.padStart(2, '0')}:${m2}:${s2}.${f2}`;
  });
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', nbsp: '\u00a0', lrm: '', rlm: '' };

function withoutTags(words: string): string {
  return words
    .replace(/<[^>]*>|\{\\[^}]*\}/g, '')
    .replace(/&(amp|lt|gt|nbsp|lrm|rlm);/g, (_, name: string) => ENTITIES[name] as string)
    .trim();
}
