import type { Settings } from "../settings/settings.ts";
import { type EffusionGrade, effusionGrades } from "../stated/gate-words.ts";
import type { SessionDescription } from "../stated/session.ts";
import { dayOf } from "./days.ts";
import type { TestLoad } from "./test-load.ts";

/** The limits in force for a session: the clinic's where it set them, else the program's defaults. */
export interface LimitsInForce {
  readonly painTwoLeg: number;
  readonly painSingleLegAndDrop: number;
  readonly effusion: EffusionGrade;
  /** First week after the operation of each kind of test, and with a repair that happened or is not known of. */
  readonly earliestWeeks: Readonly<Record<TestLoad, { readonly plain: number; readonly repaired: number }>>;
  readonly landingsTwoLeg: number;
  readonly landingsPerLeg: number;
  /** Who confirmed them; absent while they are the program's default. */
  readonly setBy?: string;
  readonly setAt?: string;
}

/** The highest age in whole years of an athlete on a day, from the year of birth; undefined where one is unknown. */
export function oldestAge({ athlete, date }: Pick<SessionDescription, "athlete" | "date">): number | undefined {
  const { birthYear } = athlete ?? {};
  return birthYear === undefined || date === undefined ? undefined : Number(dayOf(date).slice(0, 4)) - birthYear;
}

/** True where the athlete is younger than an age, or may be: of the birthday only the year is known. */
export function mayBeYoungerThan(years: number, described: Pick<SessionDescription, "athlete" | "date">): boolean {
  const oldest = oldestAge(described);
  return oldest !== undefined && oldest <= years;
}

/**
 * The limits of a session. Where the athlete is or may be under 16, landings are halved (common practice).
 */
export function limitsInForce(description: SessionDescription, settings: Settings): LimitsInForce {
  const { limits = {} } = description;
  const halved = mayBeYoungerThan(settings.halvedLandingsBelowYears, description) ? 2 : 1;
  const weeks = limits.earliestWeeks ?? {};
  const of = (load: TestLoad, plain: number, repaired: number) => weeks[load] ?? { plain, repaired };
  const grade = effusionGrades.find((each) => each === settings.gateEffusionGrade);
  if (grade === undefined) throw new RangeError(`There is no effusion grade called "${settings.gateEffusionGrade}".`);
  return {
    painTwoLeg: limits.painTwoLeg ?? settings.gatePain,
    painSingleLegAndDrop: limits.painSingleLegAndDrop ?? settings.gatePainSingleLegAndDrop,
    effusion: limits.effusion ?? grade,
    earliestWeeks: {
      twoLegJump: of("twoLegJump", settings.earliestWeekTwoLegJump, settings.earliestWeekTwoLegJumpRepaired),
      twoLegDropOrHops: of(
        "twoLegDropOrHops",
        settings.earliestWeekTwoLegDropOrHops,
        settings.earliestWeekTwoLegDropOrHopsRepaired,
      ),
      singleLegJump: of(
        "singleLegJump",
        settings.earliestWeekSingleLegJump,
        settings.earliestWeekSingleLegJumpRepaired,
      ),
      singleLegDrop: of(
        "singleLegDrop",
        settings.earliestWeekSingleLegDrop,
        settings.earliestWeekSingleLegDropRepaired,
      ),
    },
    landingsTwoLeg: Math.floor((limits.landingsTwoLeg ?? settings.landingsTwoLegADay) / halved),
    landingsPerLeg: Math.floor((limits.landingsPerLeg ?? settings.landingsPerLegADay) / halved),
    ...(limits.setBy === undefined ? {} : { setBy: limits.setBy }),
    ...(limits.setAt === undefined ? {} : { setAt: limits.setAt }),
  };
}

/** The place of a grade in the rising order of effusion. */
export function effusionRank(grade: EffusionGrade): number {
  return effusionGrades.indexOf(grade);
}
