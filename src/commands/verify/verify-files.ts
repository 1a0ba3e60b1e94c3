/** Holds files against the digests of everything that the project publishes or would publish. */

import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { resolve } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { compute } from '../../compute/compute.ts';
import type { DigestEntry, Digests } from '../../compute/data/known-files.ts';
import { DIGESTS } from '../../compute/data/verify-part.ts';
import { mending } from '../../compute/project/mending.ts';
import type { Scope } from '../../compute/results.ts';
import { openStore } from '../../compute/store/store.ts';
import { counted } from '../../figures/in-words.ts';

export const USAGE =
  'Usage: npm run verify -- FILE…\nSays of each file which published file of this project it is, to the last byte.\n';

interface Streams {
  /** From which relative names are meant. */
  readonly folder: string;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

/** Exit code: 0 where every file is known, 1 where one is not, 2 where one cannot be read or told, or none is named. */
export async function verifyFiles(root: string, names: readonly string[], { folder, out, err }: Streams): Promise<0 | 1 | 2> {
  if (names.length === 0 || names.some((name) => name.startsWith('--'))) {
    err(USAGE);
    return 2;
  }
  const { digests: published } = await digestsOf(root, 'site');
  // Drafts and what is held back are the author's to know.
  const { digests: all, errors } = await digestsOf(root, 'all');
  let code: 0 | 1 | 2 = 0;
  for (const name of names) {
    const sha256 = await digestOfFile(resolve(folder, name));
    if (sha256 === null) {
      err(`${name}: cannot be read\n`);
      code = 2;
      continue;
    }
    const known = published[sha256] ?? all[sha256] ?? [];
    out(
      `${name}: ${known.length === 0 ? unknown(errors) : known.map((each) => said(each, sha256 in published)).join('; also ')}\n  SHA-256 ${sha256}\n`,
    );
    if (known.length === 0 && errors > 0) code = 2;
    else if (known.length === 0 && code === 0) code = 1;
  }
  return code;
}

/** A file of a run that has an error has no digest here: that it was changed cannot be said. */
function unknown(errors: number): string {
  const found = 'no file of this project has this digest';
  if (errors === 0) return found;
  return `${found}, as far as it can be read: it has ${counted(errors, 'error')}; mend what \`npm run check\` tells, then verify again`;
}

function said({ what, of, page, path, elsewhere }: DigestEntry, isPublished: boolean): string {
  const where = path ?? (elsewhere === undefined ? 'not offered by the site' : `kept at ${elsewhere}`);
  return `${what}, ${of} (${page})${isPublished ? `, ${where}` : ', not published'}`;
}

/** Digests of what a scope consists of, and how many errors keep others out. */
function digestsOf(root: string, scope: Scope): Promise<Pick<Digests, 'digests'> & { readonly errors: number }> {
  return mending(root, async () => {
    const { files, problems } = await compute(root, scope);
    const blob = files.find(({ path }) => path === DIGESTS)?.blob;
    const text = blob === undefined ? undefined : Buffer.from(openStore(root).bytes(blob)).toString('utf8');
    const digests = text === undefined ? {} : (JSON.parse(text) as Digests).digests;
    return { digests, errors: problems.filter(({ severity }) => severity === 'error').length };
  });
}

/** SHA-256 of a file of any size; null where it cannot be read. */
async function digestOfFile(path: string): Promise<string | null> {
  const hash = createHash('sha256');
  try {
    await pipeline(createReadStream(path), hash);
    return hash.digest('hex');
  } catch {
    return null;
  }
}
