import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { circlesAmong } from "./circles.ts";
import { apart, floors, ground, loose } from "./floors.ts";
import { describeImport, type ImportLine, importsOf, projectRoot, sourceFiles } from "./imports.ts";

/** Packages the pure core may use; each runs anywhere and touches nothing. */
const corePackages = ["papaparse", "fili", "zod", "@noble/hashes/sha2.js"];

const houses = ["core", "electron", "renderer"] as const;
type House = (typeof houses)[number];

const importsWithin: Readonly<Record<House, readonly ImportLine[]>> = {
  core: sourceFiles("core").flatMap(importsOf),
  electron: sourceFiles("electron").flatMap(importsOf),
  renderer: sourceFiles("renderer").flatMap(importsOf),
};
const coreImports = importsWithin.core;

/** Undefined for what stands at the top of a house, and outside it. */
function roomOf(house: House, path: string): string | undefined {
  const parts = path.split("/");
  return parts[0] === house && parts.length > 2 ? parts[1] : undefined;
}

/** True where an import leads to a room above its own, into or out of what stands apart, or to a recipe. */
function runsUpwards(house: House, { file, target, isPackage }: ImportLine): boolean {
  const from = roomOf(house, file);
  if (from === undefined || isPackage || !target.startsWith(`${house}/`)) return false;
  const to = roomOf(house, target);
  if (to === undefined) return true;
  if (house === "core" && from === apart) return to !== apart && to !== ground;
  if (house === "core" && to === apart) return true;
  return floors[house].indexOf(to) > floors[house].indexOf(from);
}

describe.each(houses)("the house %s", (house) => {
  test("has every folder on one of its floors, and nothing loose but what is listed", () => {
    const entries = readdirSync(join(projectRoot, house), { withFileTypes: true });
    const rooms = entries.filter((entry) => entry.isDirectory()).map(({ name }) => name);
    expect(rooms.filter((name) => !floors[house].includes(name) && !(house === "core" && name === apart))).toEqual([]);
    expect(
      floors[house].filter((name) => !rooms.includes(name)),
      "floors without a room",
    ).toEqual([]);
    expect(
      entries
        .filter((entry) => entry.isFile())
        .map(({ name }) => name)
        .sort(),
    ).toEqual(loose[house]);
  });

  test("has no arrow upwards: no room imports one above it, the simulator, or a recipe", () => {
    expect(importsWithin[house].length).toBeGreaterThan(100);
    expect(importsWithin[house].filter((each) => runsUpwards(house, each)).map(describeImport)).toEqual([]);
  });

  test("has no circle of files", () => {
    expect(circlesAmong(importsWithin[house])).toEqual([]);
  });
});

describe("the walk of the core", () => {
  test("would be caught going backwards, into a recipe, and in a circle", () => {
    const made = (file: string, target: string): ImportLine => ({
      file,
      line: 1,
      target,
      isPackage: false,
      typeOnly: true,
    });
    expect(runsUpwards("core", made("core/trial/made-up.ts", "core/sides/symmetry.ts"))).toBe(true);
    expect(runsUpwards("core", made("core/trial/made-up.ts", "core/analyze.ts"))).toBe(true);
    expect(runsUpwards("core", made("core/simulate/made-up.ts", "core/trial/cut-trials.ts"))).toBe(true);
    const circle = [made("core/trial/a.ts", "core/trial/b.ts"), made("core/trial/b.ts", "core/trial/a.ts")];
    expect(circlesAmong(circle)).toEqual([["core/trial/a.ts", "core/trial/b.ts"]]);
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
