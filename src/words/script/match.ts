/** Finds the words of a script in the subtitles of its video; the one door to diff. */
import { diffArrays } from 'diff';
import { spoken } from '../stated/spoken.ts';
import { nameOfSymbol } from '../stated/unit-names.ts';
import type { Subtitle } from './subtitles.ts';
import type { Anchor } from './timeline.ts';
import type { Token } from './tokens.ts';

export interface Match {
  readonly anchors: readonly Anchor[];
  /** Share of the script's words that the subtitles hold, in order. */
  readonly share: number;
}

/** Below this share the subtitles are those of something else. */
export const LEAST_SHARE = 0.5;

interface Said {
  readonly word: string;
}
interface ScriptWord extends Said {
  /** Index in the script. */
  readonly index: number;
}
interface HeardWord extends Said {
  readonly at: number;
}

/**
 * Matches by words alone: small letters, without signs, numbers said ("58.3 °C" and "fifty-eight point three degrees" are the same).
 * A word within a subtitle is taken to begin at its even share of the subtitle's time; a number of several words counts from its first.
 * The end of the last subtitle that holds a matched word ends the script.
 */
export function matchSubtitles(tokens: readonly Token[], subtitles: readonly Subtitle[]): Match {
  const script = scriptWords(tokens);
  const heard = subtitles.flatMap((subtitle) => heardWords(subtitle));
  const pairs = inBoth(script, heard);
  const firsts = pairs.filter(({ index }, k) => index !== pairs[k - 1]?.index);
  const anchors = firsts.map(({ index, at }) => ({ word: index, at }));
  const total = tokens.reduce((sum, { words }) => sum + words, 0);
  const last = pairs.at(-1);
  const closing = last && subtitles.find(({ from, to }) => from <= last.at && last.at < to);
  return {
    anchors: closing && last.index === total - 1 ? [...anchors, { word: total, at: closing.to }] : anchors,
    share: script.length === 0 ? 0 : pairs.length / script.length,
  };
}

function scriptWords(tokens: readonly Token[]): ScriptWord[] {
  let index = 0;
  return tokens.flatMap(({ said }) =>
    said
      .split(/\s+/)
      .filter((word) => /[\p{L}\p{N}]/u.test(word))
      .flatMap((word) => {
        const at = index;
        index += 1;
        return normal(word).map((part) => ({ word: part, index: at }));
      }),
  );
}

function heardWords({ from, to, text }: Subtitle): HeardWord[] {
  const words = normal(text);
  return words.map((word, index) => ({ word, at: from + ((to - from) * index) / words.length }));
}

const NUMBER = /(\d[\d,]*(?:\.\d+)?)(?:[ \u00a0\u2009\u202f]?([^\s\d.,;:!?)]+))?/gu;

/** The words of a text as they are compared. */
function normal(text: string): string[] {
  const said = text.replace(NUMBER, (written: string, number: string, unit?: string) => {
    if (unit === undefined) return ` ${spoken(number)} `;
    return nameOfSymbol(unit) ? ` ${spoken(`${number} ${unit}`)} ` : ` ${spoken(number)} ${written.slice(number.length)} `;
  });
  return (
    said
      .toLowerCase()
      .replace(/['’]/g, '')
      .match(/[\p{L}\p{N}%]+/gu) ?? []
  );
}

/** The longest common sequence: each word of the script with the time at which it is heard. */
function inBoth(script: readonly ScriptWord[], heard: readonly HeardWord[]): (ScriptWord & HeardWord)[] {
  // Where half of the script is heard, so few words differ at most: more are not worth the search.
  const options = { comparator: (a: Said, b: Said) => a.word === b.word, maxEditLength: heard.length };
  const parts = diffArrays<Said>([...script], [...heard], options) ?? [];
  const pairs: (ScriptWord & HeardWord)[] = [];
  let [inScript, inHeard] = [0, 0];
  for (const { added, removed, count } of parts) {
    for (let k = 0; k < count && !added && !removed; k += 1) {
      pairs.push({ ...(heard[inHeard + k] as HeardWord), ...(script[inScript + k] as ScriptWord) });
    }
    if (!added) inScript += count;
    if (!removed) inHeard += count;
  }
  return pairs;
}
