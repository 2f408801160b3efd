import { type Limb, oppositeSide } from "../../ground/limb.ts";
import type { Plate } from "../recording.ts";
import type { C3dAnswers } from "./c3d-answers.ts";
import type { PlatformLoad } from "./platform-load.ts";
import { newtonsPerForceUnit, type PlatformUnit } from "./platform-unit.ts";

/** A platform that is used, with its limb and unit. */
export interface UsedPlatform {
  readonly load: PlatformLoad;
  readonly limb: Limb;
  readonly unit: PlatformUnit;
}

/** Plates in newtons over the usable samples; platforms under one foot are added. */
export function makePlatformPlates(
  used: readonly UsedPlatform[],
  span: { readonly start: number; readonly end: number },
  answers: C3dAnswers,
): readonly Plate[] {
  const proof = proofOf(answers);
  const limbs = [...new Set(used.map(({ limb }) => limb))];
  return limbs.map((limb): Plate => {
    const own = used.filter((each) => each.limb === limb);
    const force = new Float64Array(span.end - span.start);
    for (const { load, unit } of own) {
      const factor = newtonsPerForceUnit[unit.unit ?? "N"];
      for (let sample = 0; sample < force.length; sample++) {
        force[sample] = force[sample]! + load.upward[span.start + sample]! * factor;
      }
    }
    return {
      name: own.map(({ load }) => load.platform.name).join(" + "),
      limb: limbOn(limb, answers),
      proof,
      force,
    };
  });
}

/** How it is known which foot stood where. */
export function proofOf({ platesStated, layout }: C3dAnswers): Plate["proof"] {
  if (platesStated === true) return "stated";
  return layout?.provesPlates === true ? "layout" : "unproved";
}

/** The limb on a platform, exchanged where a person says that the feet were. */
export function limbOn(limb: Limb, { swapPlates }: C3dAnswers): Limb {
  return swapPlates === true && limb !== "both" ? oppositeSide(limb) : limb;
}
