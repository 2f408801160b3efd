import { countOf } from "../../../ground/plain-words.ts";

/** How many there are of what screens count. */
export const counts = {
  athletes: (count: number) => countOf(count, "athlete"),
  files: (count: number) => countOf(count, "file"),
  frames: (count: number) => countOf(count, "frame"),
  headerLines: (count: number) => countOf(count, "header line"),
  hops: (count: number) => countOf(count, "hop"),
  otherRecords: (count: number) => countOf(count, "other record"),
  recordings: (count: number) => countOf(count, "recording"),
  sessions: (count: number) => countOf(count, "session"),
  trials: (count: number) => countOf(count, "trial"),
};
