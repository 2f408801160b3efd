import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { testKinds } from "../../core/ground/test-kind.ts";
import { projectRoot, sourceFiles } from "./imports.ts";

/** Where a kind of test is named in code: the facts, and what a person chose to be done with one kind. */
const allowed: Readonly<Record<string, string>> = {
  "core/ground/test-kind.ts": "the facts of every kind",
  "core/ground/test-words.ts": "the words of every kind",
  "core/words/english/tests.ts": "what each kind is called in English",
  "core/protocol/shipped-protocols.ts": "which tests a stage wants",
  "core/criteria/return-to-pivoting-sport.ts": "which tests are judged",
};

const quoted = new RegExp(`"(?:${testKinds.join("|")})"|\\b(?:${testKinds.join("|")}):`);

test("no stage and no screen decides by the name of a kind of test: they ask its facts, so that a new kind is answered everywhere", () => {
  const naming = [...sourceFiles("core"), ...sourceFiles("electron"), ...sourceFiles("renderer")].filter(
    (file) => !file.startsWith("core/simulate/") && quoted.test(readFileSync(join(projectRoot, file), "utf8")),
  );
  expect(naming.filter((file) => !(file in allowed)).map((file) => `${file} names a kind of test`)).toEqual([]);
  expect(Object.keys(allowed).filter((file) => !naming.includes(file))).toEqual([]);
});
