import { z } from "zod";
import type { SchemaType } from "../../../core/ground/schema-type.ts";

/** How far a copy was checked. No Node imports: records and facts keep what this describes. */
export const checkExtents = ["structure", "checksums", "everything"] as const;

/** Sentences kept of one check; a copy that is damaged everywhere needs no list of all. */
const mostProblems = 5;

/** What the last check of a copy found. */
export const copyCheckSchema = z.strictObject({
  extent: z.enum(checkExtents),
  problems: z.array(z.string().max(1000)).max(mostProblems),
  /** When the file was last written as it was checked, in milliseconds since 1970: another time means other bytes. */
  fileChangedAt: z.number(),
});

export type CopyCheck = SchemaType<typeof copyCheckSchema>;

/** The same of a file, cut to what is kept. */
export function checkOf(extent: CopyCheck["extent"], problems: readonly string[], fileChangedAt: number): CopyCheck {
  return { extent, problems: problems.slice(0, mostProblems).map((each) => each.slice(0, 1000)), fileChangedAt };
}
