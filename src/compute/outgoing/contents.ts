/** What a file says that goes out as it came: told by its bytes, whatever its name says. */
import { decode } from '../../intake/sheet/decode.ts';
import { labelOf } from '../../intake/sheet/packed-label.ts';
import { packedWith, unpackWhole } from '../../intake/sheet/unpack.ts';
import { unzipped } from '../archive/zip.ts';

/** Of what is packed in one file (our own measure, no source). */
const MOST = 2 ** 30;
/** How much of a file shows whether it is text. */
const HEAD = 2 ** 16;
/** Texts hold hardly any; an archive of files as they are (POSIX ustar) is filled up with NULs, which are not counted. */
const CONTROL = /[\p{Cc}\ufffd]/gu;
const OF_TEXT = new Set(['\t', '\n', '\v', '\f', '\r', '\0', '\u001b']);
const MOST_CONTROL = 0.01;

/** Texts of a file: itself, or the names and files that are packed in it. */
export interface Contents {
  readonly texts: readonly string[];
  /** Files in it that are no text. */
  readonly binaries: readonly Uint8Array[];
  /** Whether it is packed: a place in its text is none in the file. */
  readonly packed: boolean;
  /** Whether some of it cannot be unpacked. */
  readonly damaged: boolean;
}

/** Texts and other files of the bytes of a file; those of packed ones unpacked, at any depth. Never throws. */
export function contentsOf(bytes: Uint8Array): Contents {
  const kind = packedWith(bytes);
  if (kind !== null) return ofPacked(kind, bytes);
  const text = textWithin(bytes);
  return { texts: text === null ? [] : [text], binaries: text === null ? [bytes] : [], packed: false, damaged: false };
}

function ofPacked(kind: 'gzip' | 'zip', bytes: Uint8Array): Contents {
  const names = kind === 'gzip' ? labelOf(bytes).words : [];
  try {
    const files = kind === 'gzip' ? [{ path: '', bytes: unpackWhole(bytes, MOST) }] : unzipped(bytes);
    const inner = files.map((file) => contentsOf(file.bytes));
    return {
      texts: [...names, ...files.map(({ path }) => path), ...inner.flatMap(({ texts }) => texts)],
      binaries: inner.flatMap(({ binaries }) => binaries),
      packed: true,
      damaged: inner.some(({ damaged }) => damaged),
    };
  } catch {
    return { texts: names, binaries: [], packed: true, damaged: true };
  }
}

/** The text of a file; null where its bytes are none. */
function textWithin(bytes: Uint8Array): string | null {
  const head = decode(bytes.subarray(0, HEAD)).text;
  const control = (head.match(CONTROL) ?? []).filter((each) => !OF_TEXT.has(each)).length;
  return control > MOST_CONTROL * head.length ? null : decode(bytes).text;
}
