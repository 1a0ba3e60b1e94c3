/** Faults that say nothing of a file: the same bytes may be read well the next time. */

/** Words of the decoder (libvips, and the allocator of its language) where time or memory ran out. */
const WORDS = /\btimeout\b|out of memory|insufficient memory|bad_alloc|(?:cannot|unable to|failed to) allocate/i;

/** Whether what the decoder threw came of the clock or of memory. */
export function isOfTheMoment(thrown: unknown): boolean {
  return WORDS.test(thrown instanceof Error ? thrown.message : String(thrown));
}
