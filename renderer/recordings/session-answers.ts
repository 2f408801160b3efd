import type { InvolvedSide } from "../../core/ground/limb.ts";
import { shippedProtocol } from "../../core/protocol/shipped-protocols.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import { settingsCatalogue } from "../../core/settings/settings.ts";
import type { SessionOperation } from "../../core/stated/cautions-schema.ts";
import { stopKinds } from "../../core/stated/gate-words.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import type { SessionChange } from "../../electron/boundary/stated-changes.ts";
import { words } from "../words/words.ts";

const prose = words.screens.sessionStatements;

/** What the form about the session holds, as written. */
export interface WrittenSession {
  readonly code: string;
  readonly name: string;
  readonly involved: string;
  readonly injury: string;
  readonly date: string;
  readonly milestone: string;
  /** Body mass in kilograms. */
  readonly mass: string;
  /** Why the session was stopped; empty: it was not. */
  readonly stopped: string;
  /** What the reason is about; "" where it is not said. */
  readonly stopKind: string;
  /** Whether and when the involved knee was operated on: "" not stated, "on" a date, "unknown" the date. */
  readonly operated: string;
  readonly operatedOn: string;
  /** Whether meniscus or cartilage was repaired; "" where it is not said. */
  readonly repaired: string;
  /** Identifier of the protocol; "" for none. */
  readonly protocol: string;
  /** The plate the left foot stood on, where that was stated. */
  readonly leftFoot: string;
}

const repairs = ["yes", "no", "not known"] as const;

export const involvedSides: readonly InvolvedSide[] = ["left", "right", "both", "none"];

/** The session as the form shows it; "" for what nobody stated. */
export function writtenSession(description: SessionDescription): WrittenSession {
  const { operation } = description;
  return {
    code: description.athlete?.code ?? "",
    name: description.athlete?.name ?? "",
    involved: description.involved ?? "",
    injury: description.injury ?? "",
    date: description.date ?? "",
    milestone: description.milestone ?? "",
    mass: description.massKg === undefined ? "" : String(description.massKg),
    stopped: description.stopped?.reason ?? "",
    stopKind: description.stopped?.kind ?? "",
    operated: operation === undefined ? "" : operation.date === undefined ? "unknown" : "on",
    operatedOn: operation?.date ?? "",
    repaired: operation?.repaired ?? "",
    protocol: description.protocol?.id ?? "",
    leftFoot: description.plates?.find((each) => each.foot === "left")?.column ?? "",
  };
}

/** The names of the plates, where the session was recorded on two. */
export function plateNames({ trials }: SessionResult): readonly string[] {
  const onTwo = trials.filter((trial) => trial.plates.length === 2);
  return [...new Set(onTwo.flatMap((trial) => trial.plates.map((plate) => plate.name)))];
}

/** What was changed in the form, ready for the host; a sentence where it cannot be meant. Emptied fields are taken away. */
export function sessionChangeFrom(
  written: WrittenSession,
  description: SessionDescription,
  plates: readonly string[],
): { readonly change: SessionChange } | { readonly problem: string } {
  const before = writtenSession(description);
  const changed = (name: keyof WrittenSession) => written[name].trim() !== before[name];
  const text = (name: "injury" | "date" | "milestone") =>
    changed(name) ? { [name]: written[name].trim() === "" ? null : written[name].trim() } : {};
  const massKg = numberFrom(written.mass);
  const code = written.code.trim();
  const name = written.name.trim();
  const problem = problemOf(written, massKg);
  if (problem !== "") return { problem };
  const involved = involvedSides.find((side) => side === written.involved) ?? null;
  const { name: _name, ...athlete } = description.athlete ?? { code };
  const change: SessionChange = {
    ...(changed("code") || changed("name")
      ? { athlete: code === "" ? null : { ...athlete, code, ...(name === "" ? {} : { name }) } }
      : {}),
    ...(changed("involved") ? { involved } : {}),
    ...text("injury"),
    ...text("date"),
    ...text("milestone"),
    ...(changed("mass") ? { massKg: massKg ?? null } : {}),
    ...(changed("stopped") || changed("stopKind") ? { stopped: stoppedFrom(written) } : {}),
    ...(changed("operated") || changed("operatedOn") || changed("repaired")
      ? { operation: operationFrom(written, description.operation) }
      : {}),
    ...(changed("protocol") ? { protocol: shippedProtocol(written.protocol) ?? null } : {}),
    ...(changed("leftFoot") ? { plates: feetOnPlates(written.leftFoot, plates) } : {}),
  };
  return Object.keys(change).length === 0 ? { problem: prose.nothingWasChanged } : { change };
}

/** A number with a point or a comma; absent where nothing was written, not a number where it is none. */
function numberFrom(written: string): number | undefined {
  return written.trim() === "" ? undefined : Number(written.trim().replace(",", "."));
}

const leastMassKg = settingsCatalogue.bodyMassMinimumKg.default;
const mostMassKg = settingsCatalogue.bodyMassMaximumKg.default;

/** Why what is written cannot be meant, one sentence; "" where it can. */
function problemOf(written: WrittenSession, massKg = leastMassKg): string {
  if (!(massKg >= leastMassKg && massKg <= mostMassKg)) {
    return prose.massIsANumber(leastMassKg, mostMassKg);
  }
  const filled = (name: keyof WrittenSession) => written[name].trim() !== "";
  if (written.operated === "on" && !/^\d{4}-\d{2}-\d{2}$/.test(written.operatedOn.trim())) {
    return prose.enterOperationDate;
  }
  if (!filled("code") && filled("name")) return prose.athleteNeedsACode;
  return "";
}

/** What the form shows of the operation; its procedure and graft stay. */
function operationFrom(
  { operated, operatedOn, repaired: written }: WrittenSession,
  before: SessionDescription["operation"],
): SessionOperation | null {
  if (operated === "") return null;
  const { date: _date, repaired: _repaired, ...kept } = before ?? {};
  const repaired = repairs.find((each) => each === written);
  return {
    ...kept,
    ...(operated === "on" && { date: operatedOn.trim() }),
    ...(repaired !== undefined && { repaired }),
  };
}

function stoppedFrom(written: WrittenSession): NonNullable<SessionChange["stopped"]> | null {
  const reason = written.stopped.trim();
  const kind = stopKinds.find((each) => each === written.stopKind);
  return reason === "" ? null : { reason, ...(kind !== undefined && { kind }) };
}

function feetOnPlates(leftFoot: string, plates: readonly string[]): NonNullable<SessionChange["plates"]> | null {
  const rightFoot = plates.find((name) => name !== leftFoot);
  if (leftFoot === "" || rightFoot === undefined) return null;
  return [
    { column: leftFoot, foot: "left" },
    { column: rightFoot, foot: "right" },
  ];
}
