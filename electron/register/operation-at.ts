import { daysBetween } from "../../core/gate/days.ts";
import type { InvolvedSide } from "../../core/ground/limb.ts";
import { isInvolved } from "../../core/sides/involvement.ts";
import type { SessionOperation } from "../../core/stated/cautions-schema.ts";
import type { RecordContent } from "./record-schemas.ts";

/**
 * The operation that counts for a session: the latest on an involved side, of those that make it one, by its day. One without a date outranks
 * them, because it may be the latest.
 */
export function operationAt(
  operations: readonly RecordContent<"operations">[],
  involved: InvolvedSide | undefined,
  date: string | undefined,
): SessionOperation | undefined {
  const ofSide = operations
    .filter(isInvolved)
    .filter(({ side }) => involved === "both" || involved === undefined || side === involved);
  const undated = ofSide.find((each) => each.date === undefined);
  const by = ofSide.filter(
    (each) => each.date !== undefined && (date === undefined || daysBetween(each.date, date) >= 0),
  );
  const latest = by.toSorted((first, second) => ((first.date ?? "") < (second.date ?? "") ? 1 : -1))[0];
  const operation = undated ?? latest;
  if (operation === undefined) return undefined;
  const { date: day, procedure, graft, repaired } = operation;
  return {
    ...(day !== undefined && { date: day }),
    procedure,
    ...(graft !== undefined && graft !== "" && { graft }),
    ...(repaired !== undefined && { repaired }),
  };
}
