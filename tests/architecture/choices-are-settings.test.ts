import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";

// A number that is a choice belongs into the settings catalogue, so that the settings' hash covers it. A number that
// nobody could want otherwise says why, in the comment directly above it or above its group, with "No setting:".

/** Rooms that make results of recordings. */
const stages = [
  "bytes",
  "recording",
  "trial",
  "events",
  "weight",
  "measures",
  "sides",
  "gate",
  "criteria",
  "protocol",
  "session",
  "assignment",
];

const core = fileURLToPath(new URL("../../core/", import.meta.url));

/** A number, a formula of numbers or a list of them. */
const numberAtTop = /^(?:export )?const (\w+)(?:: [^=]+)? = (?:[-+]?\d|\(\d|\[[-+]?\d)(?!.*=>)/;
const anyConstant = /^(?:export )?const \w+(?:: [^=]+)? = /;
const comment = /^(?:\/\*\*| \*|\/\/)/;

/** Constants of a file, with their lines, that neither stand in the catalogue nor say why. */
function unexplained(source: string): string[] {
  const lines = source.split("\n");
  return lines.flatMap((line, index) => {
    const name = numberAtTop.exec(line)?.[1];
    if (name === undefined) return [];
    let above = index - 1;
    while (anyConstant.test(lines[above] ?? "")) above -= 1;
    let words = "";
    for (; comment.test(lines[above] ?? ""); above -= 1) words = `${lines[above]!.replace(/^ \*/, "")}${words}`;
    return words.includes("No setting: ") ? [] : [`${index + 1}: ${name}`];
  });
}

test("every number at the top of a stage's file is a setting or says why it is none", () => {
  const found = stages.flatMap((stage) =>
    readdirSync(`${core}${stage}`, { recursive: true, encoding: "utf8" })
      .filter((path) => path.endsWith(".ts"))
      .flatMap((path) =>
        unexplained(readFileSync(`${core}${stage}/${path}`, "utf8")).map((each) => `core/${stage}/${path}:${each}`),
      ),
  );
  expect(found).toEqual([]);
});

test("a number without a reason is found, whatever way it is written", () => {
  const bare = [
    "const a = 3;",
    "export const b = 0.5;",
    "const c = (2 ** 3) / 4;",
    "const d = [1, 0.5];",
    "const e: number = -1;",
  ];
  for (const line of bare) expect(unexplained(line), line).toHaveLength(1);
  expect(unexplained("/** So long. */\nconst a = 3;")).toEqual(["2: a"]);
  expect(unexplained("/** No setting: rounding. */\nconst a = 3;\n\nconst b = 3;")).toEqual(["4: b"]);
});

test("a group of constants shares the comment above it", () => {
  expect(unexplained("/** No setting: codes of characters. */\nconst a = 3;\nconst b = 4;")).toEqual([]);
  expect(unexplained("/** Why. No\n * setting: the format says so.\n */\nconst a = 3;")).toEqual([]);
});
