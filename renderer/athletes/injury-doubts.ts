import { isInvolved } from "../../core/sides/involvement.ts";
import type { StoredRecord } from "../../electron/register/record-tables.ts";
import type { AthletePage } from "../../electron/register/register-views.ts";
import { dateWords, sentenceCase } from "../shell/words.ts";

type Injury = StoredRecord<"injuries">;
type Operation = StoredRecord<"operations">;

/** True where neither a record, nor a statement, nor a session says whether a side is involved. */
export function asksWhetherInjured({ athlete, injuries, operations, sessions }: AthletePage): boolean {
  if (athlete.content.nobodyInjured !== undefined) return false;
  if ([...injuries, ...operations].some(({ content }) => isInvolved(content))) return false;
  return !sessions.some(({ session }) => session.content.involved !== undefined);
}

/**
 * Operations of a side on which no injury of that body part is marked, while one is marked on the other side: one of the
 * two may be wrong. None that a person has confirmed for the side it is on.
 */
export function operationsOnOtherSide({
  injuries,
  operations,
}: AthletePage): readonly { readonly operation: Operation; readonly injury: Injury }[] {
  return operations.flatMap((operation) => {
    const { side, sideConfirmed, bodyPart = "knee" } = operation.content;
    if (!isInvolved(operation.content) || sideConfirmed === side) return [];
    const alike = injuries.filter(({ content }) => isInvolved(content) && (content.bodyPart ?? "knee") === bodyPart);
    const [injury] = alike;
    return injury === undefined || alike.some(({ content }) => content.side === side) ? [] : [{ operation, injury }];
  });
}

/** "Anterior cruciate ligament, 17 Jan 2026". */
export function recordName({ content }: Injury | Operation): string {
  const what = sentenceCase("structure" in content ? content.structure : content.procedure);
  return content.date === undefined ? what : `${what}, ${dateWords(content.date)}`;
}
