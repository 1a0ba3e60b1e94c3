/** What an archive without the 64-bit extension cannot hold, apart from the library that writes it: whoever only tells of it loads nothing. */

/** The greatest numbers that its fields can say; with all bits set they would point to the extension (APPNOTE.TXT, 4.4.1.4). */
export const MOST = { bytes: 0xffff_fffe, files: 0xfffe };

/** Message of the error that is thrown for more. */
export const TOO_LARGE = 'an archive would be larger than a zip can be';
