import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { projectRoot, sourceFiles } from "./imports.ts";
import { guardedStages, stagesTakenIn } from "./stages.ts";

describe("the recipe of an analysis", () => {
  test("is the only one that joins stages: window, command line and threads hand it a mapper", () => {
    const files = [...sourceFiles("core"), ...sourceFiles("electron"), ...sourceFiles("renderer")];
    expect(files.length).toBeGreaterThan(400);
    const others = files.flatMap((file) => stagesTakenIn(file));
    expect(others.map(({ file, line, stage }) => `${file}:${line} takes ${stage}`)).toEqual([]);
  });

  test("would be noticed standing a second time, with the line of each stage, under another name and as a whole module", () => {
    const planted = [
      'import type { SessionResult } from "../../core/result/session-result.ts";',
      'import { concludeSession as end } from "../../core/session/conclude-session.ts";',
      "import {",
      "  type TrialWeightContext,",
      "  weighSession,",
      '} from "../../core/weight/session-weighing.ts";',
      'import * as steps from "../../core/session/draft-trials.ts";',
      'import { draftFile } from "../../core/session/file-trials.ts";',
      "",
    ].join("\n");
    expect(
      stagesTakenIn("electron/jobs/second-recipe.ts", planted).map(({ line, stage }) => `${line} ${stage}`),
    ).toEqual(["2 concludeSession", "3 weighSession", "7 draftTrials", "8 draftFile"]);
  });

  test("names stages that are there", () => {
    for (const [file, names] of guardedStages) {
      expect(existsSync(join(projectRoot, file)), file).toBe(true);
      const text = readFileSync(join(projectRoot, file), "utf8");
      for (const name of names) expect(text, file).toContain(`export function ${name}`);
    }
  });
});
