import { z } from "zod";
import { limbs, sides } from "../ground/limb.ts";
import { testKinds } from "../ground/test-kind.ts";

/** Text that is not empty. */
export const text = z.string().min(1);

/** YYYY-MM-DD. */
export const isoDate = z.iso.date();

export const side = z.enum(sides);

export const limb = z.enum(limbs);

export const testKind = z.enum(testKinds);

/** On two legs, or on one at a time. */
export const legs = z.enum(["both", "single"]);

/** Height of the box, metres. */
export const dropHeight = z.number().positive().max(2);
