/** How large a zip of a shoot may be, written or read. */

export const LARGEST_ZIP_B = 256_000_000;

/** All that is in it, unpacked. */
export const LARGEST_UNPACKED_B = 256_000_000;

export const MOST_ENTRIES = 1000;

/** In words, for whoever meets a limit. */
export const ZIP_LIMITS = `at most ${MOST_ENTRIES} entries, 32 MB each, ${LARGEST_UNPACKED_B / 1e6} MB in all`;
