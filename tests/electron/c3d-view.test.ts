import { expect, test } from "vitest";
import { analyzeSession } from "../../core/analyze.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import { isRecordingName } from "../../electron/files/recording-names.ts";
import { FileTexts } from "../../electron/workspace/file-lines.ts";
import { viewRecording } from "../../electron/workspace/recording-view.ts";
import { standingFile } from "../core/bytes/c3d/standing-file.ts";
import { integer, writeC3d } from "../core/bytes/c3d/write-c3d.ts";

function view(bytes: Uint8Array) {
  const file = { path: "standing.c3d", bytes, sha256: "" };
  const nothing = { folder: "", unreadable: [], description: {}, descriptionFindings: [], stated: {} };
  return viewRecording(file, analyzeSession({ ...nothing, files: [file] }, defaultSettings), []);
}

test("a C3D file is a recording by its name, in either case", () => {
  expect(["trial.c3d", "TRIAL.C3D"].map(isRecordingName)).toEqual([true, true]);
});

test("a C3D file shows what it holds in place of lines, its platforms first", () => {
  const bytes = writeC3d(standingFile());
  const { reading } = view(bytes);
  const { lines } = new FileTexts().linesOf({ path: "standing.c3d", bytes, sha256: "" }, reading, 1, 100);
  expect(reading?.kind).toBe("c3d");
  expect(lines.slice(0, 6)).toEqual([
    "C3D, Intel byte order, integers",
    "20 frames at 100 Hz with 2 points",
    "12 analog channels at 1000 Hz",
    "force platform 1, type 2, channels 1 2 3 4 5 6, tilted by 0.0 degrees",
    "force platform 2, type 2, channels 7 8 9 10 11 12, tilted by 0.0 degrees",
    "upwards is +Z of the laboratory",
  ]);
  expect(lines).toContain("channel 3: Fz, N, scale -0.5, offset 0");
});

test("a C3D file without a force platform is refused; one without a rate asks", () => {
  expect(view(writeC3d(standingFile({ changes: { "FORCE_PLATFORM:USED": integer(0) } }))).outcome).toBe("refused");
  const silent = { ...standingFile({ changes: { "POINT:RATE": undefined } }), frameRateHz: 0 };
  expect(view(writeC3d(silent)).outcome).toBe("asks");
});
