/** What is wrong with a file before it is decoded. */
import { isAnimated, KINDS, type Kind, kindOf } from './kind.ts';
import { LIMITS } from './settings.ts';

/** A sentence in parts, without a place: who reads the file knows where it is named. */
export interface PictureFault {
  readonly rule: 'picture-kind' | 'picture-animated' | 'picture-size' | 'picture-broken';
  readonly found: string;
  readonly expected?: string;
  readonly remedy: string;
}

/** The kind of a picture, by its bytes, or what is wrong with it. `path` is its path, of which the ending is looked at. */
export function judge(path: string, bytes: Uint8Array): Kind | PictureFault {
  const kind = kindOf(bytes);
  if (typeof kind === 'object') {
    const found = kind.other === 'no picture' ? 'is no picture that can be read' : `is ${kind.other}`;
    const remedy = kind.other === 'empty' ? 'copy it again from where it came from' : 'export it as JPEG or PNG';
    return { rule: 'picture-kind', found, expected: 'a JPEG, PNG, WebP or AVIF', remedy };
  }
  const ending = path.slice(path.lastIndexOf('.') + 1).toLowerCase();
  const { name, endings } = KINDS[kind];
  if (!endings.includes(ending)) {
    const remedy = `if it is the right file, let its name end in .${endings[0]}`;
    return { rule: 'picture-kind', found: `is ${name} by its content, and .${ending} by its name`, remedy };
  }
  if (isAnimated(kind, bytes)) {
    return { rule: 'picture-animated', found: 'is animated', expected: 'one still picture', remedy: 'export one frame of it' };
  }
  return kind;
}

/** What is wrong with the size of a picture; undefined where nothing is. */
export function judgeSize(width: number, height: number): PictureFault | undefined {
  const { pixels, least, side } = LIMITS;
  const size = `has ${width} × ${height} pixels`;
  const remedy = 'export it at another size';
  if (width * height > pixels || Math.max(width, height) > side) {
    const expected = `at most ${pixels / 1e6} million pixels, and ${side} on a side`;
    return { rule: 'picture-size', found: size, expected, remedy };
  }
  if (Math.min(width, height) < least)
    return { rule: 'picture-size', found: size, expected: `at least ${least} on a side`, remedy };
  return undefined;
}
