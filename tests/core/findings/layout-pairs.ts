import { readRecording } from "../../../core/recording/read-recording.ts";
import type { RememberedAnswers } from "../../../core/recording/reading-statements.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { Layout } from "../../../core/stated/layout.ts";
import { parseLayout, writeLayout } from "../../../core/stated/layout-file.ts";
import { jumpText } from "../recording/jump-text.ts";
import { goodText } from "../recording/recording-text.ts";
import { codesOfText, type FindingPairs } from "./pair.ts";

const fourPlates = "time (s),Left heel (N),Left forefoot (N),Right heel (N),Right forefoot (N)";
const twoPlates = "time (s),left (N),right (N)";
const inBodyWeights = jumpText("time (s),force (BW)", [1], { decimals: 6 });

/** What a person decides about columns, units, time and saved layouts. */
export const layoutPairs: FindingPairs = {
  "plates-summed": {
    has: () => codesOfText(jumpText(fourPlates, [150, 200, 145, 199])),
    near: () => codesOfText(jumpText(twoPlates, [350, 344])),
  },
  "plates-swapped": {
    has: () => codesOfText(jumpText(twoPlates, [350, 340]), { swapPlates: true }),
    near: () => codesOfText(jumpText(twoPlates, [350, 340]), { swapPlates: false }),
  },
  "mass-missing": {
    has: () => codesOfText(inBodyWeights),
    near: () => codesOfText(inBodyWeights, { massKg: 70 }),
  },
  "unit-from-mass": {
    has: () => codesOfText(inBodyWeights, { massKg: 70 }),
    near: () => codesOfText(jumpText("time (s),force (N)", [686]), { massKg: 70 }),
  },
  "time-left-out": {
    has: () => codesOfText(jumpText(twoPlates, [350, 340]), { time: "none", rateHz: 1000 }),
    near: () => codesOfText(jumpText(twoPlates, [350, 340]), { rateHz: 1000 }),
  },
  resampled: {
    has: () => codesOfText(goodText(), { resampleHz: 500 }),
    near: () => codesOfText(goodText(), { resampleHz: 1000 }),
  },
  "layout-unclear": {
    has: () => codesOfLayouts([layout("Hall", { rateHz: 1200 }), layout("Field", { rateHz: 1000 })]),
    near: () => codesOfLayouts([layout("Hall", { rateHz: 1200 }), layout("Copy", { rateHz: 1200 })]),
  },
  "layout-unreadable": {
    has: () => parseLayout(new TextEncoder().encode('{"schemaVersion": 1')).findings.map(({ code }) => code),
    near: () =>
      parseLayout(new TextEncoder().encode(writeLayout(layout("Hall", { rateHz: 1200 })))).findings.map(
        ({ code }) => code,
      ),
  },
};

function layout(name: string, answers: RememberedAnswers): Layout {
  const columns = [
    { name: "plate A", unit: "" },
    { name: "plate B", unit: "" },
  ];
  const shape = { delimiter: "comma", decimalMark: "point", columns, headerKeys: [] } as const;
  return { schemaVersion: 1, name, shape, answers: { unit: "N", left: 1, right: 2, ...answers } };
}

function codesOfLayouts(layouts: readonly Layout[]): readonly string[] {
  const bytes = new TextEncoder().encode(jumpText("plate A,plate B", [350, 340], { time: () => "" }));
  return readRecording({ path: "a.csv", bytes, sha256: "" }, {}, defaultSettings, layouts).findings.map(
    ({ code }) => code,
  );
}
