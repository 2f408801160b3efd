import { proseFinding } from "../../../core/ground/finding.ts";
import { unnamedAbsences } from "../../../core/measures/absent-measures.ts";
import { unreadableTrial } from "../../../core/session/unreadable-trial.ts";
import type { FileEntry } from "../../../core/stated/file-entry.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";
import { parseSessionFile } from "../../../core/stated/session-file.ts";
import { dropOf, jumpOf, saidJump, saidSingle, written } from "../simulate/faulty/faulty-trial.ts";
import { codesOfFiles, type FindingPairs, kindPair, seed } from "./pair.ts";

const jump = (): string => written(jumpOf(seed), saidJump).text;
const onOnePlate = (): string => written(jumpOf(seed, { plates: "one" }), saidJump).text;
const labelled = (description: SessionDescription): SessionDescription => ({
  ...description,
  files: [{ file: "jump.csv", test: "countermovementJump", limb: "both", ...description.files?.[0] }],
});

/** What was said about recordings, and what a session knows of its plates. */
export const statementPairs: FindingPairs = {
  "limb-not-stated": {
    has: () => codesOfFiles({ "jump.csv": onOnePlate() }, {}, { test: "countermovementJump" }),
    near: () => codesOfFiles({ "jump.csv": jump() }, {}, { test: "countermovementJump" }),
  },
  "test-not-stated": {
    has: () => codesOfFiles({ "jump.csv": jump() }, {}, { limb: "both" }),
    near: () => codesOfFiles({ "countermovement.csv": jump() }, {}, { limb: "both" }),
  },
  "test-from-name": {
    has: () => codesOfFiles({ "countermovement-both.csv": jump() }),
    near: () => codesOfFiles({ "countermovement-both.csv": jump() }, {}, { test: "countermovementJump", limb: "both" }),
  },
  "plates-contradict": kindPair("wrong-limb"),
  "one-leg-standing": {
    has: () => oneLeg(2.6),
    near: () => oneLeg(1.4),
  },
  "event-moved": {
    has: () => codesOfFiles({ "jump.csv": jump() }, labelled({ files: [moved()] })),
    near: () => codesOfFiles({ "jump.csv": jump() }, labelled({})),
  },
  // A two-leg jump has a take-off and no contact before it.
  "session-entry-unused": {
    has: () => codesOfFiles({ "jump.csv": jump() }, labelled({ files: [moved(3)] })),
    near: () => codesOfFiles({ "jump.csv": jump() }, labelled({ files: [moved()] })),
  },
  "recording-repeated": {
    has: () => codesOfFiles({ "a.csv": jump(), "b.csv": jump() }, {}, { test: "countermovementJump", limb: "both" }),
    near: () =>
      codesOfFiles(
        { "a.csv": jump(), "b.csv": written(jumpOf(seed + 2), saidJump).text },
        {},
        { test: "countermovementJump", limb: "both" },
      ),
  },
  // The effective drop heights of two legs, of which the larger is 0.175 m, may differ by 10 %.
  "drop-height-legs-differ": {
    has: () => twoDrops(0.154),
    near: () => twoDrops(0.161),
  },
  "measure-not-made": {
    has: () => unnamedAbsences(["flightTime"], [], []).map(({ code }) => code),
    near: () =>
      unnamedAbsences(
        ["flightTime"],
        [],
        [proseFinding("landing-off-plate", "warning", "", "", { removes: ["flightTime"] })],
      ).map(({ code }) => code),
  },
  unreadable: {
    has: () => unreadableTrial({ path: "jump.csv", reason: "is not there" }).findings.map(({ code }) => code),
    near: () => codesOfFiles({ "jump.csv": jump() }, labelled({})),
  },
  "session-unreadable": {
    has: () => parseSessionFile(new TextEncoder().encode('{"massKg": 70')).findings.map(({ code }) => code),
    near: () => parseSessionFile(new TextEncoder().encode('{"massKg": 70}')).findings.map(({ code }) => code),
  },
};

function moved(contactIndex?: number): FileEntry {
  const time = jumpOf(seed).truth.events.takeoff + 0.002;
  const edit = { name: "takeoff", time, ...(contactIndex === undefined ? {} : { contactIndex }) } as const;
  return { file: "jump.csv", events: [edit] };
}

/** Standing on both legs, then on the right one for some seconds; two seconds prove which foot was on which plate. */
function oneLeg(seconds: number): readonly string[] {
  const parts = [
    [1, 0, 0],
    [1.5, 340, 340],
    [seconds, 0, 680],
    [1, 340, 340],
  ] as const;
  const rows = parts.flatMap(([length, left, right]) =>
    Array.from({ length: Math.round(length * 1000) }, (_, at) => {
      const ripple = 2 * Math.sin(at / 50);
      return [left, right].map((newtons) => (newtons === 0 ? 0 : newtons + ripple).toFixed(2)).join(",");
    }),
  );
  const text = rows.map((row, at) => `${(at / 1000).toFixed(3)},${row}\n`).join("");
  return codesOfFiles({ "standing-right.csv": `time (s),left (N),right (N)\n${text}` });
}

/** A drop of 0.175 m with the left leg, and one of another height with the right. */
function twoDrops(rightMetres: number): readonly string[] {
  const drop = (limb: "left" | "right", dropHeightEffectiveMetres: number): string => {
    const options = { limb, boxHeightMetres: 0.2, jumpHeightMetres: 0.13, contactSeconds: 0.31 } as const;
    return written(dropOf(seed, { ...options, dropHeightEffectiveMetres }), saidSingle).text;
  };
  const files = { "drop-jump-left.csv": drop("left", 0.175), "drop-jump-right.csv": drop("right", rightMetres) };
  return codesOfFiles(files, { involved: "right", dropHeightMetres: 0.2 });
}
