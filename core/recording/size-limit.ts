/**
 * Largest recording that is taken in on the screens, and from a watched folder. No setting: a size in bytes, which
 * guards the memory.
 */
export const recordingByteLimit = 64 * 1024 * 1024;

/**
 * Largest archive handed over by a page; a larger one is named by its place. No setting: a size in bytes, which guards
 * the memory.
 */
export const archiveByteLimit = 64 * 1024 * 1024;

/** What is said of a recording beyond its limit; the others of its batch come in all the same. */
export function tooLargeSentence(name: string): string {
  return `${name} was left out: it is larger than 64 MB, the most that one recording may be here. Export it in shorter pieces, or analyse it on the command line.`;
}
