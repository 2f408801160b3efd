import { limitsInForce } from "../../core/gate/limits.ts";
import { type TestLoad, testLoads } from "../../core/gate/test-load.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import { type ClinicLimits, clinicLimitsSchema } from "../../core/stated/cautions-schema.ts";
import { type EffusionGrade, effusionGrades } from "../../core/stated/gate-words.ts";
import type { HostApi } from "../../electron/boundary/host-api.ts";
import { carriedName } from "../shell/carried-name.ts";
import { words } from "../words/words.ts";

const prose = words.screens.limits;

type SetLimits = HostApi["limits.set"]["request"]["limits"];

/** Weeks after the operation as they are written, without and with (or with an unknown) repair. */
export interface WrittenWeeks {
  readonly plain: string;
  readonly repaired: string;
}

/** The clinic's limits as their form holds them. */
export interface WrittenLimits {
  readonly painTwoLeg: string;
  readonly painSingleLegAndDrop: string;
  readonly effusion: EffusionGrade;
  readonly earliestWeeks: Readonly<Record<TestLoad, WrittenWeeks>>;
  readonly landingsTwoLeg: string;
  readonly landingsPerLeg: string;
  readonly setBy: string;
}

/** The limits in force as their form shows them: what nobody has set is the program's default. */
export function writtenLimits(limits: ClinicLimits): WrittenLimits {
  const now = limitsInForce({ limits }, defaultSettings);
  return {
    painTwoLeg: String(now.painTwoLeg),
    painSingleLegAndDrop: String(now.painSingleLegAndDrop),
    effusion: now.effusion,
    earliestWeeks: weeksOf((load) => ({
      plain: String(now.earliestWeeks[load].plain),
      repaired: String(now.earliestWeeks[load].repaired),
    })),
    landingsTwoLeg: String(now.landingsTwoLeg),
    landingsPerLeg: String(now.landingsPerLeg),
    setBy: carriedName(),
  };
}

/** What is written, ready to be set; a sentence where it cannot be meant. All of it is kept, changed or confirmed. */
export function limitsFrom(written: WrittenLimits): { readonly limits: SetLimits } | { readonly problem: string } {
  const setBy = written.setBy.trim();
  if (setBy === "") return { problem: prose.sayWhoSets };
  const value = {
    painTwoLeg: numberIn(written.painTwoLeg),
    painSingleLegAndDrop: numberIn(written.painSingleLegAndDrop),
    effusion: written.effusion,
    earliestWeeks: weeksOf((load) => ({
      plain: numberIn(written.earliestWeeks[load].plain),
      repaired: numberIn(written.earliestWeeks[load].repaired),
    })),
    landingsTwoLeg: numberIn(written.landingsTwoLeg),
    landingsPerLeg: numberIn(written.landingsPerLeg),
  };
  const read = clinicLimitsSchema.safeParse(value);
  if (!read.success) return { problem: problems[String(read.error.issues[0]?.path[0])] ?? prose.cannotBeMeant };
  if (value.painSingleLegAndDrop > value.painTwoLeg) {
    return { problem: prose.singleLegStricter };
  }
  const lax = testLoads.find((load) => value.earliestWeeks[load].repaired < value.earliestWeeks[load].plain);
  if (lax !== undefined) return { problem: prose.repairNotEarlier };
  return { limits: { ...read.data, setBy } };
}

const problems: Readonly<Record<string, string>> = {
  painTwoLeg: prose.painIsANumber,
  painSingleLegAndDrop: prose.painIsANumber,
  earliestWeeks: prose.weekIsANumber,
  landingsTwoLeg: prose.landingsAreANumber,
  landingsPerLeg: prose.landingsAreANumber,
};

/** Nothing written is no number. */
function numberIn(text: string): number {
  return text.trim() === "" ? Number.NaN : Number(text.trim().replace(",", "."));
}

function weeksOf<Each>(of: (load: TestLoad) => Each): Readonly<Record<TestLoad, Each>> {
  return {
    twoLegJump: of("twoLegJump"),
    twoLegDropOrHops: of("twoLegDropOrHops"),
    singleLegJump: of("singleLegJump"),
    singleLegDrop: of("singleLegDrop"),
  };
}

/** A grade as it is chosen. */
export function gradeIn(text: string): EffusionGrade {
  return effusionGrades.find((grade) => grade === text) ?? "none";
}
