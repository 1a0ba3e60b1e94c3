/** The kinds of page that a site has, in the order of its pages. */
import { ABOUT } from './kinds/about.ts';
import { COMPARISONS } from './kinds/comparisons.ts';
import { DEVICES } from './kinds/devices.ts';
import { GUIDE } from './kinds/guide.ts';
import { HOSTING } from './kinds/hosting.ts';
import { NOTES } from './kinds/notes.ts';
import { RECORD_COPIES } from './kinds/record-copies.ts';
import { RUNS } from './kinds/runs.ts';
import { FREE_COMPARISON, HOME, METHOD, NOT_FOUND } from './kinds/single-pages.ts';
import type { PageKind } from './page-kind.ts';

export const KINDS: readonly PageKind[] = [
  HOME,
  NOTES,
  RUNS,
  DEVICES,
  COMPARISONS,
  RECORD_COPIES,
  FREE_COMPARISON,
  METHOD,
  GUIDE,
  ABOUT,
  HOSTING,
  NOT_FOUND,
];
