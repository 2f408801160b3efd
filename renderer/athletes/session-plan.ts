import type { InvolvedSide } from "../../core/ground/limb.ts";
import { shippedProtocol } from "../../core/protocol/shipped-protocols.ts";
import { involvedSideAt, isInvolved } from "../../core/sides/involvement.ts";
import type { SessionPlan } from "../../electron/boundary/record-requests.ts";
import type { RecordContent } from "../../electron/register/record-schemas.ts";
import type { AthletePage } from "../../electron/register/register-views.ts";
import { involvedSides } from "../recordings/session-answers.ts";
import { words } from "../words/words.ts";

const prose = words.screens.protocols;

type Conditions = NonNullable<RecordContent<"sessions">["conditions"]>;

/** What the form about the next session holds, as written. */
export interface WrittenPlan {
  readonly date: string;
  readonly milestone: string;
  readonly protocol: string;
  readonly place: string;
  readonly tester: string;
  readonly mass: string;
  /** The involved side, where the register does not say it; "" while nobody stated it. */
  readonly involved: string;
  readonly conditions: WrittenConditions;
}

/** One condition under which the athlete jumps. */
interface ConditionField {
  readonly name: keyof Conditions;
  readonly label: string;
  readonly type: "text" | "number" | "yesNo";
  /** How many of what is written make one of what is kept. */
  readonly scale?: number;
}

export const conditionFields = [
  { name: "arms", label: prose.arms, type: "text" },
  { name: "instruction", label: prose.instruction, type: "text" },
  { name: "shoes", label: prose.shoes, type: "text" },
  { name: "braceOrTape", label: prose.braceOrTape, type: "text" },
  { name: "surface", label: prose.surface, type: "text" },
  { name: "warmUp", label: prose.warmUp, type: "text" },
  { name: "practiceJumps", label: prose.practiceJumps, type: "number" },
  { name: "limbOrder", label: prose.orderOfLimbs, type: "text" },
  { name: "restSeconds", label: prose.restBetweenTrialsS, type: "number" },
  { name: "boxHeightMetres", label: prose.boxCm, type: "number", scale: 100 },
  { name: "painkillerWithin24Hours", label: prose.painkillerInLast24Hours, type: "yesNo" },
  { name: "timeOfDay", label: prose.timeOfDay, type: "text" },
] as const satisfies readonly ConditionField[];

export type WrittenConditions = Readonly<Record<(typeof conditionFields)[number]["name"], string>>;

/** Painkillers and the time of day are of the day; everything else is what it was last time. */
const ofTheDay: ReadonlySet<string> = new Set(["painkillerWithin24Hours", "timeOfDay"]);

/** The form as it begins: the conditions, place and tester of the last session that has any. */
export function plannedFrom(page: AthletePage, today: string): WrittenPlan {
  const earlier = page.sessions.map(({ session }) => session.content).toReversed();
  const last = earlier.find(({ conditions }) => conditions !== undefined)?.conditions ?? {};
  const known: Readonly<Record<string, unknown>> = last;
  const conditions = Object.fromEntries(
    conditionFields.map(({ name, ...field }) => {
      const value = ofTheDay.has(name) ? undefined : known[name];
      const scale = "scale" in field ? field.scale : 1;
      return [name, typeof value === "number" ? String(Number((value * scale).toFixed(6))) : String(value ?? "")];
    }),
  ) as WrittenConditions;
  const [latest] = earlier;
  const protocol = earlier.find((each) => each.protocol !== undefined)?.protocol?.id ?? "";
  return {
    date: today,
    milestone: "",
    protocol: shippedProtocol(protocol) === undefined ? "" : protocol,
    place: latest?.place ?? "",
    tester: latest?.tester ?? "",
    mass: "",
    involved: "",
    conditions,
  };
}

/** What is written, ready for the register; a sentence where it cannot be meant. */
export function planFrom(
  written: WrittenPlan,
  page: AthletePage,
): { readonly plan: SessionPlan } | { readonly problem: string } {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(written.date)) return { problem: prose.dateMissing };
  const massKg = numberIn(written.mass);
  if (massKg !== undefined && !(massKg >= 20 && massKg <= 250)) return { problem: prose.massIsANumber };
  const conditions: Record<string, unknown> = {};
  for (const { name, label, type, ...field } of conditionFields) {
    const text = written.conditions[name].trim();
    if (text === "") continue;
    if (type === "text") conditions[name] = text;
    else if (type === "yesNo") conditions[name] = text === "yes";
    else {
      const value = numberIn(text);
      if (value === undefined || !(value >= 0)) return { problem: prose.isANumber(label) };
      conditions[name] = value / ("scale" in field ? field.scale : 1);
    }
  }
  const text = (name: "milestone" | "place" | "tester") => {
    const typed = written[name].trim();
    return typed === "" ? {} : { [name]: typed };
  };
  const protocol = shippedProtocol(written.protocol);
  const injury = injuryAt(page, written.date);
  const stated = involvedSides.find((side) => side === written.involved);
  const plan: SessionPlan = {
    date: written.date,
    ...text("milestone"),
    ...text("place"),
    ...text("tester"),
    ...(massKg !== undefined && { massKg }),
    ...(protocol !== undefined && { protocol }),
    ...(stated !== undefined && involvedInRegister(page, written.date) === undefined && { involved: stated }),
    ...(injury !== "" && { injury }),
    ...(Object.keys(conditions).length > 0 && { conditions: conditions as Conditions }),
  };
  return { plan };
}

/** The involved side on a day as the register says: by what is marked, or stated to be nobody; undefined by neither. */
export function involvedInRegister(page: AthletePage, date: string): InvolvedSide | undefined {
  const recorded = [...page.injuries, ...page.operations].map(({ content }) => content);
  return involvedSideAt(recorded, date, page.athlete.content.nobodyInjured !== undefined);
}

/** True unless it is stated that nobody is injured: then fewer questions are asked. */
export function isInjured(written: WrittenPlan, page: AthletePage): boolean {
  return (involvedInRegister(page, written.date) ?? written.involved) !== "none";
}

/** Who answered the cautions last, else who tested last. */
export function lastAnsweredBy({ sessions }: Pick<AthletePage, "sessions">): string | undefined {
  const contents = sessions.map(({ session }) => session.content);
  const answered = contents.flatMap(({ cautionAnswers = [] }) => cautionAnswers).at(-1)?.by;
  return answered ?? contents.findLast(({ tester }) => tester !== undefined)?.tester;
}

/** The injury in words as of a day: the latest operation, else the latest injury. */
function injuryAt({ injuries, operations }: AthletePage, date: string): string {
  const operation = latestBy(operations.map(({ content }) => content).filter(isInvolved), date);
  if (operation !== undefined) {
    const graft = operation.graft === undefined ? "" : prose.graft(operation.graft);
    return `${operation.side} ${operation.procedure}${graft}`;
  }
  const injury = latestBy(injuries.map(({ content }) => content).filter(isInvolved), date);
  return injury === undefined ? "" : `${injury.side} ${injury.structure}`;
}

/** The latest of what happened by a day. */
function latestBy<Each extends { readonly date?: string }>(events: readonly Each[], date: string): Each | undefined {
  const known = events.filter((each) => each.date !== undefined && each.date <= date);
  return known.toSorted((first, second) => ((first.date ?? "") < (second.date ?? "") ? 1 : -1))[0];
}

function numberIn(text: string): number | undefined {
  return text.trim() === "" ? undefined : Number(text.trim().replace(",", "."));
}
