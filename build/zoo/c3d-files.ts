import {
  levelCorners,
  type StandingFile,
  standingFile,
  type WrittenPlatform,
} from "../../tests/core/bytes/c3d/standing-file.ts";
import { integer, texts, writeC3d } from "../../tests/core/bytes/c3d/write-c3d.ts";
import { newtonsAt } from "./small-jump.ts";
import type { ExpectedReading, ZooFile } from "./zoo-file.ts";

/** Halves of newtons are kept exactly by the writer. */
const halves = (limb: "left" | "right") => (sample: number) => Math.round(2 * newtonsAt(limb, sample)) / 2;

const left: WrittenPlatform = { type: 2, upward: halves("left") };
const right: WrittenPlatform = { type: 2, upward: halves("right"), corners: levelCorners(500) };
const limbs = ["left", "right"] as const;

const sideLabels = (side: string) => "Fx Fy Fz Mx My Mz".split(" ").map((name) => `${side} ${name}`);
const frames = 16;

interface Expecting {
  readonly outcome?: ExpectedReading["outcome"];
  readonly findings?: readonly string[];
  readonly answers?: ExpectedReading["answers"];
  readonly answeredFindings?: readonly string[];
  /** Which foot each platform carried; "none" where a platform is not used. */
  readonly feet?: readonly ("left" | "right" | "both" | "none")[];
  /** False: no recording is expected, whatever is stated. */
  readonly isReading?: boolean;
}

const unproved = { findings: ["plates-unproved:note"] };

/** Writes a C3D file of somebody standing and dipping and says how it is expected to be read. */
function c3dFile(name: string, options: StandingFile, expecting: Expecting = {}): ZooFile {
  const { outcome = "understood", findings = [], answers, answeredFindings = [] } = expecting;
  const platforms = options.platforms ?? [left, right];
  const written = standingFile({ frames, ...options, platforms });
  const feet = expecting.feet ?? (platforms.length === 1 ? (["both"] as const) : limbs);
  const labels = platforms.flatMap(
    ({ type, labels }) =>
      labels ?? (type === 3 ? "Fx12 Fx34 Fy14 Fy23 Fz1 Fz2 Fz3 Fz4" : "Fx Fy Fz Mx My Mz").split(" "),
  );
  const sampleCount = written.frames * written.samplesPerFrame;
  const sampleRows = [0, 3, sampleCount >> 1, sampleCount - 1];
  const isRead = outcome === "understood" || answers !== undefined;
  return {
    name,
    bytes: writeC3d(written),
    expected: {
      outcome,
      findings,
      ...(answers === undefined ? {} : { answers, answeredFindings }),
      statesCount: true,
      ...(isRead ? { rateHz: 1000, rateFrom: "frame rate" } : {}),
      c3d: {
        byteOrder: written.byteOrder,
        dataType: written.dataType,
        platformTypes: platforms.map(({ type }) => type),
        channelLabels: labels,
        sampleCount,
      },
      sampleRows,
      plates: isRead
        ? platforms.flatMap(({ upward }, index) => {
            const limb = feet[index]!;
            return limb === "none" ? [] : [{ limb, newtons: sampleRows.map(upward) }];
          })
        : [],
    },
  };
}

/** C3D files of every byte order, data type and type of platform, and some that cannot be read. */
export function c3dFiles(): readonly ZooFile[] {
  const empty: WrittenPlatform = { type: 2, upward: () => 0, corners: levelCorners(1000) };
  const third: WrittenPlatform = { ...left, corners: levelCorners(1000) };
  return [
    c3dFile("intel-integer.c3d", {}, unproved),
    c3dFile("intel-float.c3d", { dataType: "float" }, unproved),
    c3dFile("dec-integer.c3d", { byteOrder: "DEC" }, unproved),
    c3dFile("dec-float.c3d", { byteOrder: "DEC", dataType: "float" }, unproved),
    c3dFile("sgi-integer.c3d", { byteOrder: "SGI" }, unproved),
    c3dFile("sgi-float.c3d", { byteOrder: "SGI", dataType: "float" }, unproved),
    c3dFile("sides-in-labels.c3d", {
      platforms: [
        { ...left, labels: sideLabels("Left") },
        { ...right, labels: sideLabels("Right") },
      ],
    }),
    c3dFile("type-1.c3d", { platforms: [{ ...left, type: 1 }] }),
    c3dFile("type-3.c3d", { platforms: [{ ...left, type: 3 }], byteOrder: "SGI" }),
    c3dFile("type-4.c3d", { platforms: [{ ...left, type: 4 }], dataType: "float" }),
    c3dFile("action-stored.c3d", { platforms: [left], holdsAction: true }, { findings: ["sign-turned:note"] }),
    c3dFile("unsigned.c3d", {
      platforms: [left],
      offset: 40000,
      changes: { "ANALOG:FORMAT": texts(["UNSIGNED"]) },
    }),
    c3dFile(
      "third-platform-empty.c3d",
      { platforms: [left, right, empty] },
      {
        findings: ["platforms-left-out:note", "plates-unproved:note"],
        feet: ["left", "right", "none"],
      },
    ),
    c3dFile(
      "three-platforms.c3d",
      { platforms: [left, right, third] },
      {
        outcome: "asks",
        findings: ["columns-unclear:refusal"],
        answers: { left: 1, right: 2 },
        feet: ["left", "right", "none"],
      },
    ),
    c3dFile("events-and-subject.c3d", {
      platforms: [left],
      changes: { "EVENT:USED": integer(1), "EVENT:LABELS": texts(["Foot Off"]), "SUBJECTS:NAMES": texts(["KP-17"]) },
    }),
    c3dFile("points-only.c3d", { platforms: [] }, { outcome: "refused", findings: ["no-force-platform:refusal"] }),
  ];
}
