import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { describeImport, type ImportLine, importsOf, projectRoot, sourceFiles } from "./imports.ts";

/** The walk: a stage imports only itself and earlier stages. */
const stages = [
  "bytes",
  "recording",
  "trial",
  "events",
  "weight",
  "measures",
  "sides",
  "trend",
  "gate",
  "criteria",
  "protocol",
  "sheet",
  "study",
];
/** Imports no stage, and no stage imports it. */
const apart = "simulate";

/**
 * Files at the top of the core that every stage may use: words, units, settings and the types of what is stated and
 * returned. The recipes that join the stages stand there too, and no stage may import those.
 */
const common = [
  "analysis",
  "finding",
  "format-number",
  "gravity",
  "limb",
  "plain-words",
  "result",
  "session",
  "session-expectation",
  "settings",
  "sha256",
  "test-kind",
  "trial-bearer",
  "units",
  "version",
].map((name) => `core/${name}.ts`);

/** Packages the pure core may use; each runs anywhere and touches nothing. */
const corePackages = ["papaparse", "fili", "zod", "@noble/hashes/sha2.js"];

function stageOf(path: string): string | undefined {
  const parts = path.split("/");
  return parts[0] === "core" && parts.length > 2 ? parts[1] : undefined;
}

const coreImports = sourceFiles("core").flatMap(importsOf);

function breaksOrder(each: ImportLine): boolean {
  const from = stageOf(each.file);
  if (from === undefined || each.isPackage) return false;
  const to = stageOf(each.target);
  if (to === undefined) return !common.includes(each.target);
  if (from === apart || to === apart) return from !== to;
  return stages.indexOf(to) > stages.indexOf(from);
}

describe("the walk of the core", () => {
  test("has every folder of the core in its order", () => {
    const folders = readdirSync(join(projectRoot, "core"), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map((entry) => entry.name);
    expect(folders.filter((name) => !stages.includes(name) && name !== apart)).toEqual([]);
    expect(coreImports.length).toBeGreaterThan(100);
  });

  test("goes forwards only: no stage imports a later one, the simulator, or a recipe", () => {
    expect(coreImports.filter(breaksOrder).map(describeImport)).toEqual([]);
  });

  test("would be caught going backwards", () => {
    const backwards: ImportLine = {
      file: "core/trial/made-up.ts",
      line: 1,
      target: "core/sides/symmetry.ts",
      isPackage: false,
      typeOnly: true,
    };
    expect(breaksOrder(backwards)).toBe(true);
  });

  test("stays inside the core and its few packages", () => {
    const outside = coreImports.filter((each) =>
      each.isPackage ? !corePackages.includes(each.target) : !each.target.startsWith("core/"),
    );
    expect(outside.map(describeImport)).toEqual([]);
  });
});

describe("the host and the screen", () => {
  test("meet at the typed boundary: the screen takes only types, the message codec, the form of a passphrase and words from the host", () => {
    const shared = [
      "electron/boundary/masked-passphrases.ts",
      "electron/boundary/host-codec.ts",
      "electron/register/copies/copy-words.ts",
      "electron/register/passphrase-bytes.ts",
    ];
    const behind = sourceFiles("electron")
      .filter((file) => shared.includes(file))
      .flatMap(importsOf)
      .filter((each) => !each.typeOnly);
    expect(behind.map(describeImport), "nothing of the host comes along with what is shared").toEqual([]);
    const crossing = sourceFiles("renderer")
      .flatMap(importsOf)
      .filter((each) => each.target.startsWith("electron/"))
      .filter((each) => !each.typeOnly && !shared.includes(each.target));
    expect(crossing.map(describeImport)).toEqual([]);
  });

  test("keep apart: the host imports nothing from the screen, and only the window imports electron", () => {
    const host = sourceFiles("electron").flatMap(importsOf);
    const wrong = host.filter(
      (each) =>
        each.target.startsWith("renderer/") ||
        (each.target === "electron" && !each.file.startsWith("electron/window/")),
    );
    expect(wrong.map(describeImport)).toEqual([]);
  });

  test("leave the simulator alone: the program that measures never simulates", () => {
    const users = [...sourceFiles("electron"), ...sourceFiles("renderer")]
      .flatMap(importsOf)
      .filter((each) => each.target.startsWith("core/simulate/"));
    expect(users.map(describeImport)).toEqual([]);
  });
});
