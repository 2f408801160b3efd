import type { SessionDescription } from "../stated/session.ts";
import { type AssignmentOffers, assignmentOffers, type Offer } from "./assignment-offers.ts";
import type { AssignedFile } from "./assignment-rows.ts";

/** Whose session it may be, and of which day, where all files that say it agree. */
export interface SessionOffers {
  readonly athlete?: Offer<string>;
  /** ISO. */
  readonly date?: Offer<string>;
}

/** What the files offer for a session that does not say it. */
export function sessionOffers(
  { athlete, date }: SessionDescription,
  folder: string,
  files: readonly AssignedFile[],
): SessionOffers {
  const all = files.map(({ file, reading }) =>
    assignmentOffers({ file, folder, ...(reading === undefined ? {} : { reading }) }),
  );
  return {
    ...(athlete === undefined ? agreed("athlete", all) : {}),
    ...(date === undefined ? agreed("date", all) : {}),
  };
}

function agreed(part: "athlete" | "date", all: readonly AssignmentOffers[]): SessionOffers {
  const offers = all.flatMap((each) => each[part]);
  const [first] = offers;
  return first !== undefined && offers.every((each) => each.value === first.value) ? { [part]: first } : {};
}
