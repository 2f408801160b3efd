import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { analyzeSession } from "../../core/analyze.ts";
import { defaultSettings, settingsWith } from "../../core/settings/settings.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import { projectRoot } from "../architecture/imports.ts";
import { told } from "../told.ts";

const jump = "countermovement-both-1.csv";
const sample = readFileSync(join(projectRoot, "sample-traces/maren-tveitlund/4-month-7", jump));

/** A made-up recording of two plates at 1000 Hz: stretches of [seconds, left newtons, right newtons]. */
function plates(parts: readonly (readonly [seconds: number, left: number, right: number])[]): Uint8Array {
  const rows = parts.flatMap(([seconds, left, right]) =>
    Array.from({ length: Math.round(seconds * 1000) }, (_, at) => {
      // A ripple of 2 N, so that nobody stands stiller than people do.
      const ripple = 2 * Math.sin(at / 50);
      return `${(left + (left > 0 ? ripple : 0)).toFixed(2)},${(right + (right > 0 ? ripple : 0)).toFixed(2)}`;
    }),
  );
  const text = rows.map((row, at) => `${(at / 1000).toFixed(3)},${row}`).join("\n");
  return new TextEncoder().encode(`time (s),left (N),right (N)\n${text}\n`);
}

function session(
  standing: Uint8Array,
  name: string,
  changes: Partial<SessionDescription> = {},
  settings = defaultSettings,
) {
  const files = [
    [jump, sample],
    [name, standing],
  ] as const;
  const { result } = analyzeSession(
    {
      folder: "",
      files: files.map(([path, bytes]) => ({ path, bytes, sha256: createHash("sha256").update(bytes).digest("hex") })),
      unreadable: [],
      description: { involved: "right", ...changes },
      descriptionFindings: [],
      stated: {},
    },
    settings,
  );
  const find = (file: string) => result.trials.find((each) => each.file === file);
  return { result, jump: find(jump), standing: find(name) };
}

const onRight = plates([
  [1, 0, 0],
  [1.5, 340, 340],
  [2.5, 0, 680],
  [1, 340, 340],
]);

describe("standing on one leg", () => {
  test("proves which foot was on which plate", () => {
    const made = session(onRight, "standing-right.csv");
    expect(made.jump?.plates.map((plate) => plate.proof)).toEqual(["one-leg-standing", "one-leg-standing"]);
    expect(made.jump?.findings.map((each) => each.code)).not.toContain("plates-unproved");
    expect(made.result.comparisons.find((each) => each.measure === "brakingImpulse")?.plates).toBe("proved");
  });

  test("is no jump: its recording has no measure, and says what it showed and when", () => {
    const { standing } = session(onRight, "standing-right.csv");
    expect(standing).toMatchObject({ status: "refused", measures: [] });
    const note = standing?.findings.find((each) => each.code === "one-leg-standing");
    expect(note?.severity).toBe("note");
    // Made up to stand alone from 2.5 s to 5.0 s; the running mean of 50 ms shortens it by its half at either end.
    expect(told(note)?.message).toMatch(
      /^Standing on the right leg from 2\.5[0-4] s to (4\.9[5-9]|5\.00) s shows which foot stood on plate right\.$/,
    );
  });

  test("on the other plate than the layout says contradicts it", () => {
    const made = session(onRight, "standing-left.csv");
    expect(made.jump?.plates.map((plate) => plate.proof)).toEqual(["unproved", "unproved"]);
    expect(made.result.findings.map((each) => each.code)).toContain("plates-contradict");
  });

  test("proves nothing while nobody says which leg it was", () => {
    expect(session(onRight, "standing.csv").jump?.plates[0]?.proof).toBe("unproved");
  });

  test("proves nothing when it is short, or when the other foot carries load", () => {
    const short = plates([
      [1.5, 340, 340],
      [1.8, 0, 680],
      [1, 340, 340],
    ]);
    expect(session(short, "standing-right.csv").jump?.plates[0]?.proof).toBe("unproved");
    const lenient = settingsWith({ oneLegStandingSeconds: 1.5 });
    expect(session(short, "standing-right.csv", {}, lenient).jump?.plates[0]?.proof).toBe("one-leg-standing");
    const touching = plates([
      [1.5, 340, 340],
      [2.5, 60, 620],
    ]);
    expect(session(touching, "standing-right.csv").jump?.plates[0]?.proof).toBe("unproved");
  });

  test("on both plates in turn leaves open which leg was meant", () => {
    const turns = plates([
      [2.5, 680, 0],
      [1, 340, 340],
      [2.5, 0, 680],
    ]);
    expect(session(turns, "standing-right.csv").jump?.plates[0]?.proof).toBe("unproved");
  });
});
