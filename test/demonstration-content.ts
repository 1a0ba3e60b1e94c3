/** The files of the demonstration's content/, as stage 1 reads them. */
import { readProject } from '../src/compute/project/read-project.ts';
import type { ContentFile } from '../src/register/register.ts';
import { DEMONSTRATION } from './demonstration-folder.ts';

export function demonstrationContent(): readonly ContentFile[] {
  return readProject(DEMONSTRATION).content;
}
