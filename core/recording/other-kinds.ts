/** What a file is that surely is no recording, in a word that takes an s. */
export const otherKinds = [
  "picture",
  "film",
  "sound file",
  "document",
  "web page",
  "program file",
  "text",
  "table of results",
  "hidden file",
] as const;

export type OtherKind = (typeof otherKinds)[number];
