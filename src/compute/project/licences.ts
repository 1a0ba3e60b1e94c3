/** The licences of a publication, where a file states none of its own. */
import type { Register } from '../../register/register.ts';
import type { SiteSettings } from './site-options.ts';

/** Gives runs the licence of data, and notes and scripts that of words. What states its own keeps it. */
export function withLicences(register: Register, { words, data }: SiteSettings['licence']): Register {
  return {
    ...register,
    ...(data && { runs: new Map([...register.runs].map(([id, run]) => [id, { licence: data, ...run }])) }),
    ...(words && { notes: new Map([...register.notes].map(([id, note]) => [id, { licence: words, ...note }])) }),
  };
}
