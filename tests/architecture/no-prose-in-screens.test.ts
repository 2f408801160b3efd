import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { projectRoot, sourceFiles } from "./imports.ts";
import { proseIn } from "./prose-in.ts";

/** Files whose words have not moved to the language yet; it stays empty. */
const exceptions: readonly string[] = [];

test("no screen holds a label or a sentence: what is shown stands in core/words", () => {
  const found = sourceFiles("renderer")
    .filter((file) => !exceptions.includes(file))
    .flatMap((file) => proseIn(file, readFileSync(join(projectRoot, file), "utf8")));
  expect(found).toEqual([]);
});

test.each([
  ["a label", 'const a = <TextInput label="Pain now" />;'],
  ["a label of one word", 'const a = <TextInput label="Pain" />;'],
  ["a label of a region", 'const a = <section aria-label="Notices" />;'],
  ["a label among other properties", 'const a = { "aria-label": "Close" };'],
  ["a label that is also a code", 'const a = { value: "not known", label: "not known" };'],
  ["a label that is chosen", 'const a = <TextInput label={first ? "Height" : "or another"} />;'],
  ["a label of an option", 'const a = { value: "", label: "not stated" };'],
  ["text on one line", "const a = <p>Nothing yet</p>;"],
  ["text on a line of its own", "const a = (\n  <p>\n    Nothing yet.\n  </p>\n);"],
  ["text before a value", "const a = <p>Excluded: {reason}</p>;"],
  ["text behind a value", "const a = <p>{count} left</p>;"],
  ["a sentence", 'const problem = "Say who read it.";'],
  ["words", 'return "not stated";'],
  ["a sentence with a figure", "return `Watching $" + "{folder}.`;"],
])("%s in a screen is caught", (_what, source) => {
  expect(proseIn("planted.tsx", source)).toHaveLength(1);
});

test.each([
  'const a = <p className="muted finding">{prose.nothingYet}</p>;',
  "const a = useState<string>(); // a remark with words",
  "if (left < right && right > middle) return left;",
  "const a: Promise<string> | undefined = undefined;",
  'throw new Error("A screen stands outside the workspace.");',
])("no false alarm: %s", (source) => {
  expect(proseIn("innocent.tsx", source)).toEqual([]);
});
