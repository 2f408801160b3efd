import { type Finding, finding } from "../../ground/finding.ts";
import type { Limb } from "../../ground/limb.ts";
import type { Settings } from "../../settings/settings.ts";
import type { C3dAnswers } from "./c3d-answers.ts";
import type { PlatformLoad } from "./platform-load.ts";

/** What one platform is used for. */
export interface PlatformRole {
  /** Absent: not used. */
  readonly limb?: Limb;
  /** Why, in words. */
  readonly reason: string;
}

export interface PlatformRoles {
  /** By number of the platform. */
  readonly roles: ReadonlyMap<number, PlatformRole>;
  readonly findings: readonly Finding[];
}

/**
 * Which platform carries which foot: as a person states it, else in the order of the file, which proves nothing. Of more
 * than two platforms those count that are loaded at all.
 * @param labels the labels of a platform's channels, by its number
 */
export function assignPlatforms(
  loads: readonly PlatformLoad[],
  labels: (load: PlatformLoad) => readonly string[],
  answers: C3dAnswers,
  settings: Settings,
): PlatformRoles {
  if (answers.left !== undefined || answers.right !== undefined || answers.total !== undefined) {
    return statedRoles(loads, answers);
  }
  const carrying = loads.length > 2 ? loads.filter((load) => isLoaded(load.upward, settings)) : loads;
  const roles = new Map<number, PlatformRole>(
    loads.map(({ platform }) => [platform.number, { reason: "carries no load in this recording" }]),
  );
  const left = carrying.length < loads.length ? [leftOut(loads.filter((load) => !carrying.includes(load)))] : [];
  const [first, second] = carrying;
  if (first === undefined || carrying.length > 2) {
    const unclear =
      first === undefined
        ? finding(
            "columns-unclear/no-platform-loaded",
            "refusal",
            { names: names(loads), newtons: settings.platformSignNewtons },
            { answers: [{ asks: "columns" }] },
          )
        : finding(
            "columns-unclear/platforms-loaded",
            "refusal",
            { readable: loads.length, names: names(carrying) },
            { answers: [{ asks: "columns" }] },
          );
    return {
      roles: new Map(loads.map(({ platform }) => [platform.number, { reason: "not clear which foot it carried" }])),
      findings: [unclear],
    };
  }
  if (second === undefined) {
    roles.set(first.platform.number, { limb: "both", reason: "the only platform that is used" });
    return { roles, findings: left };
  }
  const sides = [sideIn(labels(first)), sideIn(labels(second))];
  const isNamed = sides[0] !== undefined && sides[1] !== undefined && sides[0] !== sides[1];
  const isTurned = isNamed && sides[0] === "right";
  const reason = isNamed ? "its channels' labels say so" : "the order of the platforms in the file; proves nothing";
  roles.set(first.platform.number, { limb: isTurned ? "right" : "left", reason });
  roles.set(second.platform.number, { limb: isTurned ? "left" : "right", reason });
  return { roles, findings: isNamed ? left : [...left, footUnknown(first, second)] };
}

function statedRoles(loads: readonly PlatformLoad[], answers: C3dAnswers): PlatformRoles {
  const roles = new Map<number, PlatformRole>(
    loads.map(({ platform }) => [platform.number, { reason: "not needed beside what was stated" }]),
  );
  const taken = new Set<number>();
  const answer = { answers: [{ asks: "columns" }] } as const;
  const findings: Finding[] = [];
  for (const [key, limb] of [
    [answers.left, "left"],
    [answers.right, "right"],
    [answers.total, "both"],
  ] as const) {
    if (key === undefined) continue;
    for (const part of String(key).split("+")) {
      const found = findPlatform(part, loads);
      if (found === undefined) {
        const figures = { key: part.trim(), names: names(loads) };
        findings.push(finding("columns-unclear/no-such-platform", "refusal", figures, answer));
      } else if (taken.has(found)) {
        findings.push(finding("columns-unclear/platform-twice", "refusal", { platform: found }, answer));
      } else {
        taken.add(found);
        roles.set(found, { limb, reason: `stated as ${limb === "both" ? "total force" : limb}` });
      }
    }
  }
  if (answers.total !== undefined && (answers.left !== undefined || answers.right !== undefined)) {
    findings.push(finding("columns-unclear/total-beside-foot", "refusal", {}, answer));
  }
  return { roles, findings };
}

/** The number of the platform that a person means by its number or name. */
function findPlatform(key: string, loads: readonly PlatformLoad[]): number | undefined {
  const wanted = key.trim().toLowerCase();
  return loads.find(({ platform }) => platform.name === wanted || String(platform.number) === wanted)?.platform.number;
}

function sideIn(labels: readonly string[]): "left" | "right" | undefined {
  const isLeft = labels.some((label) => /left/i.test(label));
  const isRight = labels.some((label) => /right/i.test(label));
  return isLeft === isRight ? undefined : isLeft ? "left" : "right";
}

/** True when the force moves by what shows a load, or somebody stands there all the while; an offset alone is none. */
function isLoaded(force: Float64Array, settings: Settings): boolean {
  let least = Number.POSITIVE_INFINITY;
  let largest = Number.NEGATIVE_INFINITY;
  for (const value of force) {
    if (value < least) least = value;
    if (value > largest) largest = value;
  }
  const athlete = settings.bodyMassMinimumKg * settings.gravity;
  return largest - least >= settings.platformSignNewtons || least >= athlete;
}

function names(loads: readonly PlatformLoad[]): readonly string[] {
  return loads.map(({ platform }) => platform.name);
}

function leftOut(loads: readonly PlatformLoad[]): Finding {
  return finding("platforms-left-out", "note", { names: names(loads) }, { answers: [{ asks: "columns" }] });
}

/** Either foot may have stood on either platform. */
function footUnknown({ platform: first }: PlatformLoad, { platform: second }: PlatformLoad): Finding {
  return finding(
    "plates-unproved/platform-order",
    "note",
    { left: first.name, right: second.name },
    {
      answers: [
        { columns: { left: first.number, right: second.number } },
        { columns: { left: second.number, right: first.number } },
      ],
    },
  );
}
