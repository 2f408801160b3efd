import { z } from "zod";

/** What a person chose about fields that were changed elsewhere, as it comes from a screen. */
export const settledFields = z
  .array(
    z.strictObject({
      place: z.string().min(1).max(2000),
      theirs: z.string().max(100_000),
      keep: z.enum(["mine", "theirs"]),
    }),
  )
  .max(10_000);
